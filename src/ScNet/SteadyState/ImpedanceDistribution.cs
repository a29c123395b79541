using MathNet.Numerics.Statistics;

namespace ScNet.SteadyState;

/// <summary>The output impedances of a Monte-Carlo run.</summary>
public sealed class ImpedanceDistribution
{
    private readonly double[] _sorted;

    internal ImpedanceDistribution(double nominalOhms, double[] samples)
    {
        NominalOhms = nominalOhms;
        SamplesOhms = Array.AsReadOnly(samples);
        _sorted = (double[])samples.Clone();
        Array.Sort(_sorted);
        (MeanOhms, StandardDeviationOhms) = samples.MeanStandardDeviation();
    }

    /// <summary>The impedance at nominal values in ohms (Ω).</summary>
    public double NominalOhms { get; }

    /// <summary>The impedance of each sample in ohms (Ω), in the order drawn: the same for the same seed on any number of threads.</summary>
    public IReadOnlyList<double> SamplesOhms { get; }

    /// <summary>The mean in ohms (Ω).</summary>
    public double MeanOhms { get; }

    /// <summary>The standard deviation of the sample in ohms (Ω).</summary>
    public double StandardDeviationOhms { get; }

    /// <summary>The impedance in ohms (Ω) that a fraction of the samples does not exceed.</summary>
    /// <param name="fraction">From 0 (the least) to 1 (the greatest).</param>
    /// <exception cref="ArgumentOutOfRangeException">The fraction is not from 0 to 1.</exception>
    public double QuantileOhms(double fraction) => fraction is >= 0 and <= 1
        ? SortedArrayStatistics.Quantile(_sorted, fraction)
        : throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "Expected a fraction from 0 to 1.");

    /// <summary>Nominal value, mean and deviation.</summary>
    public override string ToString() =>
        $"nominal {UnitText.Of(NominalOhms, "Ω")}, mean {UnitText.Of(MeanOhms, "Ω")}, standard deviation {UnitText.Of(StandardDeviationOhms, "Ω")} of {UnitText.Count(SamplesOhms.Count, "sample", "samples")}";
}
