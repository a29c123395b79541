namespace ScNet.Tests.Laws;

/// <summary>Both limits and their flows against the literal definition, solved densely.</summary>
public sealed class LimitLaws
{
    private const double Tolerance = 1e-7;
    private const int Iterations = 300;

    [Fact]
    public void The_slow_limit_is_the_voltage_lost_by_a_network_that_settles_in_each_phase() => LawSample.Check(
        (_, analysis) =>
        {
            LimitSolution? oracle = LimitOracles.Slow(analysis.Converter, analysis.Mode, analysis.ChargeFlow.Inductors);
            Assert.NotNull(oracle);
            if (analysis.Converter.Load == LoadKind.Stiff)
            {
                LawSample.AssertNear(oracle.Ohms, analysis.SlowSwitchingLimit.OhmsAtOneHertz, "slow limit", Tolerance);
            }

            AssertNear(oracle.Capacitors, analysis.ChargeFlow.Capacitors, "capacitor");
        },
        iterations: Iterations);

    [Fact]
    public void The_fast_limit_is_the_voltage_lost_by_a_network_of_constant_currents() => LawSample.Check(
        (_, analysis) =>
        {
            LimitSolution? oracle = LimitOracles.Fast(analysis.Converter, analysis.Mode);
            Assert.NotNull(oracle);
            LawSample.AssertNear(oracle.Ohms, analysis.FastSwitchingLimit.Ohms, "fast limit", Tolerance);
            AssertNear(oracle.Switches, analysis.ChargeFlow.Switches, "switch");
        },
        iterations: Iterations);

    internal static void AssertNear(double[][] expected, PhaseTable actual, string what)
    {
        for (int i = 0; i < expected.Length; i++)
        {
            for (int j = 0; j < expected[i].Length; j++)
            {
                LawSample.AssertNear(expected[i][j], actual[i][j + 1].ToDouble(), $"{what} {i}, phase {j + 1}", Tolerance);
            }
        }
    }
}
