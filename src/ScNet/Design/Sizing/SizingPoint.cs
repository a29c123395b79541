namespace ScNet.Design.Sizing;

/// <summary>An operating point that counts when sizes are chosen.</summary>
/// <param name="Mode">The name of the mode that serves it.</param>
/// <param name="InputVolts">Input voltage in volts (V).</param>
/// <param name="OutputVolts">Output voltage in volts (V) to be held by the frequency, its magnitude where the mode inverts; null where it may follow from the load, so that what it drops counts.</param>
/// <param name="LoadAmperes">Load current in amperes (A), above zero.</param>
/// <param name="Weight">What its loss counts, above zero: a share of the time, say.</param>
public sealed record SizingPoint(string Mode, double InputVolts, double? OutputVolts, double LoadAmperes, double Weight = 1)
{
    /// <summary>"mode 1/2, 3.6 V to 1.2 V, 0.1 A".</summary>
    public override string ToString() =>
        $"mode {Mode}, {UnitText.Of(InputVolts, "V")}{(OutputVolts is { } volts ? $" to {UnitText.Of(volts, "V")}" : string.Empty)}, {UnitText.Of(LoadAmperes, "A")}";
}
