namespace ScNet.SteadyState;

/// <summary>What of a two-port is worked out on demand only.</summary>
internal sealed record TwoPortDetails(NamedList<double?> CapacitorVoltages, double DecayPerPeriod, double TimeConstantPeriods);
