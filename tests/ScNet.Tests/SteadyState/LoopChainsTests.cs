using MathNet.Numerics.LinearAlgebra;
using ScNet.Analysis;
using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Modes of chains of loops against their definition: with A the signed roots of the ohms by loops and E the elastances, the
/// rows W of all modes are orthogonal and W A E⁻¹ Aᵀ = T W, T the time constants, zero for a constant current.
/// </summary>
public sealed class LoopChainsTests
{
    public static TheoryData<int, bool, bool, double> Ladders => new()
    {
        { 24, false, false, 1 }, { 31, false, true, 1 }, { 30, true, false, 1 }, { 36, true, true, 1 }, { 26, true, true, 1e-9 }, { 26, false, false, 1e9 },
    };

    [Theory]
    [MemberData(nameof(Ladders))]
    public void Modes_and_rates_are_those_of_the_loops(int levels, bool isStepUp, bool hasEsr, double farads)
    {
        foreach (Phase phase in Phases(Ladder(levels, isStepUp, hasEsr, farads)))
        {
            int count = phase.Resistors;
            DenseRows riders = new(count, count);
            for (int r = 0; r < count; r++)
            {
                riders[r, r] = 1;
            }

            double[] rates = Assert.IsType<double[]>(phase.Chains!.TryRotate(riders));
            Matrix<double> modes = Matrix<double>.Build.Dense(count, count, (r, c) => riders[r, c]);
            Matrix<double> times = Matrix<double>.Build.DiagonalOfDiagonalArray([.. rates.Select(r => r > 0 ? 1 / r : 0)]);
            Assert.True(((modes * modes.Transpose()) - Matrix<double>.Build.DenseIdentity(count)).L2Norm() < 1e-12);
            Matrix<double> expected = modes * phase.TimeConstants();
            Assert.True(((times * modes) - expected).L2Norm() < 1e-12 * expected.L2Norm());
            Assert.Equal(phase.Loops.Count + (phase.Loops.HasLong ? 1 : 0), rates.Count(r => r > 0));
        }
    }

    [Fact]
    public void Some_of_these_ladders_have_a_long_loop_and_some_have_none()
    {
        Assert.Contains(Phases(Ladder(30, true, false, 1)), p => p.Loops.HasLong);
        Assert.Contains(Phases(Ladder(24, false, false, 1)), p => !p.Loops.HasLong);
    }

    // each cell is a loop of its own: its rate is one per product of all its ohms and its farads, its mode the roots of the shares of the ohms
    [Fact]
    public void Cells_that_share_nothing_have_each_their_own_rate()
    {
        Phase phase = Phases(Cells(12, 0).Build()).First();
        DenseRows riders = new(24, 1);
        for (int r = 0; r < 24; r++)
        {
            riders[r, 0] = r % 2 == 0 ? Math.Sqrt(1 + (r / 2)) : Math.Sqrt(2);
        }

        // that current is one ampere in every resistor, so that each mode carries it with the root of the ohms of its cell
        double[] rates = Assert.IsType<double[]>(phase.Chains!.TryRotate(riders));
        Assert.Equal(12, rates.Count(r => r > 0));
        double[] sorted = [.. rates.Where(r => r > 0).Order()];
        Assert.All(Enumerable.Range(0, 12), k => Assert.Equal(1 / ((3.0 + k) * (0.5 + k)), sorted[11 - k], 1e-13 * sorted[11 - k]));
        for (int r = 0; r < 24; r++)
        {
            Assert.Equal(rates[r] > 0 ? Math.Sqrt(3 + (r / 2)) : 0, Math.Abs(riders[r, 0]), 1e-13);
        }
    }

    [Fact]
    public void Fewer_than_twenty_four_resistors_are_not_worth_it()
    {
        Assert.NotNull(Phases(Cells(12, 0).Build()).First().Chains);
        Assert.Null(Phases(Cells(10, 1).Build()).First().Chains);
        Assert.NotNull(Phases(Cells(11, 1).Build()).First().Chains);
    }

    // squares that a long loop adds up lose a time constant below a hundred-millionth of another; without one nothing is added up
    [Theory]
    [InlineData(1e-5, true)]
    [InlineData(1e-11, false)]
    public void Time_constants_too_far_apart_are_refused_where_there_is_a_long_loop(double farads, bool isFound)
    {
        Converter ladder = Ladder(30, true, false, 1);
        ladder = ladder.WithValues([.. ladder.Capacitors.Select((c, i) => i % 5 == 2 ? farads * c.Farads : c.Farads)]);
        foreach (Phase phase in Phases(ladder))
        {
            Assert.Equal(isFound || !phase.Loops.HasLong, phase.Chains!.TryRotate(new DenseRows(phase.Resistors, 1)) is not null);
        }
    }

