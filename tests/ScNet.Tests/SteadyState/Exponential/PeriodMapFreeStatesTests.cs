using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Periods of networks with states that nothing moves: capacitors in series, and a current round two inductors.</summary>
public sealed class PeriodMapFreeStatesTests
{
    private const double Period = 1.3;

    [Fact]
    public void The_state_returns_and_one_state_of_each_pattern_is_zero()
    {
        StateEquations<DoubleDouble> equations = Equations();
        PeriodMap<DoubleDouble> map = Run(equations);
        DensePeriod dense = DensePeriod.Of(equations, Period);
        Matrix<double> start = Matrix<double>.Build.Dense(5, 2, (r, c) => map.Start[(r * 2) + c].Nearest);
        Assert.Equal(0, (dense.Return * start - dense.Drive).L2Norm(), 1e-13);
        Assert.True(start.L2Norm() > 0.1);
        Assert.Equal(2, map.KeptCount);
        foreach (int pivot in equations.FreeStates().Pivots)
        {
            Assert.Equal([0, 0], start.Row(pivot));
        }
    }

    /// <summary>Of a row that no pattern changes the repeated one is that by the pseudo-inverse: the map has the patterns on both sides.</summary>
    [Fact]
    public void A_repeated_row_sees_no_pattern()
    {
        StateEquations<DoubleDouble> equations = Equations();
        PeriodMap<DoubleDouble> map = Run(equations);
        Matrix<double> back = DensePeriod.Of(equations, Period).Return;
        Vector<double> seen = Vector<double>.Build.Dense([1, -2, 0.5, 3, 0.7]) * back;
        double[] row = [.. seen];
        map.Repeat(row, new double[5]);
        Vector<double> expected = seen * NodalNetwork.PseudoInverse(back, 1e-9);
        for (int x = 0; x < 5; x++)
        {
            Assert.Equal(expected[x], row[x], 1e-12);
        }
    }

    /// <summary>Its eigenvalues are those of the pseudo-inverse less the zeros, so that traces of powers agree.</summary>
    [Fact]
    public void The_inverse_has_the_eigenvalues_of_the_states_that_move()
    {
        StateEquations<DoubleDouble> equations = Equations();
        var values = new double[4];
        Run(equations).CopyInverse(values);
        Matrix<double> inverse = Matrix<double>.Build.Dense(2, 2, (r, c) => values[(r * 2) + c]);
        Matrix<double> expected = NodalNetwork.PseudoInverse(DensePeriod.Of(equations, Period).Return, 1e-9);
        Assert.Equal(expected.Trace(), inverse.Trace(), 1e-11);
        Assert.Equal((expected * expected).Trace(), (inverse * inverse).Trace(), 1e-10);
    }

    /// <summary>
    /// C₁ = 4 over C₂ = 1 behind 1 Ω: with v = (1/2, 1) the generator is −v vᵀ, the pattern (1, −1/2), and of the state
    /// (0, x₂) at the start only the output voltage x₁/2 + x₂ is told, 1 V per volt and −1 V per ampere.
    /// </summary>
    [Fact]
    public void Two_capacitors_in_series_by_hand()
    {
        Circuit circuit = new Circuit(LoadKind.Current, 1).Resistor("vin", "vout", 1).Capacitor("vout", "m", 4).Capacitor("m", Converter.ReferenceNode, 1);
        PeriodMap<DoubleDouble> map = Run(StateEquations<DoubleDouble>.Of(circuit.Structure(), circuit.Values()));
        Assert.Equal([0, 0, 1, -1], [.. map.Start.Select(v => Math.Round(v.Nearest, 15))]);

        // (−X) of the kept state is 1 − exp(−(5/4) T), and the row (0, w) repeats to w (1/2, 1) over it
        double[] row = [0, 3];
        map.Repeat(row, new double[2]);
        double decayed = -double.Exp(-1.25 * Period) + 1;
        Assert.Equal(1.5 / decayed, row[0], 1e-14);
        Assert.Equal(3 / decayed, row[1], 1e-14);
    }

    private static PeriodMap<DoubleDouble> Run(StateEquations<DoubleDouble> equations)
    {
        PeriodMap<DoubleDouble> map = new(equations);
        Assert.True(map.TryRun(DoubleDouble.Of(Period)));
        return map;
    }

    // three capacitors in series behind a switched resistance, and two inductors side by side with a resistor to the reference
    private static StateEquations<DoubleDouble> Equations()
    {
        Circuit circuit = new Circuit(LoadKind.Current, 0.4, 0.6)
            .Switch("vin", "vout", 1.5, 1).Switch("vin", "vout", 0.5, 2)
            .Capacitor("vout", "a", 0.9).Capacitor("a", "b", 0.5).Capacitor("b", Converter.ReferenceNode, 1.7)
            .Inductor("vout", "x", 0.7).Inductor("vout", "x", 1.1).Resistor("x", Converter.ReferenceNode, 0.8);
        return StateEquations<DoubleDouble>.Of(circuit.Structure(), circuit.Values());
    }
}
