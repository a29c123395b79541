using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>The stated error of a period: what every phase brings into the state, times what it adds for ever after.</summary>
public sealed class PeriodErrorTests
{
    private const double Period = FourPhases.PeriodSeconds;

    // the plain unit of rounding times the errors of single operations
    private const double Unit = 16 * 1.1102230246251565e-16;

    /// <summary>
    /// x' = −x + u₁ − u₂ and T = 1/2: |x| = 1 at the start, each ampere-second of the state weighs exactly one in ∫x over all
    /// later time. Errors ε (1 + T) and ε T of both drives, and ε T of the row and its part of the input.
    /// </summary>
    [Fact]
    public void One_decay_by_hand()
    {
        PeriodMap<PlainReal> map = new(WrittenEquations.Of(WrittenEquations.Structure(1), [1], WrittenEquations.Phase<PlainReal>(2, [-1, 1, -1], [-2, 3, 0], [1, 0, 0])));
        Assert.True(map.TryRun(PlainReal.Of(0.5)));
        Close([2.5 * Unit, 2.5 * Unit], map.Error.Output);

        // the row −2 weighs twice as much: 2 (1.5 + 0.5) + 0.5 (2 + 3)
        Close([6.5 * Unit, 5 * Unit], map.Error.InputCharge);
    }

    [Fact]
    public void Without_symmetry_it_is_the_sum_over_phases_of_rounding_times_weight()
    {
        StateEquations<PlainReal> equations = FourPhases.Equations<PlainReal>();
        PeriodMap<PlainReal> map = new(equations);
        Assert.True(map.TryRun(PlainReal.Of(Period)));
        DensePeriod dense = DensePeriod.Of(equations, Period);
        Close(Expected(equations, dense, p => p.InputCurrent), map.Error.InputCharge);
        Close(Expected(equations, dense, p => p.Output), map.Error.Output);
        Close(Expected(equations, dense, p => p.FurtherOutputs[0]), Assert.Single(map.Error.FurtherOutputs));
    }

    [Fact]
    public void In_doubled_precision_the_unit_of_rounding_alone_differs()
    {
        PeriodMap<PlainReal> plain = new(FourPhases.Equations<PlainReal>());
        PeriodMap<DoubleDouble> fine = new(FourPhases.Equations<DoubleDouble>());
        Assert.True(plain.TryRun(PlainReal.Of(Period)));
        Assert.True(fine.TryRun(DoubleDouble.Of(Period)));
        double ratio = DoubleDouble.Rounding / PlainReal.Rounding;
        Close([.. plain.Error.Output.Select(e => e * ratio)], fine.Error.Output);
        Close([.. plain.Error.InputCharge.Select(e => e * ratio)], fine.Error.InputCharge);
    }

    [Fact]
    public void The_largest_state_is_taken_note_of_per_input_until_the_next_start()
    {
        PeriodError error = new(2, 3, 0);
        StateEquations<PlainReal> equations = WrittenEquations.Of(
            WrittenEquations.Structure(2, further: 1), [1], WrittenEquations.Phase<PlainReal>(3, [-1, 0, 0, 0, 0, 0, -1, 0, 0, 0], [1, 0, 0, 0, 0], new double[5]));
        PeriodMap<PlainReal> map = new(equations);
        Assert.True(map.TryRun(PlainReal.Of(1)));

        // weight and row are one: ε ((1 + 1) + 1) of the largest state
        error.Meet<PlainReal>(WrittenEquations.Numbers<PlainReal>([1, -2, 3, -4, 0, 5]));
        error.Meet<PlainReal>(WrittenEquations.Numbers<PlainReal>([0, 0, 0, 0, 0, -6]));
        error.Estimate(map, equations, PlainReal.Of(1));
        Close([12 * Unit, 6 * Unit, 18 * Unit], error.InputCharge);
        error.Restart();
        error.Estimate(map, equations, PlainReal.Of(1));
        Assert.Equal([0, 0, 0], error.InputCharge);
    }

    private static double[] Expected(StateEquations<PlainReal> equations, DensePeriod dense, Func<PhaseEquations<PlainReal>, PlainReal[]> rowOf)
    {
        double[] Row(int phase) => WrittenEquations.Doubles<PlainReal>(rowOf(equations.Phases[phase]));
        var errors = new double[3];
        for (int u = 0; u < 3; u++)
        {
            double largest = dense.Starts().Max(states => states.Column(u).AbsoluteMaximum());
            for (int j = 0; j < 4; j++)
            {
                double time = dense.Seconds(j), weight = dense.Weight(j, Row, periods: 60).AbsoluteMaximum();
                double drive = Enumerable.Range(0, 3).Max(x => Math.Abs(equations.Phases[j].Generator[(x * 6) + 3 + u].Nearest));
                double own = Row(j) is { Length: > 0 } row ? (row[..3].Max(Math.Abs) * largest) + Math.Abs(row[3 + u]) : double.NaN;
                errors[u] += double.IsNaN(own) ? 0 : Unit * ((weight * ((((equations.Phases[j].Norm * time) + 1) * largest) + (time * drive))) + (time * own));
            }
        }

        return errors;
    }

    private static void Close(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(1, actual[k] / expected[k], 1e-10);
        }
    }
}
