using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using ScNet.Design.Requirements;
using ScNet.Tests.Netlists;

namespace ScNet.Tests.Design.Requirements;

public sealed class RequirementSchemaTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(RequirementReader.JsonSchema);

    /// <summary>Mistakes that only the whole document tells: a schema cannot say them.</summary>
    private static readonly string[] s_beyond =
    [
        DiagnosticCodes.ShareSum, DiagnosticCodes.DischargeNotFalling, DiagnosticCodes.OutsideRange, DiagnosticCodes.DuplicateName,
    ];

    public static TheoryData<string, string> Bad
    {
        get
        {
            TheoryData<string, string> bad = [];
            foreach (object[] mistake in (IEnumerable<object[]>)RequirementReaderErrorTests.Mistakes)
            {
                (string old, string replacement, string code, string message) = ((string)mistake[0], (string)mistake[1], (string)mistake[2], (string)mistake[5]);
                bool isBeyond = s_beyond.Contains(code) || code == DiagnosticCodes.Syntax || message.Contains("comes ", StringComparison.Ordinal) || message.Contains("Swap", StringComparison.Ordinal)
                    || replacement.Contains("inf]", StringComparison.Ordinal);
                if (!isBeyond)
                {
                    bad.Add(old, replacement);
                }
            }

            return bad;
        }
    }

    [Fact]
    public void Good_documents_satisfy_the_schema()
    {
        Assert.True(IsValid(RequirementDocuments.Small));
        Assert.True(IsValid(File.ReadAllText(RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml"))));
        Assert.True(IsValid(RequirementDocuments.With("output_volts = [0.8, 1.0]", "output_range_volts = [0.8, 1.0]")));
        Assert.True(IsValid("candidates = \"all\"\n" + RequirementDocuments.Small[..RequirementDocuments.Small.IndexOf("[[candidates]]", StringComparison.Ordinal)]));
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void What_the_reader_refuses_the_schema_refuses(string old, string replacement) =>
        Assert.False(IsValid(RequirementDocuments.With(old, replacement)));

    [Theory]
    [InlineData("share = 0.9", "share = 0.8", DiagnosticCodes.ShareSum)]
    [InlineData("[0.4, 3.6]", "[0.4, 2.7]", DiagnosticCodes.OutsideRange)]
    [InlineData("[0.0, 2.8]", "[0.5, 2.8]", DiagnosticCodes.DischargeNotFalling)]
    [InlineData("\"sleep\"", "\"active\"", DiagnosticCodes.DuplicateName)]
    [InlineData("[2.8, 4.2]", "[4.2, 2.8]", DiagnosticCodes.WrongValue)]
    [InlineData("threshold_volts = 0.5", "threshold_volts = 1.5", DiagnosticCodes.OutsideRange)]
    public void What_a_schema_cannot_say_the_reader_finds(string old, string replacement, string code)
    {
        Assert.True(IsValid(RequirementDocuments.With(old, replacement)));
        Assert.Equal(code, RequirementDocuments.OnlyError(RequirementDocuments.With(old, replacement)).Code);
    }

    [Fact]
    public void Every_key_is_described()
    {
        JsonObject schema = JsonNode.Parse(RequirementReader.JsonSchema)!.AsObject();
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", schema["$schema"]!.GetValue<string>());
        JsonNode[] tables = [schema, schema["$defs"]!["process"]!["properties"]!["control"]!, .. schema["$defs"]!.AsObject().Select(d => d.Value!).Where(d => d["additionalProperties"] is not null)];
        Assert.Equal(9, tables.Length);
        foreach ((string key, JsonNode? value) in tables.SelectMany(t => t["properties"]!.AsObject()))
        {
            Assert.False(string.IsNullOrEmpty(value!["description"]?.GetValue<string>()), key);
        }
    }

    internal static bool IsValid(string text)
    {
        using JsonDocument json = NetlistSchemaTests.ToJsonDocument(text);
        return s_schema.Evaluate(json.RootElement).IsValid;
    }
}
