using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>An element of a stress chart: magnitudes in volts (V), null where nothing determines them.</summary>
/// <param name="Name">The name of the switch or capacitor.</param>
/// <param name="Volts">The largest voltage in each mode.</param>
/// <param name="AtChanges">The largest at changes of mode; null where there are none or none is counted.</param>
/// <param name="Largest">The largest of all.</param>
/// <param name="Note">What stands beside the bars, in a few words.</param>
internal sealed record StressRow(string Name, IReadOnlyList<double?> Volts, double? AtChanges, double? Largest, string Note)
{
    /// <summary>What one device withstands in volts (V); null without ratings.</summary>
    public double? RatedVolts { get; init; }

    /// <summary>The devices in series that the voltage takes.</summary>
    public int StackCount { get; init; } = 1;

    /// <summary>Whether the note deserves attention.</summary>
    public bool IsBold { get; init; }

    /// <summary>Every switch, then every capacitor, against its device.</summary>
    public static IReadOnlyList<StressRow> Of(ConverterRatings ratings) =>
    [
        .. ratings.Switches.Select(s => Of(s.Modes, s.AtChanges?.Volts, s.Overall)),
        .. ratings.Capacitors.Select(c => Of(c.Modes, null, c.Overall)),
    ];

    /// <summary>Every switch, then every capacitor, without devices.</summary>
    public static IReadOnlyList<StressRow> Of(ConverterStress stress) =>
    [
        .. stress.Analysis.Converter.Switches.Select((s, i) => Of(
            s.Name, [.. stress.Modes.Select(m => VoltsOf(m.Switches[i]))], stress.Changes.Count > 0 ? VoltsOf(stress.SwitchesAtChanges[i]) : null, stress.Modes.All(m => m.Switches[i].IsDetermined))),
        .. stress.Analysis.Converter.Capacitors.Select((c, i) => Of(
            c.Name, [.. stress.Modes.Select(m => m.Capacitors[i].Peak is { } peak ? (double?)Math.Abs(peak.Volts) : null)], null, stress.Modes.All(m => m.Capacitors[i].IsDetermined))),
    ];

    private static StressRow Of(IReadOnlyList<RatingVerdict> modes, double? atChanges, RatingVerdict overall) =>
        new(overall.Element, [.. modes.Select(m => m.Volts)], atChanges, overall.Volts, NoteOf(overall))
        {
            RatedVolts = overall.RatedVolts,
            StackCount = overall.StackCount,
            IsBold = overall.Outcome == RatingOutcome.NotAllowed,
        };

    private static StressRow Of(string name, double?[] volts, double? atChanges, bool isDetermined)
    {
        double? largest = volts.Append(atChanges).Max();
        return new(name, volts, atChanges, largest, largest is null ? "undetermined" : $"{(isDetermined ? string.Empty : "at least ")}{EngineeringNumber.Of(largest, "V")}");
    }

    // one that is closed all the time blocks nothing
    private static double? VoltsOf(SwitchStress stress) => stress.Peak is { } peak ? Math.Abs(peak.Volts) : stress.IsDetermined ? 0 : null;

    // what is needed
    private static string NoteOf(RatingVerdict verdict) => verdict switch
    {
        { Volts: null } => "undetermined",
        { Outcome: RatingOutcome.NotAllowed } => $"{verdict.StackCount} in series: not allowed",
        { IsLowerBound: true } => $"at least {verdict.StackCount} in series",
        { StackCount: > 1 } => $"{verdict.StackCount} in series",
        _ => "one device",
    };
}
