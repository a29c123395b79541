namespace ScNet.Derivations.Snapshots;

/// <summary>What a value of a snapshot is.</summary>
internal enum SnapshotQuantity
{
    Ratio,
    InputCharge,
    OutputCharge,
    CapacitorCharge,
    SwitchCharge,
    SlowCoefficient,
    SlowSwitchingLimit,
    FastCoefficient,
    FastSwitchingLimit,
    CapacitorVoltage,
    BlockingVoltage,
    PeakBlockingVoltage,
    OutputImpedance,
}
