using System.Globalization;

namespace ScNet.Derivations.Snapshots;

/// <summary>What a value of a snapshot belongs to.</summary>
/// <param name="What">What it is.</param>
/// <param name="Element">The name of the capacitor or switch; null for what belongs to the whole mode.</param>
/// <param name="Phase">The phase number from 1; 0 for what belongs to the whole period.</param>
/// <param name="Hertz">The frequency of an output impedance in hertz (Hz); 0 else.</param>
internal readonly record struct SnapshotKey(SnapshotQuantity What, string? Element = null, int Phase = 0, double Hertz = 0)
{
    /// <summary>What it is, in words: "charge of fly in phase 1".</summary>
    public string Description => Phase > 0 ? string.Create(CultureInfo.InvariantCulture, $"{Words} in phase {Phase}") : Words;

    /// <summary>The unit; empty for charges per unit of output charge and for coefficients.</summary>
    public string Unit => What switch
    {
        SnapshotQuantity.Ratio or SnapshotQuantity.CapacitorVoltage or SnapshotQuantity.BlockingVoltage or SnapshotQuantity.PeakBlockingVoltage => "V/V",
        SnapshotQuantity.SlowSwitchingLimit or SnapshotQuantity.FastSwitchingLimit or SnapshotQuantity.OutputImpedance => "Ω",
        _ => string.Empty,
    };

    private string Words => What switch
    {
        SnapshotQuantity.Ratio => "ratio",
        SnapshotQuantity.InputCharge => "input charge",
        SnapshotQuantity.OutputCharge => "output charge",
        SnapshotQuantity.CapacitorCharge or SnapshotQuantity.SwitchCharge => $"charge of {Element}",
        SnapshotQuantity.SlowCoefficient => $"slow coefficient of {Element}",
        SnapshotQuantity.SlowSwitchingLimit => "slow-switching limit at 1 Hz",
        SnapshotQuantity.FastCoefficient => $"fast coefficient of {Element}",
        SnapshotQuantity.FastSwitchingLimit => "fast-switching limit",
        SnapshotQuantity.CapacitorVoltage => $"voltage of {Element}",
        SnapshotQuantity.BlockingVoltage => $"blocking voltage of {Element}",
        SnapshotQuantity.PeakBlockingVoltage => $"peak blocking voltage of {Element}",
        _ => string.Create(CultureInfo.InvariantCulture, $"output impedance at {Hertz:R} Hz"),
    };
}

/// <summary>One value of a snapshot.</summary>
/// <param name="Key">What it belongs to.</param>
/// <param name="Value">The value.</param>
internal readonly record struct SnapshotEntry(SnapshotKey Key, Quantity Value)
{
    /// <summary>The value with its unit; a number with nine digits.</summary>
    public string Text => Value.ToString("G9", null) + (Key.Unit.Length == 0 || !Value.IsDetermined ? string.Empty : $" {Key.Unit}");

    /// <summary>What it is, and the value with its unit.</summary>
    public override string ToString() => $"{Key.Description} = {Text}";
}
