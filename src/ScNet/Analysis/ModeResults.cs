namespace ScNet.Analysis;

/// <summary>The results of a mode that has some.</summary>
internal sealed record ModeResults(IdealPoint IdealPoint, BlockingVoltages BlockingVoltages, LoadedResults Loaded);

/// <summary>What a load adds to the ideal point: flow and limits.</summary>
internal sealed record LoadedResults(ChargeFlow ChargeFlow, SlowSwitchingLimit SlowSwitchingLimit, FastSwitchingLimit FastSwitchingLimit);
