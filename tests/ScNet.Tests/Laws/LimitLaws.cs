namespace ScNet.Tests.Laws;

/// <summary>Both limits and their flows against the literal definition, solved densely.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
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
                Require("slow limit", oracle.Ohms, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
            }

            AssertNear(oracle.Capacitors, analysis.ChargeFlow.Capacitors, "capacitors");
        },
        iterations: Iterations);

    [Fact]
    public void The_fast_limit_is_the_voltage_lost_by_a_network_of_constant_currents() => LawSample.Check(
        (_, analysis) =>
        {
            LimitSolution? oracle = LimitOracles.Fast(analysis.Converter, analysis.Mode);
            Assert.NotNull(oracle);
            Require("fast limit", oracle.Ohms, analysis.FastSwitchingLimit.Ohms);
            AssertNear(oracle.Switches, analysis.ChargeFlow.Switches, "switches");
        },
        iterations: Iterations);

    internal static void Require(string quantity, double expected, double actual, string where = "", double tolerance = Tolerance) =>
        WorstErrors.OfRun.Require(quantity, expected, actual, Math.Max(1, Math.Abs(expected)), tolerance, where);

    internal static void AssertNear(double[][] expected, PhaseTable actual, string what)
    {
        for (int i = 0; i < expected.Length; i++)
        {
            for (int j = 0; j < expected[i].Length; j++)
            {
                Require($"charge multipliers of {what}", expected[i][j], actual[i][j + 1].ToDouble(), $"{i}, phase {j + 1}");
            }
        }
    }
}
