namespace ScNet.Analysis;

/// <summary>The results of a mode that has some.</summary>
internal sealed record ModeResults(SettledVoltages Voltages, LoadedResults Loaded, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>What a load adds to the ideal point: flow and limits.</summary>
/// <param name="ChargeFlow">The flow.</param>
/// <param name="SlowSwitchingLimit">The slow limit.</param>
/// <param name="FastSwitchingLimit">The fast limit.</param>
/// <param name="SlowBranches">The charges of the slow limit, index branch · phases + phase.</param>
/// <param name="FastBranches">The charges of the fast limit, likewise.</param>
internal sealed record LoadedResults(
    ChargeFlow ChargeFlow, SlowSwitchingLimit SlowSwitchingLimit, FastSwitchingLimit FastSwitchingLimit, Quantity[] SlowBranches, Quantity[] FastBranches);
