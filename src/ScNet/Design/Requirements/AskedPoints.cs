namespace ScNet.Design.Requirements;

/// <summary>What a requirement asks to be held, as single points.</summary>
internal static class AskedPoints
{
    // both ends of a range of the output and what lies evenly between
    private const int VoltsOfRange = 5;

    /// <summary>The output voltages in volts that are asked for: those named, or of a range both ends and some evenly between.</summary>
    public static IReadOnlyList<double> OutputVolts(Requirement requirement)
    {
        (double low, double high) = (requirement.OutputVolts[0], requirement.OutputVolts[^1]);
        return requirement.OutputIsRange
            ? [.. Enumerable.Range(0, VoltsOfRange).Select(k => low + ((high - low) * k / (VoltsOfRange - 1))).Distinct()]
            : requirement.OutputVolts;
    }

    /// <summary>The states of the load, each at one voltage: one without a voltage of its own is for the same time at each that is asked for.</summary>
    public static IReadOnlyList<LoadShare> Loads(Requirement requirement)
    {
        IReadOnlyList<double> outputs = OutputVolts(requirement);
        return
        [
            .. requirement.Loads.SelectMany(l => l.OutputVolts is not null ? [l]
                : outputs.Select(v => l with { OutputVolts = v, Share = l.Share / outputs.Count })),
        ];
    }

    /// <summary>Output voltages and currents that must be held at any input voltage: those of the states, and both ends of the range of the load at every voltage.</summary>
    public static IReadOnlyList<(double OutputVolts, double LoadAmperes)> Held(Requirement requirement)
    {
        IReadOnlyList<double> outputs = OutputVolts(requirement);
        double[] currents = requirement.LoadRangeAmperes is { IsDetermined: true } range ? [range.Minimum!.Value, range.Maximum!.Value] : [];
        return
        [
            .. Loads(requirement).Select(l => (l.OutputVolts!.Value, l.Amperes))
                .Concat(outputs.SelectMany(v => currents.Select(i => (v, i)))).Distinct(),
        ];
    }
}
