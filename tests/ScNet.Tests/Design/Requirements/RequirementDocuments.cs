using System.Collections;
using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Requirements;

/// <summary>A document that tests start from, and helpers for its mistakes.</summary>
internal static class RequirementDocuments
{
    public const string Small = """
        name = "Small"
        input_volts = [2.8, 4.2]
        discharge_volts = [[1.0, 4.2], [0.4, 3.6], [0.0, 2.8]]
        output_volts = [0.8, 1.0]
        frequency_hertz = [1e5, 1e8]
        area_square_metres = 1e-6
        [[loads]]
        name = "sleep"
        amperes = 1e-5
        share = 0.9
        [[loads]]
        name = "active"
        amperes = 1e-3
        share = 0.1
        output_volts = 1.0
        [process]
        name = "p"
        source = "invented"
        [process.switches.thin]
        rated_volts = 1.8
        gate_drive_volts = 1.5
        gate_rated_volts = 1.98
        threshold_volts = 0.5
        ohm_micrometres = 1000
        gate_coulombs_per_micrometre = 2e-15
        junction_coulombs_per_micrometre = 1e-15
        square_metres_per_micrometre = 7e-13
        [process.capacitors.mos]
        rated_volts = 1.8
        farads_per_square_metre = 8e-3
        farads_per_square_metre_at_volts = [[0, 4e-3], [1.8, 8e-3]]
        [process.inductors.coil]
        henries = 1e-6
        ohms = 0.1
        [process.control]
        fixed_watts = 1e-6
        [process.corners.slow]
        threshold_factor = 1.2
        [[candidates]]
        family = "ladder"
        sizes = [2, 4]
        [[candidates]]
        file = "half.toml"
        """;

    /// <summary>The sound document with one piece of it replaced, at its first place.</summary>
    public static string With(string old, string replacement)
    {
        int at = Small.IndexOf(old, StringComparison.Ordinal);
        Assert.True(at >= 0, old);
        return string.Concat(Small.AsSpan(0, at), replacement, Small.AsSpan(at + old.Length));
    }

    /// <summary>The only error of a document.</summary>
    public static Diagnostic OnlyError(string text)
    {
        RequirementReading reading = RequirementReader.Read(text, "a.toml");
        Assert.False(reading.HasResult);
        Diagnostic error = Assert.Single(reading.Diagnostics);
        Assert.Equal(DiagnosticSeverity.Error, error.Severity);
        return error;
    }

    /// <summary>Every property of a requirement, and of what is in it, on a line of its own: equal texts, equal requirements.</summary>
    public static string Describe(object? value, string path = "") => value switch
    {
        null => $"{path} = none\n",
        double number => FormattableString.Invariant($"{path} = {number:R}\n"),
        string or int or bool or Enum or Interval<int> => FormattableString.Invariant($"{path} = {value}\n"),
        Interval<double> range => FormattableString.Invariant($"{path} = {range.Minimum:R} to {range.Maximum:R}\n"),
        IEnumerable items => string.Concat(items.Cast<object?>().Select((item, i) => Describe(item, $"{path}[{i}]"))),
        _ => string.Concat(value.GetType().GetProperties().Where(p => p.GetMethod!.IsPublic && !p.GetMethod.IsStatic).Select(p => Describe(p.GetValue(value), $"{path}.{p.Name}"))),
    };
}
