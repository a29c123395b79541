using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Samples of an impedance are drawn in blocks of 64.</summary>
public sealed class ImpedanceSamplesTests
{
    /// <summary>The last block has what is left; a full one is not followed by an empty one.</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(63, 1)]
    [InlineData(64, 1)]
    [InlineData(65, 2)]
    [InlineData(128, 2)]
    public void Every_block_tells_its_share_once(int samples, int blocks)
    {
        Converter half = OperatedConverters.Half().Build();
        Shares shares = new();
        ImpedanceDistribution distribution = ImpedanceTolerance.MonteCarlo(
            ModeAnalysis.Of(half, half.Modes[0]), 1, new ComponentTolerances(0.2, 0.3), samples, 1, shares);
        Assert.Equal(samples, distribution.SamplesOhms.Distinct().Count());
        Assert.Equal(Enumerable.Range(1, blocks).Select(k => (double)k / blocks), shares.Told.Order());
    }

    private sealed class Shares : IProgress<double>
    {
        private readonly Lock _lock = new();

        public List<double> Told { get; } = [];

        public void Report(double value)
        {
            lock (_lock)
            {
                Told.Add(value);
            }
        }
    }
}
