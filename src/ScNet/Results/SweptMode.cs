using Fractions;
using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>What a row of a <see cref="ResultTable.OfOperatingSweep"/> shows of a mode.</summary>
/// <param name="Duty">The duty of the first phase.</param>
/// <param name="Point">The operating point.</param>
/// <param name="Steady">The periodic steady state there.</param>
public sealed record SweptMode(Fraction Duty, OperatingPoint Point, PeriodicSteadyState Steady);
