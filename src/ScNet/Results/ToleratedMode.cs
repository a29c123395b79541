using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>How component tolerances spread the output impedance of a mode at one frequency.</summary>
/// <param name="FrequencyHz">The switching frequency in hertz (Hz).</param>
/// <param name="WorstCase">The smallest and the largest within the tolerances.</param>
/// <param name="Spread">Samples drawn within the tolerances.</param>
public sealed record ToleratedMode(double FrequencyHz, ImpedanceWorstCase WorstCase, ImpedanceDistribution Spread);
