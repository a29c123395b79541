namespace ScNet.Analysis;

/// <summary>The results of a mode that has some.</summary>
internal sealed record ModeResults(
    IdealPoint IdealPoint,
    ChargeFlow ChargeFlow,
    SlowSwitchingLimit SlowSwitchingLimit,
    FastSwitchingLimit FastSwitchingLimit,
    BlockingVoltages BlockingVoltages);
