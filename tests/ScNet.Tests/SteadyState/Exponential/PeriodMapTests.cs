using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>A period of equations written down, against exponentials of dense matrices and by hand.</summary>
public sealed class PeriodMapTests
{
    private const double Period = FourPhases.PeriodSeconds;

    [Fact]
    public void In_plain_precision_a_period_is_that_of_dense_exponentials() => Agree<PlainReal>();

    [Fact]
    public void In_doubled_precision_a_period_is_that_of_dense_exponentials() => Agree<DoubleDouble>();

    [Fact]
    public void A_further_period_is_the_same_as_alone()
    {
        PeriodMap<PlainReal> map = new(FourPhases.Equations<PlainReal>()), alone = new(FourPhases.Equations<PlainReal>());
        Assert.True(map.TryRun(PlainReal.Of(5)));
        Assert.True(map.TryRun(PlainReal.Of(0.3)));
        Assert.True(alone.TryRun(PlainReal.Of(0.3)));
        Assert.Equal(Figures(alone), Figures(map));
    }

    [Fact]
    public void Phases_of_the_same_connections_and_duty_share_an_exponential_others_do_not()
    {
        PhaseEquations<PlainReal> one = Decay(1), other = Decay(2);
        double[] First(double[] duties, params PhaseEquations<PlainReal>[] phases) =>
            [.. new PeriodMap<PlainReal>(WrittenEquations.Of(WrittenEquations.Structure(1), duties, phases)).FirstPhase.Select(p => (double)p)];
        Assert.Equal([0, 1, 3], First([0.2, 0.3, 0.2, 0.1, 0.2], one, other, one, one, one));
        Assert.Equal([0, 1], First([0.5, 0.5], one, other));
        Assert.Equal([0], First([0.5, 0.5], one, one));
    }

    /// <summary>x' = −a x + u over a whole period: x = u/a, whatever the time.</summary>
    [Fact]
    public void One_decay_rests_at_what_drives_it()
    {
        PeriodMap<DoubleDouble> map = new(WrittenEquations.Of(WrittenEquations.Structure(1), [1], WrittenEquations.Phase<DoubleDouble>(2, [-4, 1, -2], [3, 0, 5], [1, 0.5, 0])));
        Assert.True(map.TryRun(DoubleDouble.Of(0.75)));
        Assert.Equal([0.25, -0.5], WrittenEquations.Doubles<DoubleDouble>(map.Start));
        Assert.Equal([0.1875, -0.375], Rounded(map.StateIntegral));
        Assert.Equal([0.5625, 2.625], Rounded(map.InputCharge));
        Assert.Equal([0.5625, -0.375], Rounded(map.Output));
        var inverse = new double[1];
        map.CopyInverse(inverse);
        Assert.Equal(1 / (1 - Math.Exp(-3)), inverse[0], 1e-15);
    }

    [Fact]
    public void A_state_that_no_phase_moves_has_no_period()
    {
        PeriodMap<PlainReal> map = new(WrittenEquations.Of(WrittenEquations.Structure(2), [1], WrittenEquations.Phase<PlainReal>(2, [-1, 0, 1, 1, 0, 0, 1, 1], new double[4], new double[4])));
        Assert.False(map.TryRun(PlainReal.Of(1)));
    }

    [Fact]
    public void Without_states_inputs_alone_count()
    {
        PeriodMap<DoubleDouble> map = new(WrittenEquations.Of(WrittenEquations.Structure(0), [0.25, 0.75], WrittenEquations.Phase<DoubleDouble>(2, [], [2, 3], [4, 5]), WrittenEquations.Phase<DoubleDouble>(2, [], [6, 7], [8, 9])));
        Assert.True(map.TryRun(DoubleDouble.Of(2)));
        Assert.Equal([10, 12], WrittenEquations.Doubles<DoubleDouble>(map.InputCharge));
        Assert.Equal([14, 16], WrittenEquations.Doubles<DoubleDouble>(map.Output));
        Assert.Equal(0, map.KeptCount);
    }

    private static void Agree<T>()
        where T : struct, IReal<T>
    {
        StateEquations<T> equations = FourPhases.Equations<T>();
        PeriodMap<T> map = new(equations);
        Assert.True(map.TryRun(T.Of(Period)));
        DensePeriod dense = DensePeriod.Of(equations, Period);
        for (int j = 0; j < 4; j++)
        {
            Close(dense.Change(j), WrittenEquations.Doubles(map.ChangeOf(j)));
            Close(dense.Integral(j), WrittenEquations.Doubles(map.IntegralOf(j)));
        }

        Assert.Equal(3, map.KeptCount);
        Assert.Equal(3, map.InputCount);
        Close(dense.Start, WrittenEquations.Doubles<T>(map.Start));
        Close(dense.Sum(j => WrittenEquations.Doubles<T>(equations.Phases[j].InputCurrent)), map.InputCharge);
        Close(dense.Sum(j => WrittenEquations.Doubles<T>(equations.Phases[j].Output)), map.Output);
        Close(dense.Sum(j => WrittenEquations.Doubles<T>(equations.Phases[j].FurtherOutputs[0])), Assert.Single(map.FurtherOutputs));
        for (int x = 0; x < 3; x++)
        {
            Close(dense.Sum(_ => [.. Enumerable.Range(0, 6).Select(c => c == x ? 1.0 : 0)]), map.StateIntegral.AsSpan(3 * x, 3));
        }

        var inverse = new double[9];
        map.CopyInverse(inverse);
        Close(dense.Return.Inverse(), inverse);
        double[] row = [0.4, -1.3, 0.7];
        Vector<double> repeated = Vector<double>.Build.Dense([.. row]) * dense.Return.Inverse();
        map.Repeat(row, new double[3]);
        Close(repeated.ToRowMatrix(), row);
    }

    private static double[][] Figures(PeriodMap<PlainReal> map)
    {
        var inverse = new double[9];
        map.CopyInverse(inverse);
        return
        [
            WrittenEquations.Doubles<PlainReal>(map.Start), WrittenEquations.Doubles<PlainReal>(map.StateIntegral), WrittenEquations.Doubles<PlainReal>(map.InputCharge),
            WrittenEquations.Doubles<PlainReal>(map.Output), WrittenEquations.Doubles<PlainReal>(map.FurtherOutputs[0]), inverse,
            map.Error.InputCharge, map.Error.Output, map.Error.FurtherOutputs[0],
        ];
    }

    private static PhaseEquations<PlainReal> Decay(double rate) => WrittenEquations.Phase<PlainReal>(2, [-rate, 1, 0], new double[3], new double[3]);

    private static double[] Rounded(DoubleDouble[] values) => [.. values.Select(v => Math.Round(v.Nearest, 15))];

    private static void Close<T>(double[] expected, ReadOnlySpan<T> actual)
        where T : struct, IReal<T> => Close(Vector<double>.Build.Dense(expected).ToRowMatrix(), WrittenEquations.Doubles(actual));

    private static void Close(Matrix<double> expected, double[] actual)
    {
        Assert.Equal(expected.RowCount * expected.ColumnCount, actual.Length);
        for (int k = 0; k < actual.Length; k++)
        {
            Assert.Equal(expected[k / expected.ColumnCount, k % expected.ColumnCount], actual[k], 1e-12);
        }
    }
}
