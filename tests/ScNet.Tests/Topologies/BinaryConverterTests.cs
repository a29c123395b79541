using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>
/// Source of the ratios k/2^n in n + 1 phases, from memory: S. Ben-Yaakov and A. Kushnerov, "Algebraic
/// foundation of self adjusting switched capacitors converters", ECCE 2009.
/// </summary>
public sealed class BinaryConverterTests
{
    public static TheoryData<int> Capacitors => [1, 2, 3, 4, 5];

    [Theory]
    [MemberData(nameof(Capacitors))]
    public void Every_fraction_of_two_to_the_n_has_its_converter_both_ways(int n) => ForEachRatio(n, (k, used) =>
    {
        Converter down = BinaryConverter.StepDown(n, k);
        ModeAnalysis analysis = FamilyTests.Analyse(down);
        Assert.Equal(Quantity.Exact(k, 1 << n), analysis.Ratio);
        Assert.Equal(Quantity.Exact(1 << n, k), FamilyTests.Analyse(BinaryConverter.StepUp(n, k)).Ratio);
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
        Assert.Empty(analysis.Diagnostics);
        Assert.Equal(used, down.Capacitors.Count);
        Assert.Equal(used + 1, down.Phases.Count);
        Assert.InRange(down.Switches.Count, 1, 4 * used);
        Assert.All(analysis.BlockingVoltages.Peaks, peak => Assert.True(peak.IsExact && peak.ToFraction().Abs() <= 1));
    });

    [Theory]
    [MemberData(nameof(Capacitors))]
    public void Every_capacitor_holds_half_of_what_the_one_before_it_does(int n) => ForEachRatio(n, (k, _) => Assert.All(
        FamilyTests.Analyse(BinaryConverter.StepDown(n, k)).IdealPoint.CapacitorVoltages,
        (voltage, j) => Assert.Equal(Quantity.Exact(1, 2 << j), voltage)));

    [Theory]
    [MemberData(nameof(Capacitors))]
    public void Each_phase_carries_its_code_s_charge_through_the_capacitors_of_its_code(int n) => ForEachRatio(n, (k, used) =>
    {
        ModeAnalysis analysis = FamilyTests.Analyse(BinaryConverter.StepDown(n, k));
        IReadOnlyList<(int[] Digits, long Charge)> codes = BinaryCodes.Of(used, k >> (n - used));
        double[] slow = new double[used];
        for (int i = 0; i < codes.Count; i++)
        {
            (int[] digits, long charge) = codes[i];
            Assert.Equal(Quantity.Exact(charge, 1L << used), analysis.ChargeFlow.Output[i + 1]);
            Assert.Equal(Quantity.Exact(charge * digits[0], 1L << used), analysis.ChargeFlow.Input[i + 1]);
            for (int j = 1; j <= used; j++)
            {
                Quantity expected = Quantity.Exact(-charge * digits[j], 1L << used);
                Assert.Equal(expected, analysis.ChargeFlow.Capacitors[j - 1][i + 1]);
                slow[j - 1] += expected.ToDouble() * expected.ToDouble() / 2;
            }
        }

        Assert.Equal(slow, analysis.SlowSwitchingLimit.Coefficients.Select(c => c.ToDouble()));
    });

    [Theory]
    [MemberData(nameof(Capacitors))]
    public void From_any_start_the_voltages_settle(int n) => ForEachRatio(n, (k, used) =>
    {
        IReadOnlyList<(int[] Digits, long Charge)> codes = BinaryCodes.Of(used, k >> (n - used));
        Random random = new(k);
        double[] voltages = [.. Enumerable.Range(0, used).Select(_ => (4 * random.NextDouble()) - 2)];
        double output = 0;
        const double OutputFarads = 2;
        for (int period = 0; period < 4000; period++)
        {
            foreach ((int[] digits, _) in codes)
            {
                // The string and the output share charge; every flying capacitor has one farad.
                double excess = digits[0] + voltages.Select((v, j) => v * digits[j + 1]).Sum() - output;
                double charge = excess / (digits.Skip(1).Sum(Math.Abs) + (1 / OutputFarads));
                output += charge / OutputFarads;
                for (int j = 0; j < used; j++)
                {
                    voltages[j] -= digits[j + 1] * charge;
                }
            }
        }

        Assert.Equal((double)k / (1 << n), output, 1e-9);
        Assert.All(voltages, (voltage, j) => Assert.Equal(1.0 / (2 << j), voltage, 1e-9));
    });

