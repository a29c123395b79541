using System.Globalization;
using ScNet.Stress;

namespace ScNet.Results.Pages;

/// <summary>Words for stress that more than one table has.</summary>
internal static class StressWords
{
    private const int MostNames = 4;

    public static string Volts(Interval<double> volts) => volts is { Minimum: { } low, Maximum: { } high }
        ? low.Equals(high) ? EngineeringNumber.Of(high, "V") : $"{EngineeringNumber.Of(low, "V")} to {EngineeringNumber.Of(high, "V")}"
        : "?";

    /// <summary>A voltage; "≥" where another place is undetermined, "-" where there is none, "?" where nothing is known.</summary>
    public static PageCell Extreme(StressExtreme? extreme, bool isDetermined) => extreme is null
        ? isDetermined ? "-" : "?"
        : new PageCell((isDetermined ? string.Empty : "≥ ") + EngineeringNumber.Of(extreme.Volts, "V"), extreme.Volts);

    /// <summary>"mode 1/3, phase 2" or "1/2 to 1/3, phase 1", and what it rests on where that is a bound.</summary>
    public static PageCell Place(StressExtreme? extreme, bool namesMode)
    {
        if (extreme is null)
        {
            return "-";
        }

        string phase = extreme.Phase is { } number ? string.Create(CultureInfo.InvariantCulture, $"phase {number}") : string.Empty;
        string mode = extreme.From is { } from ? $"{from} to {extreme.Mode}" : namesMode ? $"mode {extreme.Mode}" : string.Empty;
        string basis = extreme.Basis switch
        {
            VoltageBasis.Idle => " (idle)",
            VoltageBasis.Floating => " (floating)",
            VoltageBasis.Surge => " (surge)",
            _ => string.Empty,
        };
        return mode + (mode.Length > 0 && phase.Length > 0 ? ", " : string.Empty) + phase + basis;
    }

    public static string Surge(LoopSurge surge) => string.Create(
        CultureInfo.InvariantCulture,
        $"{EngineeringNumber.Of(surge.Volts, "V")} round {Names([.. surge.Capacitors.Select(c => c.Name)], "capacitors", "input and output")}, taken by {Names([.. surge.Switches.Select(s => s.Name)], "switches", "nothing")}, phase {surge.Phase}");

    /// <summary>What the marks in the tables mean, where they occur.</summary>
    public static IEnumerable<string> Legend(RatedStress result)
    {
        IEnumerable<StressExtreme> shown = [.. result.Modes.SelectMany(Extremes), .. result.Only is null && result.Stress is { Changes.Count: > 0 } stress ? stress.SwitchesAtChanges.SelectMany(Extremes) : []];
        HashSet<VoltageBasis> bases = [.. shown.Select(e => e.Basis), .. result.Modes.SelectMany(m => m.Switches.SelectMany(s => s.Phases.Select(p => p.Basis)))];
        if (bases.Contains(VoltageBasis.Floating))
        {
            yield return "(floating): a side of the switch floats; the bound follows from what held it before and from what open switches leak";
        }

        if (bases.Contains(VoltageBasis.Idle))
        {
            yield return "(idle): rests on a capacitor that the mode leaves with what another mode left it with";
        }

        if (bases.Contains(VoltageBasis.Surge))
        {
            yield return "(surge): while capacitors that do not agree share their charge";
        }
    }

    private static IEnumerable<StressExtreme> Extremes(ModeStress mode) =>
        mode.Switches.SelectMany(Extremes).Concat(mode.Capacitors.Select(c => c.Peak).OfType<StressExtreme>());

    private static IEnumerable<StressExtreme> Extremes(SwitchStress s) => new[] { s.PeakPositive, s.PeakNegative }.OfType<StressExtreme>();

    // the first few, so that a line stays one
    private static string Names(string[] names, string kind, string none) => names.Length switch
    {
        0 => none,
        <= MostNames => string.Join(", ", names),
        _ => string.Create(CultureInfo.InvariantCulture, $"{names.Length} {kind}"),
    };
}
