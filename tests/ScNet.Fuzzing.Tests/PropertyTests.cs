using System.Text;

namespace ScNet.Fuzzing.Tests;

/// <summary>What looks for broken properties sees them.</summary>
public sealed class PropertyTests
{
    [Theory]
    [InlineData(1, 1, true)]
    [InlineData(2, 4, true)]
    [InlineData(0, 1, false)]
    [InlineData(3, 1, false)]
    [InlineData(1, 4, false)]
    [InlineData(2, 0, false)]
    [InlineData(0, 0, false)]
    public void A_finding_stands_within_the_text(int line, int column, bool isWithin) => Assert.Equal(
        isWithin, Holds(() => Property.Findings("ab\nabc", isAccepted: false, [Finding(DiagnosticSeverity.Error, new SourcePosition(null, line, column))])));

    [Fact]
    public void A_finding_has_a_place() =>
        Assert.False(Holds(() => Property.Findings("a", isAccepted: false, [Finding(DiagnosticSeverity.Error, null)])));

    [Fact]
    public void What_is_refused_has_an_error_and_what_is_accepted_has_none()
    {
        SourcePosition place = new(null, 1, 1);
        Assert.False(Holds(() => Property.Findings("a", isAccepted: false, [])));
        Assert.False(Holds(() => Property.Findings("a", isAccepted: false, [Finding(DiagnosticSeverity.Warning, place)])));
        Assert.False(Holds(() => Property.Findings("a", isAccepted: true, [Finding(DiagnosticSeverity.Error, place)])));
        Assert.True(Holds(() => Property.Findings("a", isAccepted: true, [Finding(DiagnosticSeverity.Warning, place)])));
    }

    [Fact]
    public void What_a_converter_says_in_public_is_compared()
    {
        Converter Make(string name = "A", double farads = 2, double ohms = 3, string node = "p", int on = 1, double duty = 0.4, LoadKind load = LoadKind.Stiff, string mode = "m") =>
            Converter.Create(name).Input("vin").Output("vout", load).Duties(duty, 1 - duty)
                .Capacitor("fly", "p", "n", farads).Switch("s1", "vin", node, ohms: ohms).Switch("s2", "p", "vout").Mode(mode, ("s1", on), ("s2", 2)).Build();

        string text = ObjectText.Of(Make());
        Assert.Equal(text, ObjectText.Of(Make()));
        Assert.All(
            new[] { Make(name: "B"), Make(farads: 1), Make(ohms: 1), Make(node: "n"), Make(on: 2), Make(duty: 0.5), Make(load: LoadKind.Current), Make(mode: "n") },
            other => Assert.NotEqual(text, ObjectText.Of(other)));
    }

    [Fact]
    public void Too_much_memory_for_one_text_is_seen()
    {
        FuzzTarget greedy = new("greedy", 10, 1, _ => GC.KeepAlive(new byte[FuzzRun.MaximumAllocation + 1]));
        Assert.Throws<BrokenPropertyException>(() => FuzzRun.Execute(greedy, []));
    }

    [Fact]
    public void Bytes_that_are_no_text_become_halves_of_characters()
    {
        Assert.Equal("aß\uDCFF\uDCE2b", TextInput.Of([.. "aß"u8, 0xFF, 0xE2, .. "b"u8]));
        Assert.Equal("\uD83D\uDE00", TextInput.Of(Encoding.UTF8.GetBytes("\uD83D\uDE00")));
    }

    [Fact]
    public void A_target_without_a_name_is_refused() => Assert.Throws<ArgumentException>(() => FuzzTargets.Named("none"));

    private static Diagnostic Finding(DiagnosticSeverity severity, SourcePosition? position) => new(severity, DiagnosticCodes.Syntax, "wrong", position: position);

    private static bool Holds(Action property)
    {
        try
        {
            property();
            return true;
        }
        catch (BrokenPropertyException)
        {
            return false;
        }
    }
}