    [Theory]
    [MemberData(nameof(Capacitors))]
    public void One_converter_has_a_mode_for_every_fraction(int n)
    {
        foreach (LoadKind load in Enum.GetValues<LoadKind>())
        {
            Converter converter = BinaryConverter.Reconfigurable(n, load: load);
            Assert.Equal((1 << n) - 1, converter.Modes.Count);
            Assert.Equal(n + 1, converter.Phases.Count);
            Assert.Equal(2 * n * (n + 1), converter.Switches.Count);
            ForEachRatio(n, (k, used) =>
            {
                ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[Quantity.Exact(k, 1 << n).ToString()]);
                Assert.Equal(Quantity.Exact(k, 1 << n), analysis.Ratio);
                Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
                Assert.Empty(analysis.Diagnostics);
                Assert.All(analysis.BlockingVoltages.Peaks, peak => Assert.True(peak.IsExact && peak.ToFraction().Abs() <= 1));

                // The spare ones hold the output voltage and carry nothing.
                for (int j = used; j < n; j++)
                {
                    Assert.Equal(analysis.Ratio, analysis.IdealPoint.CapacitorVoltages[j]);
                    Assert.All(analysis.ChargeFlow.Capacitors[j], charge => Assert.Equal(0, charge));
                }
            });
        }
    }

    [Fact]
    public void With_a_current_load_the_output_capacitor_takes_what_the_load_does_not() => ForEachRatio(4, (k, _) =>
    {
        ModeAnalysis stiff = FamilyTests.Analyse(BinaryConverter.StepDown(4, k));
        ModeAnalysis current = FamilyTests.Analyse(BinaryConverter.StepDown(4, k, load: LoadKind.Current));
        Assert.Equal(stiff.Ratio, current.Ratio);
        int phases = current.Converter.Phases.Count;
        for (int i = 0; i < phases; i++)
        {
            Fraction excess = stiff.ChargeFlow.Output[i + 1].ToFraction() - new Fraction(1, phases);
            Assert.Equal(Quantity.Exact(excess), current.ChargeFlow.Capacitors[^1][i + 1]);
        }
    });

    [Fact]
    public void Many_bits_are_no_trouble()
    {
        ModeAnalysis analysis = FamilyTests.Analyse(BinaryConverter.StepDown(16, 12345));
        Assert.Equal(Quantity.Exact(12345, 1 << 16), analysis.Ratio);
        Assert.Equal(31, BinaryConverter.StepUp(30, 715827883).Phases.Count);
    }

    [Theory]
    [InlineData(0, 1, "capacitors")]
    [InlineData(31, 1, "capacitors")]
    [InlineData(3, 0, "numerator")]
    [InlineData(3, 8, "numerator")]
    public void A_size_out_of_range_is_refused_by_name(int n, int k, string parameter)
    {
        Assert.Equal(parameter, Assert.Throws<ArgumentOutOfRangeException>(() => BinaryConverter.StepDown(n, k)).ParamName);
        string cells = parameter == "capacitors" ? "cells" : parameter;
        Assert.Equal(cells, Assert.Throws<ArgumentOutOfRangeException>(() => RecursiveCascade.StepUp(n, k)).ParamName);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(11)]
    public void A_reconfigurable_one_out_of_range_is_refused_by_name(int n)
    {
        Assert.Equal("capacitors", Assert.Throws<ArgumentOutOfRangeException>(() => BinaryConverter.Reconfigurable(n)).ParamName);
        Assert.Equal("cells", Assert.Throws<ArgumentOutOfRangeException>(() => RecursiveCascade.Reconfigurable(n)).ParamName);
    }

    private static void ForEachRatio(int n, Action<int, int> check)
    {
        for (int k = 1; k < 1 << n; k++)
        {
            check(k, n - BitOperations.TrailingZeroCount(k));
        }
    }
}
