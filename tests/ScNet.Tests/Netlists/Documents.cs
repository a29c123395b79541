using ScNet.Netlists;

namespace ScNet.Tests.Netlists;

/// <summary>Documents that several tests start from.</summary>
internal static class Documents
{
    public const string Half = """
        name   = "Half"
        input  = "vin"
        output = "vout"

        [capacitors]
        fly = { between = ["p", "n"], farads = 1e-9 }

        [switches]
        s1 = { between = ["vin", "p"],  ohms = 2.0, on = [1] }
        s2 = { between = ["n", "vout"], ohms = 2.0, on = [1] }
        s3 = { between = ["p", "vout"], ohms = 2.0, on = [2] }
        s4 = { between = ["n", "gnd"],  ohms = 2.0, on = 2 }
        """;

    public const string Reconfigurable = """
        name   = "Two ratios"
        input  = "vin"
        output = "vout"
        load   = "current"
        [phases]
        duty  = [0.3, 0.7]
        names = ["charge", "discharge"]
        [capacitors]
        fly = { between = ["p", "n"], farads = 1e-9, esr_ohms = 0.01 }
        out = { between = ["vout", "gnd"], farads = 1e-6 }
        [switches]
        s1 = { between = ["vin", "p"] }
        s2 = { between = ["n", "vout"] }
        s3 = { between = ["p", "vout"] }
        s4 = { between = ["n", "gnd"] }
        [modes."1/2"]
        s1 = [1]
        s2 = "charge"
        s3 = ["discharge"]
        s4 = [2]
        [modes."1/1"]
        s1 = [1, "discharge"]
        s3 = [1, 2]
        """;

    public const string Hybrid = """
        name   = "Three levels"
        input  = "vin"
        output = "vout"
        phases.duty = ["1/6", 0.25, "1/6", "5/12"]
        [capacitors]
        fly = { between = ["p", "n"], farads = 1e-6, bottom_farads = 3e-8, top_farads = 5e-9, body = "well", controlled = "1/2" }
        [inductors]
        coil = { between = ["x", "vout"], henries = 1e-6, ohms = 0.02, until_zero = 4 }
        [switches]
        s1 = { between = ["vin", "p"], on = [1] }
        s2 = { between = ["p", "x"], on = [3] }
        s3 = { between = ["n", "x"], on = [1] }
        s4 = { between = ["n", "gnd"], on = [3] }
        s5 = { between = ["x", "gnd"], on = [2, 4], diode_volts = 0.7 }
        tie = { between = ["well", "gnd"], on = [1, 2, 3, 4] }
        [parasitics]
        junction = { between = ["x", "gnd"], farads = 1e-12 }
        """;

    /// <summary>The sound document with one piece of it replaced.</summary>
    public static string HalfWith(string old, string replacement)
    {
        Assert.Contains(old, Half, StringComparison.Ordinal);
        return Half.Replace(old, replacement, StringComparison.Ordinal);
    }

    /// <summary>The sound document with inductors and parasitic capacitances, with one piece of it replaced.</summary>
    public static string HybridWith(string old, string replacement)
    {
        Assert.Contains(old, Hybrid, StringComparison.Ordinal);
        return Hybrid.Replace(old, replacement, StringComparison.Ordinal);
    }

    /// <summary>The only error of a document.</summary>
    public static Diagnostic OnlyError(string text)
    {
        NetlistReading reading = NetlistReader.Read(text, "a.toml");
        Assert.False(reading.HasResult);
        Diagnostic error = Assert.Single(reading.Diagnostics);
        Assert.Equal(DiagnosticSeverity.Error, error.Severity);
        return error;
    }

    /// <summary>The only error of a document has this code and stands here.</summary>
    public static Diagnostic ExpectError(string text, string code, int line, int column)
    {
        Diagnostic error = OnlyError(text);
        Assert.Equal((code, new SourcePosition("a.toml", line, column)), (error.Code, error.Position));
        return error;
    }

    /// <summary>A text form in which equal converters are equal, whatever their documents looked like.</summary>
    public static string Describe(Converter c) => string.Join('\n', [
        FormattableString.Invariant($"{c.Name} {c.InputNode} {c.OutputNode} {c.Load}"),
        .. c.Phases.Select(p => FormattableString.Invariant($"{p.Number} {p.Name} {p.Duty.Numerator}/{p.Duty.Denominator}")),
        .. c.Capacitors.Select(e => FormattableString.Invariant($"{e.Name} {e.PositiveNode} {e.BottomNode} {e.Farads:R} {e.EsrOhms:R}")),
        .. c.Switches.Select(e => FormattableString.Invariant($"{e.Name} {e.FirstNode} {e.SecondNode} {e.Ohms:R}")),
        .. c.Modes.Select(m => $"{m.Name}: {string.Join(' ', m.ClosedPhases)}"),
        string.Join(' ', c.Nodes)]);
}
