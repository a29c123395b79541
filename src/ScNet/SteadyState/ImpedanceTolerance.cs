using MathNet.Numerics.Random;
using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>How component tolerances spread the exact output impedance.</summary>
public static class ImpedanceTolerance
{
    // Samples share a generator by blocks, so that the result does not depend on the number of threads.
    private const int BlockSize = 64;
    private const int LargestStepCount = 20;

    /// <summary>
    /// The smallest and largest impedance in ohms (Ω) with every value at one end of its tolerance: starting from the
    /// signs of the sensitivities, values change ends until the sensitivities there agree with them.
    /// </summary>
    /// <remarks>A worst case of corners that is locally the worst; where a sensitivity changes sign inside the band, an inner point can lie beyond it by a second-order amount.</remarks>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <param name="tolerances">The tolerances.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive, or not from 1e-60 to 1e60 Hz.</exception>
    public static Interval<double> WorstCaseOhms(ModeAnalysis analysis, double frequencyHz, ComponentTolerances tolerances)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(tolerances);
        return new Interval<double>(Corner(analysis, frequencyHz, tolerances, -1), Corner(analysis, frequencyHz, tolerances, 1));
    }

    /// <summary>Draws every value independently and uniformly within its tolerance, many times.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <param name="tolerances">The tolerances.</param>
    /// <param name="sampleCount">How many samples, at least one.</param>
    /// <param name="seed">Starts the random draws; the same number gives the same samples on any machine and number of threads.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops the run.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the sample count is not positive.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
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
        ArgumentOutOfRangeException.ThrowIfLessThan(sampleCount, 1);
        double nominal = OutputImpedance.Of(analysis).Ohms(frequencyHz);
        var samples = new double[sampleCount];
        int blocks = ((sampleCount - 1) / BlockSize) + 1;
        int blocksDone = 0;
        Parallel.For(0, blocks, new ParallelOptions { CancellationToken = cancellationToken }, block =>
        {
            int start = block * BlockSize;
            Draw(analysis, frequencyHz, tolerances, new Xoshiro256StarStar(BlockSeed(seed, block)), samples.AsSpan(start, Math.Min(BlockSize, sampleCount - start)));
            progress?.Report((double)Interlocked.Increment(ref blocksDone) / blocks);
        });
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

    private static double Corner(ModeAnalysis analysis, double frequencyHz, ComponentTolerances tolerances, int direction)
    {
        var deviations = new double[DeviationCount(analysis.Converter)];
        Converter corner = analysis.Converter;
        double ohms = OutputImpedance.Of(analysis).Ohms(frequencyHz);
        for (int step = 0; step < LargestStepCount; step++)
        {
            ImpedanceSensitivity sensitivity = ImpedanceSensitivity.Of(analysis.WithValuesOf(corner), frequencyHz);
            double[] next = [.. sensitivity.ByCapacitanceOhmsPerFarad.Concat(sensitivity.ByOnResistance).Concat(sensitivity.ByEsr)
                .Select(slope => (double)(direction * Math.Sign(slope)))];
            Converter candidate = tolerances.Apply(analysis.Converter, next);
            double found = Ohms(analysis, candidate, frequencyHz);
            if (step > 0 && (next.AsSpan().SequenceEqual(deviations) || direction * (found - ohms) <= 0))
            {
                break;
            }

            (deviations, corner, ohms) = (next, candidate, found);
        }

        return ohms;
    }

    private static int DeviationCount(Converter converter) => (2 * converter.Capacitors.Count) + converter.Switches.Count;

    private static double Ohms(ModeAnalysis analysis, Converter converter, double frequencyHz) =>
        PreparedMode.Of(converter, analysis.Mode, analysis.Topology).Kernel
            .Ohms(1 / Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz)));

    // Blocks must not overlap for neighbouring seeds: a multiplicative hash (Knuth, from memory) spreads them.
    private static int BlockSeed(int seed, int block) => unchecked((int)(((uint)seed * 2654435761u) ^ ((uint)block * 2246822519u)));
}
