namespace ScNet.Design.Sizing;

/// <summary>How sizes are looked for.</summary>
public sealed record SizingOptions
{
    /// <summary>The least sizes: one step each. Elements that no point uses get these.</summary>
    public SizeGrid Grid { get; init; } = SizeGrid.Fine;

    /// <summary>By what kinds and stacks are chosen.</summary>
    public DeviceCriterion Criterion { get; init; }

    /// <summary>The input voltages in volts (V) that the elements withstand; undetermined for those of the points, mode by mode.</summary>
    public Interval<double> InputVolts { get; init; }
}
