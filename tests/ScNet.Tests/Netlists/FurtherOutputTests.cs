using ScNet.Netlists;

namespace ScNet.Tests.Netlists;

/// <summary>Outputs beside the main one from a document and from the builder.</summary>
public sealed class FurtherOutputTests
{
    private const string Text = """
        name   = "Two rails"
        input  = "vin"
        output = "vout"

        [capacitors]
        fly = { between = ["p", "n"], farads = 1e-9 }

        [outputs]
        rail  = { between = ["p", "gnd"] }
        drive = { between = ["p", "n"] }

        [switches]
        s1 = { between = ["vin", "p"],  on = [1] }
        s2 = { between = ["n", "vout"], on = [1] }
        s3 = { between = ["p", "vout"], on = [2] }
        s4 = { between = ["n", "gnd"],  on = 2 }
        """;

    public static TheoryData<string, string, string, int, int, string> Mistakes => new()
    {
        { "rail  =", "fly =", DiagnosticCodes.DuplicateName, 9, 1, "(first at line 6)" },
        { "drive =", "rail =", DiagnosticCodes.DuplicateName, 10, 1, "first at line 9" },
        { "drive =", "vout =", DiagnosticCodes.DuplicateName, 10, 1, "has the name of the output's node" },
        { "drive = { between = [\"p\", \"n\"]", "drive = { between = [\"p\", \"p\"]", DiagnosticCodes.SameNode, 10, 1, "Both terminals of the further output 'drive' are on node 'p'" },
        { "[\"p\", \"gnd\"]", "[\"q\", \"gnd\"]", DiagnosticCodes.PortUnconnected, 9, 1, "No element touches node 'q' of the further output 'rail'" },
        { "[\"p\", \"gnd\"]", "[\"p\"]", DiagnosticCodes.WrongValue, 9, 21, "'between' of further output 'rail'" },
        { "[\"p\", \"gnd\"] }", "[\"p\", \"gnd\"], load = \"stiff\" }", DiagnosticCodes.UnknownKey, 9, 35, "The keys are between." },
        { "[\"p\", \"gnd\"] }", "[\"p\", \"gnd\"], x.y = 1 }", DiagnosticCodes.UnknownKey, 9, 35, "'x'" },
        { "between = [\"p\", \"gnd\"]", "node = \"p\"", DiagnosticCodes.UnknownKey, 9, 11, "Did you mean 'between'?" },
        { "[outputs]", "[rails]", DiagnosticCodes.UnknownKey, 8, 2, "Did you mean 'outputs'?" },
    };

    [Fact]
    public void A_document_and_the_builder_give_the_same_outputs()
    {
        Converter read = NetlistReader.Read(Text).GetConverter();
        Converter built = Converter.Create("Two rails").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", 1e-9)
            .FurtherOutput("rail", "p").FurtherOutput("drive", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2)
            .Build();

        Assert.Equal(["rail (p – gnd)", "drive (p – n)"], read.FurtherOutputs.Select(o => o.ToString()));
        Assert.Equal(NetlistWriter.ToToml(built), NetlistWriter.ToToml(read));
        Assert.Contains("[outputs]\nrail = { between = [\"p\", \"gnd\"] }\ndrive = { between = [\"p\", \"n\"] }\n", NetlistWriter.ToToml(built), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_gives_one_message_at_its_place(string old, string replacement, string code, int line, int column, string part)
    {
        Assert.Contains(old, Text, StringComparison.Ordinal);
        Diagnostic error = Documents.OnlyError(Text.Replace(old, replacement, StringComparison.Ordinal));

        Assert.Equal((code, line, column), (error.Code, error.Position!.Value.Line, error.Position.Value.Column));
        Assert.Contains(part, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Outputs_stay_when_values_duties_modes_and_dead_time_change()
    {
        Converter converter = NetlistReader.Read(Text).GetConverter();

        Assert.All(
            new[]
            {
                converter.WithValues(farads: [2e-9]), converter.WithDuties(new(1, 3), new(2, 3)), converter.WithModes(("other", [1, 1, 2, 2])),
                converter.WithDeadTime(new(1, 10)),
            },
            other => Assert.Equal(converter.FurtherOutputs.Select(o => o.ToString()), other.FurtherOutputs.Select(o => o.ToString())));
        Assert.Empty(NetlistReader.Read(Documents.Half).GetConverter().FurtherOutputs);
    }
}
