namespace ScNet.Design.Regulation;

/// <summary>One mode of a schedule and the input voltages between which it stays.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="LowestVolts">Below this input voltage in volts (V) the schedule goes on to the band below.</param>
/// <param name="HighestVolts">Above this input voltage in volts (V) it goes on to the band above.</param>
public sealed record ModeBand(RegulatedMode Mode, double LowestVolts, double HighestVolts)
{
    /// <summary>The mode and its voltages.</summary>
    public override string ToString() => $"{Mode} from {UnitText.Of(LowestVolts, "V")} to {UnitText.Of(HighestVolts, "V")}";
}
