using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using ScNet.Netlists;
using Tomlyn;
using Tomlyn.Model;

namespace ScNet.Tests.Netlists;

public sealed class NetlistSchemaTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(NetlistSchema.Json);

    public static TheoryData<string> Good => new()
    {
        { Documents.Half },
        { Documents.Reconfigurable },
        { Documents.Hybrid },
        { Documents.HybridWith("\"1/2\"", "0.5") },
        { Documents.HybridWith("\"1/2\"", "\"-1/2\"") },
        { Documents.HalfWith("farads = 1e-9", "farads = 1, esr_ohms = 0") },
        { Documents.HalfWith("[capacitors]", "load = \"current\"\nphases.names = [\"a\", \"b\"]\n[capacitors]") },
        { Documents.HalfWith("[capacitors]", "[phases]\ncount = 3\n[capacitors]") },
        { Documents.HalfWith("[capacitors]", "phases.duty = [\"1/3\", \"2/3\"]\n[capacitors]") },
        { Documents.HalfWith("on = 2 }", "on = [] }") },
        { Documents.HalfWith("[switches]", "[outputs]\nrail = { between = [\"p\", \"n\"] }\n[switches]") },
        { "name='n'\ninput='a'\noutput='b'\nswitches.s={between=['a','b'],on=[1,2,1]}" },
        { "name='n'\ninput='a'\noutput='b'\ncapacitors.c.between=['a','b']" },
        { "name='n'\ninput='a'\noutput='b'\nswitches.s={between=['a','b']}\n[modes.m]" },
    };

    public static TheoryData<string> Bad
    {
        get
        {
            TheoryData<string> bad = [];
            foreach ((string old, string replacement) in Replacements)
            {
                bad.Add(Documents.HalfWith(old, replacement));
            }

            foreach ((string old, string replacement) in HybridReplacements)
            {
                bad.Add(Documents.HybridWith(old, replacement));
            }

            bad.Add("name='n'\ninput='a'\noutput='b'");
            bad.Add("name='n'\ninput='a'\noutput='b'\nswitches={}");
            bad.Add("name='n'\ninput='a'\noutput='b'\nswitches.s={between=['a','b'],on=1}\n[modes.m]");
            bad.Add("name='n'\ninput='a'\noutput='b'\nswitches.s={between=['a','b']}\n[modes]");
            bad.Add("name='n'\ninput='a'\noutput='b'\nswitches.s={between=['a','b']}\n[modes.m]\ns=true");
            bad.Add("name='n'\ninput='a'\noutput='b'\nswitches.s={between=['a','b']}\n[modes.\"\"]");
            return bad;
        }
    }

    /// <summary>Mistakes that only the whole document tells: a schema cannot say them.</summary>
    public static TheoryData<string, string> BeyondASchema => new()
    {
        { Documents.HalfWith("[capacitors]", "phases.duty = [0.5, 0.4]\n[capacitors]"), DiagnosticCodes.DutySum },
        { Documents.HalfWith("[capacitors]", "phases = { count = 3, duty = [0.5, 0.5] }\n[capacitors]"), DiagnosticCodes.WrongValue },
        { Documents.HalfWith("[capacitors]", "phases = { count = 3, names = [\"a\", \"b\"] }\n[capacitors]"), DiagnosticCodes.WrongValue },
        { Documents.HalfWith("on = 2 }", "on = 3 }"), DiagnosticCodes.UnknownPhase },
        { Documents.HalfWith("on = 2 }", "on = \"charge\" }"), DiagnosticCodes.UnknownPhase },
        { Documents.HalfWith("fly =", "s1 ="), DiagnosticCodes.DuplicateName },
        { Documents.HalfWith("[switches]", "[outputs]\nvout = { between = [\"p\", \"n\"] }\n[switches]"), DiagnosticCodes.DuplicateName },
        { Documents.HalfWith("[switches]", "[outputs]\nrail = { between = [\"x\", \"gnd\"] }\n[switches]"), DiagnosticCodes.PortUnconnected },
        { Documents.HalfWith("\"vout\"\n", "\"vin\"\n"), DiagnosticCodes.PortClash },
        { Documents.HalfWith("\"vout\"\n", "\"vuot\"\n"), DiagnosticCodes.PortUnconnected },
        { Documents.HybridWith("until_zero = 4", "until_zero = 5"), DiagnosticCodes.UnknownPhase },
        { Documents.HybridWith("until_zero = 4", "until_zero = \"last\""), DiagnosticCodes.UnknownPhase },
        { Documents.HybridWith("junction =", "coil ="), DiagnosticCodes.DuplicateName },
        { Documents.HybridWith("[parasitics]", "twin = { between = [\"x\", \"vout\"], on = [] }\n[parasitics]").Replace("[switches]", "second = { between = [\"x\", \"gnd\"], until_zero = 4 }\n[switches]", StringComparison.Ordinal), DiagnosticCodes.WrongValue },
        { Documents.Reconfigurable.Replace("s4 = [2]", "s5 = [2]", StringComparison.Ordinal), DiagnosticCodes.UnknownSwitch },
    };

    private static (string Old, string Replacement)[] Replacements =>
    [
        ("name   = \"Half\"", ""), ("input  = \"vin\"", ""), ("output = \"vout\"", ""), ("\"Half\"", "\"\""), ("\"Half\"", "5"),
        ("\"vin\"\n", "\"gnd\"\n"), ("[capacitors]", "load = \"soft\"\n[capacitors]"), ("[capacitors]", "colour = 1\n[capacitors]"),
        ("[capacitors]", "phases.count = 1\n[capacitors]"), ("[capacitors]", "phases.count = 1001\n[capacitors]"), ("[capacitors]", "phases.count = \"2\"\n[capacitors]"),
        ("[capacitors]", "phases.duty = [1.0]\n[capacitors]"), ("[capacitors]", "phases.duty = [1.0, 0]\n[capacitors]"), ("[capacitors]", "phases.duty = 0.5\n[capacitors]"), ("[capacitors]", "phases.duty = [\"1/3\", \"2\"]\n[capacitors]"),
        ("[capacitors]", "phases.names = [\"a\", \"a\"]\n[capacitors]"), ("[capacitors]", "phases.names = [\"a\", \"\"]\n[capacitors]"),
        ("[capacitors]", "phases.number = 2\n[capacitors]"), ("[capacitors]", "phases = 2\n[capacitors]"), ("[capacitors]", "[[capacitors]]"),
        ("[\"p\", \"n\"]", "[\"p\"]"), ("[\"p\", \"n\"]", "[\"p\", \"n\", \"q\"]"), ("[\"p\", \"n\"]", "[\"p\", \"p\"]"), ("[\"p\", \"n\"]", "[\"p\", 1]"), ("[\"p\", \"n\"]", "\"p\""),
        ("between = [\"p\", \"n\"], ", ""), ("farads = 1e-9", "farads = 0"), ("farads = 1e-9", "farads = -1"), ("farads = 1e-9", "farads = \"1n\""),
        ("farads = 1e-9", "esr_ohms = -0.1"), ("farads = 1e-9", "farad = 1"), ("fly =", "\"\" ="), ("fly = { between = [\"p\", \"n\"], farads = 1e-9 }", "fly = 1"),
        (", on = 2 }", " }"), ("on = 2 }", "on = 0 }"), ("on = 2 }", "on = true }"), ("on = 2 }", "on = \"\" }"), ("on = 2 }", "on = [[2]] }"), ("on = 2 }", "on = [1.5] }"),
        ("[switches]", "outputs.rail.between = [\"p\", \"p\"]\n[switches]"), ("[switches]", "outputs.rail.between = \"p\"\n[switches]"), ("[switches]", "outputs.rail = {}\n[switches]"),
        ("[switches]", "outputs.rail = { between = [\"p\", \"n\"], ohms = 1 }\n[switches]"), ("[switches]", "outputs.\"\".between = [\"p\", \"n\"]\n[switches]"), ("[capacitors]", "outputs = \"p\"\n[capacitors]"),
    ];

    private static (string Old, string Replacement)[] HybridReplacements =>
    [
        ("henries = 1e-6", "henries = 0"), ("henries = 1e-6", "henry = 1"), ("ohms = 0.02", "ohms = -1"), ("[\"x\", \"vout\"]", "[\"x\", \"x\"]"), ("[\"x\", \"vout\"]", "[\"x\"]"),
        ("until_zero = 4", "until_zero = true"), ("until_zero = 4", "until_zero = 0"), ("bottom_farads = 3e-8", "bottom_farads = -1"), ("top_farads = 5e-9", "top_farads = \"5n\""),
        ("body = \"well\"", "body = \"\""), ("body = \"well\"", "body = 1"), ("controlled = \"1/2\"", "controlled = \"half\""), ("controlled = \"1/2\"", "controlled = \"1/0\""),
        ("diode_volts = 0.7", "diode_volts = -0.7"), (", farads = 1e-12", ""), ("farads = 1e-12", "farads = 0"), ("farads = 1e-12", "farads = 1e-12, ohms = 1"),
    ];

    [Theory]
    [MemberData(nameof(Good))]
    public void A_good_document_satisfies_reader_and_schema(string text)
    {
        Assert.DoesNotContain(NetlistReader.Read(text).Diagnostics, d => d.Severity == DiagnosticSeverity.Error);
        Assert.True(IsValid(text));
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_bad_document_fails_reader_and_schema(string text)
    {
        Assert.False(NetlistReader.Read(text).HasResult);
        Assert.False(IsValid(text));
    }

    [Theory]
    [MemberData(nameof(BeyondASchema))]
    public void What_a_schema_cannot_say_the_reader_finds(string text, string code)
    {
        Assert.Equal(code, Documents.OnlyError(text).Code);
        Assert.True(IsValid(text));
    }

    [Fact]
    public void The_schema_names_its_draft_and_describes_every_key()
    {
        JsonNode schema = JsonNode.Parse(NetlistSchema.Json)!;
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", schema["$schema"]!.GetValue<string>());
        foreach (JsonNode? table in new[] { schema, schema["properties"]!["phases"], schema["$defs"]!["capacitor"], schema["$defs"]!["switch"] })
        {
            foreach ((string key, JsonNode? value) in table!["properties"]!.AsObject())
            {
                string? text = (value!["description"] ?? schema["$defs"]![value["$ref"]?.GetValue<string>().Split('/')[^1] ?? key]?["description"])?.GetValue<string>();
                Assert.False(string.IsNullOrEmpty(text), key);
            }
        }
    }

    private static bool IsValid(string text)
    {
        using JsonDocument json = ToJsonDocument(text);
        return s_schema.Evaluate(json.RootElement).IsValid;
    }

    /// <summary>A TOML document as the JSON that a schema is held to.</summary>
    internal static JsonDocument ToJsonDocument(string text) => JsonDocument.Parse(ToJson(TomlSerializer.Deserialize<TomlTable>(text)!)!.ToJsonString());

    private static JsonNode? ToJson(object value) => value switch
    {
        TomlTable table => new JsonObject(table.Select(e => KeyValuePair.Create(e.Key, ToJson(e.Value)))),
        TomlTableArray tables => new JsonArray([.. tables.Select(ToJson)]),
        TomlArray array => new JsonArray([.. array.Select(v => ToJson(v!))]),
        _ => JsonSerializer.SerializeToNode(value),
    };
}
