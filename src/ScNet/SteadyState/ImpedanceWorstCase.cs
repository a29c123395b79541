namespace ScNet.SteadyState;

/// <summary>
/// How far tolerances can move the output impedance: the extremes that a search found, which values within
/// the tolerances do reach, and a range that no values within them leave. The truth lies between.
/// </summary>
/// <param name="FoundOhms">The smallest and largest impedance found in ohms (Ω). Each is the impedance of values within the tolerances.</param>
/// <param name="BoundOhms">The range in ohms (Ω) outside which no impedance lies, whatever the values within the tolerances; undetermined where none is known.</param>
public sealed record ImpedanceWorstCase(Interval<double> FoundOhms, Interval<double> BoundOhms)
{
    // As far apart as rounding may bring two equal numbers.
    private const double Rounding = 1e-9;

    /// <summary>Whether the smallest impedance found is the smallest there is: it meets the bound.</summary>
    public bool IsMinimumCertain => BoundOhms.IsDetermined && FoundOhms.IsDetermined && FoundOhms.Minimum!.Value <= BoundOhms.Minimum!.Value * (1 + Rounding);

    /// <summary>Whether the largest impedance found is the largest there is: it meets the bound.</summary>
    public bool IsMaximumCertain => BoundOhms.IsDetermined && FoundOhms.IsDetermined && FoundOhms.Maximum!.Value >= BoundOhms.Maximum!.Value * (1 - Rounding);

    /// <summary>Both ranges in ohms.</summary>
    public override string ToString() => $"{FoundOhms} Ω, certainly within {BoundOhms} Ω";
}
