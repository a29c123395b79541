using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>
/// Source of the 2^n - 1 ratios from memory: L. G. Salem and P. P. Mercier, "A recursive switched-capacitor
/// DC-DC converter achieving 2^N - 1 ratios", IEEE J. Solid-State Circuits 49(12), 2014.
/// </summary>
public sealed class RecursiveCascadeTests : FamilyTests
{
    public static TheoryData<int> Cells => [1, 2, 3, 4, 5];

    internal override FamilyFacts Facts(int size, double farads, double ohms)
    {
        int n = size;
        int k = (int)(((1L << n) * 5 / 7) | 1);
        BigInteger whole = BigInteger.One << n;
        Dictionary<string, (Fraction, Fraction)> capacitors = [];
        Dictionary<string, (int, Fraction, Fraction)> switches = [];
        Fraction before = Fraction.Zero;
        for (int i = 1; i <= n; i++)
        {
            bool bit = ((k >> (i - 1)) & 1) == 1;
            Fraction charge = new(BigInteger.One << (i - 1), whole);
            Fraction middle = (before + (bit ? 1 : 0)) / 2;
            Fraction voltage = bit ? 1 - middle : middle;
            capacitors.Add($"fly{i}", (charge, voltage));
            if (i < n)
            {
                bool upper = ((k >> i) & 1) == 1;
                capacitors.Add($"dc{i}", (upper ? charge : -charge, middle));
            }

            switches.Add(bit || i == 1 ? $"in{i}" : $"from{i}", (1, charge, voltage));
            switches.Add($"mid{i}", (1, -charge, voltage));
            switches.Add($"top{i}", (2, charge, voltage));
            switches.Add(bit && i > 1 ? $"onto{i}" : $"ground{i}", (2, -charge, voltage));
            before = middle;
        }

        Fraction half = new(1, 2);
        return new FamilyFacts
        {
            N = new Fraction(whole, k),
            StepDown = RecursiveCascade.StepDown(n, k, farads, ohms),
            StepUp = RecursiveCascade.StepUp(n, k, farads, ohms),
            StepDownWithCurrentLoad = RecursiveCascade.StepDown(n, k, farads, ohms, LoadKind.Current),
            StepUpWithCurrentLoad = RecursiveCascade.StepUp(n, k, farads, ohms, LoadKind.Current),
            Capacitors = capacitors,
            Switches = switches,
            High = (new Fraction(k, whole), 0),
            Low = (half, half),
            SlowLimit = new Fraction((5 * whole * whole / 4) - 2, 3 * whole * whole),
            FastLimit = new Fraction(8 * ((whole * whole) - 1), 3 * whole * whole),
        };
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void Every_fraction_of_two_to_the_n_has_its_converter_both_ways(int cells)
    {
        int whole = 1 << cells;
        for (int k = 1; k < whole; k++)
        {
            Assert.Equal(Quantity.Exact(k, whole), Analyse(RecursiveCascade.StepDown(cells, k)).Ratio);
            Assert.Equal(Quantity.Exact(whole, k), Analyse(RecursiveCascade.StepUp(cells, k)).Ratio);
            Assert.Equal(4 * (cells - BitOperations.TrailingZeroCount(k)), RecursiveCascade.StepDown(cells, k).Switches.Count);
        }
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void One_converter_has_a_mode_for_every_fraction(int cells)
    {
        int whole = 1 << cells;
        foreach (LoadKind load in Enum.GetValues<LoadKind>())
        {
            Converter converter = RecursiveCascade.Reconfigurable(cells, load: load);
            Assert.Equal(whole - 1, converter.Modes.Count);
            Assert.Equal((6 * cells) - 2, converter.Switches.Count);
            for (int k = 1; k < whole; k++)
            {
                Quantity ratio = Quantity.Exact(k, whole);
                ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[ratio.ToString()]);
                Assert.Equal(ratio, analysis.Ratio);
                Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
                Assert.Empty(analysis.Diagnostics);
                Assert.All(analysis.BlockingVoltages.Peaks, peak => Assert.True(peak.IsExact));
            }
        }
    }

    [Fact]
    public void A_mode_costs_no_more_than_the_converter_of_that_ratio_alone()
    {
        Converter converter = RecursiveCascade.Reconfigurable(4);
        for (int k = 1; k < 16; k++)
        {
            ModeAnalysis alone = Analyse(RecursiveCascade.StepDown(4, k));
            ModeAnalysis mode = ModeAnalysis.Of(converter, converter.Modes[k - 1]);
            Assert.Equal(alone.SlowSwitchingLimit.Coefficients.Sum(c => c.ToDouble()), mode.SlowSwitchingLimit.Coefficients.Sum(c => c.ToDouble()));
            Assert.Equal(alone.FastSwitchingLimit.Ohms, mode.FastSwitchingLimit.Ohms, 12);
        }
    }
}