    // two switches in a row short a capacitor each, and both together a third: three loops, but two resistors
    [Fact]
    public void Loops_that_their_resistors_do_not_tell_apart_are_refused()
    {
        Converter shorted = Cells(12, 0).Capacitor("ab", "a", "b").Capacitor("bc", "b", "gnd").Capacitor("ac", "a", "gnd")
            .Switch("sab", "a", "b", on: 1).Switch("sbc", "b", "gnd", on: 1).Build();
        Phase phase = Phases(shorted).First();
        Assert.Equal(15, phase.Loops.Count);
        Assert.False(phase.Loops.HasLong);
        Assert.Null(phase.Chains!.TryRotate(new DenseRows(26, 1)));
    }

    private static Converter Ladder(int levels, bool isStepUp, bool hasEsr, double farads)
    {
        Converter ladder = isStepUp ? ScNet.Topologies.Ladder.StepUp(levels) : ScNet.Topologies.Ladder.StepDown(levels);
        return ladder.WithValues(
            [.. ladder.Capacitors.Select((_, i) => farads * (1 + (0.7 * (i % 5))))],
            [.. ladder.Switches.Select((_, i) => 1 + (0.3 * (i % 4)))],
            hasEsr ? [.. ladder.Capacitors.Select((_, i) => 0.1 + (0.05 * (i % 3)))] : null);
    }

    // cells with two switches in phase 1, then some with three
    private static ConverterBuilder Cells(int two, int three)
    {
        ConverterBuilder builder = Converter.Create("cells").Input("vin").Output("vout");
        for (int k = 0; k < two + three; k++)
        {
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}", 0.5 + k)
                .Switch($"a{k}", "vin", k < two ? $"p{k}" : $"x{k}", on: 1, ohms: 1 + k).Switch($"b{k}", $"n{k}", "vout", on: 1, ohms: 2)
                .Switch($"c{k}", $"p{k}", "vout", on: 2).Switch($"d{k}", $"n{k}", Converter.ReferenceNode, on: 2);
            if (k >= two)
            {
                builder.Switch($"x{k}", $"x{k}", $"p{k}", on: 1);
            }
        }

        return builder;
    }

    private static IEnumerable<Phase> Phases(Converter converter)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        ResistorFlows flows = ResistorFlows.Of(converter, FullTopology.Of(converter, analysis.Topology));
        for (int phase = 0; phase < 2; phase++)
        {
            int own = phase;
            ChainLoops loops = ChainLoops.TryOf(converter, analysis.Topology.Forests[phase], flows.Resistors[phase].Length, r => flows.Position(own, r))!;
            yield return new Phase(
                [.. flows.Resistors[phase].Select(flows.Ohms)], loops, LoopChains.TryOf(converter, analysis.Topology.Forests[phase], flows, phase));
        }
    }

    private sealed record Phase(double[] Ohms, ChainLoops Loops, LoopChains? Chains)
    {
        public int Resistors => Ohms.Length;

        // A E⁻¹ Aᵀ, the long loop last
        public Matrix<double> TimeConstants()
        {
            int n = Loops.Count, all = Loops.HasLong ? n + 1 : n;
            Matrix<double> a = Matrix<double>.Build.Dense(Ohms.Length, all), e = Matrix<double>.Build.Dense(all, all);
            for (int r = 0; r < Ohms.Length; r++)
            {
                foreach ((int loop, int sign) in Loops.Of(r))
                {
                    a[r, loop] = sign * Math.Sqrt(Ohms[r]);
                }

                if (Loops.HasLong)
                {
                    a[r, n] = Loops.LongSigns[r] * Math.Sqrt(Ohms[r]);
                }
            }

            for (int loop = 0; loop < n; loop++)
            {
                e[loop, loop] = Loops.Elastance[loop];
                if (Loops.HasLong)
                {
                    e[loop, n] = e[n, loop] = Loops.Shared[loop];
                }
            }

            if (Loops.HasLong)
            {
                // what the other loops have taken added again
                e[n, n] = Loops.LongElastance + Enumerable.Range(0, n).Sum(l => Loops.Shared[l] * Loops.Shared[l] / Loops.Elastance[l]);
            }

            return a * e.Inverse() * a.Transpose();
        }
    }
}
