using MathNet.Numerics.Random;
using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>How component tolerances spread the exact output impedance.</summary>
public static class ImpedanceTolerance
{
    // Samples share a generator by blocks, so that the result does not depend on the number of threads.
    private const int BlockSize = 64;
    private const int MostSamples = 1_000_000;

    /// <summary>
    /// The smallest and largest impedance within the tolerances: the extremes that a search finds, and a range that
    /// certainly holds all.
    /// </summary>
    /// <remarks>
    /// The impedance is not monotone in every value, and its extremes can lie inside the tolerances, so neither all
    /// corners nor the signs of the sensitivities are sure to find them; hence the range. It is nearly met far from
    /// the corner frequency. Derivation: docs/theory/tolerances.md. Cost: all corners up to ten values with a
    /// tolerance, beyond that a few sensitivities.
    /// </remarks>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <param name="tolerances">The tolerances.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive, or not from 1e-60 to 1e60 Hz.</exception>
    /// <exception cref="ScNetException">The converter has inductors (<see cref="DiagnosticCodes.InductorsUnsupported"/>), or the network is too large.</exception>
    public static ImpedanceWorstCase WorstCase(ModeAnalysis analysis, double frequencyHz, ComponentTolerances tolerances)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(tolerances);
        Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
        return new ImpedanceWorstCase(
            new Interval<double>(
                WorstCaseSearch.Ohms(analysis, frequencyHz, tolerances, -1), WorstCaseSearch.Ohms(analysis, frequencyHz, tolerances, 1)),
            ImpedanceBound.Of(analysis, frequencyHz, tolerances));
    }

    /// <summary>Draws every value independently and uniformly within its tolerance, many times.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <param name="tolerances">The tolerances.</param>
    /// <param name="sampleCount">How many samples, from one to a million.</param>
    /// <param name="seed">Starts the random draws; the same number gives the same samples on any machine and number of threads.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops the run.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the sample count is not positive.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    /// <exception cref="ScNetException">The converter has inductors (<see cref="DiagnosticCodes.InductorsUnsupported"/>), or the network is too large.</exception>
    public static ImpedanceDistribution MonteCarlo(
        ModeAnalysis analysis,
        double frequencyHz,
        ComponentTolerances tolerances,
        int sampleCount,
        int seed,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(tolerances);
        Guard.Count(sampleCount, 1, MostSamples, nameof(sampleCount));
        InductorSupport.Refuse(analysis.Converter, "The spread of the output impedance within tolerances");
        double nominal = OutputImpedance.Of(analysis).Ohms(frequencyHz);
        var samples = new double[sampleCount];
        int blocks = ((sampleCount - 1) / BlockSize) + 1;
        int blocksDone = 0;
        ParallelLoop.Run(() => Parallel.For(0, blocks, new ParallelOptions { CancellationToken = cancellationToken }, block =>
        {
            int start = block * BlockSize;
            Draw(analysis, frequencyHz, tolerances, new Xoshiro256StarStar(BlockSeed(seed, block)), samples.AsSpan(start, Math.Min(BlockSize, sampleCount - start)));
            progress?.Report((double)Interlocked.Increment(ref blocksDone) / blocks);
        }));
        return new ImpedanceDistribution(nominal, samples);
    }

    private static void Draw(ModeAnalysis analysis, double frequencyHz, ComponentTolerances tolerances, Xoshiro256StarStar random, Span<double> samples)
    {
        var deviations = new double[DeviationCount(analysis.Converter)];
        for (int i = 0; i < samples.Length; i++)
        {
            random.NextDoubles(deviations);
            for (int k = 0; k < deviations.Length; k++)
            {
                deviations[k] = (2 * deviations[k]) - 1;
            }

            samples[i] = Ohms(analysis, tolerances.Apply(analysis.Converter, deviations), frequencyHz);
        }
    }

    private static int DeviationCount(Converter converter) => (2 * converter.Capacitors.Count) + converter.Switches.Count;

    private static double Ohms(ModeAnalysis analysis, Converter converter, double frequencyHz) =>
        PreparedMode.Of(converter, analysis.Topology).Ohms(1 / frequencyHz);

    // Blocks must not overlap for neighbouring seeds: a multiplicative hash (Knuth, from memory) spreads them.
    private static int BlockSeed(int seed, int block) => unchecked((int)(((uint)seed * 2654435761u) ^ ((uint)block * 2246822519u)));
}
