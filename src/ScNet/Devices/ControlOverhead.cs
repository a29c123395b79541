namespace ScNet.Devices;

/// <summary>What runs the converter: power that no load sees.</summary>
public sealed record ControlOverhead
{
    /// <summary>Power in watts (W) that is always drawn.</summary>
    public double FixedWatts { get; init => field = Guard.InRange(value, allowZero: true, nameof(FixedWatts)); }

    /// <summary>Charge in coulombs (C) drawn from the input in every switching period.</summary>
    public double CoulombsPerCycle { get; init => field = Guard.InRange(value, allowZero: true, nameof(CoulombsPerCycle)); }

    /// <summary>Nothing at all.</summary>
    public static ControlOverhead None { get; } = new();

    /// <summary>Both parts.</summary>
    public override string ToString() => $"{UnitText.Of(FixedWatts, "W")} and {UnitText.Of(CoulombsPerCycle, "C")} per cycle";
}
