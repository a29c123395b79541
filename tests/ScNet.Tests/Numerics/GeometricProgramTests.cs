using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>The convex solver against closed forms, its own definition and an optimiser of MathNet.</summary>
public sealed class GeometricProgramTests
{
    [Fact]
    public void Three_terms_in_two_variables_have_equal_shares()
    {
        // k/f + h/w + g f w: dual weights 1/3 each, least value 3 (k h g)^(1/3)
        const double K = 7, H = 0.02, G = 3e-4;
        LogConvexFunction objective = new PosynomialBuilder().Add(K, (0, -1)).Add(H, (1, -1)).Add(G, (1, 1), (0, 1)).Build();
        GeometricOptimum optimum = new GeometricProgram(objective, [], Fill(2, -20), Fill(2, 20)).Minimize([0, 0]);
        double third = Math.Cbrt(K * H * G);
        Assert.Equal(3 * third, Math.Exp(optimum.LogValue), 1e-9 * third);
        Assert.Equal(K / third, Math.Exp(optimum.Logarithms[0]), 1e-3 * K / third);
        Assert.InRange(optimum.Gap, 0, 1e-9);
    }

    [Fact]
    public void A_sum_is_shared_by_square_roots()
    {
        double[] k = [4, 1, 0.25, 9];
        PosynomialBuilder sum = new(), objective = new();
        for (int i = 0; i < k.Length; i++)
        {
            objective.Add(k[i], (i, -1));
            sum.Add(1.0 / 3, (i, 1));
        }

        GeometricOptimum optimum = new GeometricProgram(objective.Build(), [sum.Build()], Fill(4, -20), Fill(4, 5)).Minimize(Fill(4, 3));
        double roots = k.Sum(Math.Sqrt);
        Assert.Equal(roots * roots / 3, Math.Exp(optimum.LogValue), 1e-8);
        Assert.All(Enumerable.Range(0, 4), i => Assert.Equal(3 * Math.Sqrt(k[i]) / roots, Math.Exp(optimum.Logarithms[i]), 1e-3));

        // the value goes with one over the sum
        Assert.Equal(1, optimum.Multipliers[0], 1e-6);
    }

    [Fact]
    public void A_root_of_squares_is_one_function()
    {
        // hypot(x + 2 y, 3 / x) · y^0.5 · e
        LogConvexFunction function = new PosynomialBuilder().Add(1, (0, 1)).Add(2, (1, 1)).NextGroup().Add(3, (0, -1))
            .Times(1, 0.5).TimesExponential(1).Build(power: 2);
        double[] point = [0.3, -0.7];
        double x = Math.Exp(point[0]), y = Math.Exp(point[1]);
        Assert.Equal(Math.Log(Math.Sqrt(Math.Pow(x + (2 * y), 2) + Math.Pow(3 / x, 2)) * Math.Sqrt(y) * Math.E), function.Value(point), 1e-14);
    }

    [Fact]
    public void Derivatives_are_the_slopes_of_the_value_and_of_the_gradient()
    {
        var random = new Random(5);
        for (int round = 0; round < 20; round++)
        {
            LogConvexFunction function = RandomFunction(random, 4, round % 2 == 0 ? 2 : 1);
            double[] point = RandomPoint(random, 4);
            double[] gradient = Gradient(function, point, out double[] curvature);
            for (int i = 0; i < 4; i++)
            {
                double[] ahead = [.. point], behind = [.. point];
                ahead[i] += 1e-5;
                behind[i] -= 1e-5;
                Assert.Equal((function.Value(ahead) - function.Value(behind)) / 2e-5, gradient[i], 1e-7);
                double[] g1 = Gradient(function, ahead, out _), g0 = Gradient(function, behind, out _);
                for (int k = 0; k <= i; k++)
                {
                    Assert.Equal((g1[k] - g0[k]) / 2e-5, curvature[(i * 4) + k], 1e-6);
                }
            }
        }
    }

    [Fact]
    public void Nothing_better_is_found_from_random_starts()
    {
        var random = new Random(11);
        for (int round = 0; round < 5; round++)
        {
            LogConvexFunction objective = RandomFunction(random, 3, 1), constraint = RandomFunction(random, 3, 2);
            double[] lower = Fill(3, -3), upper = Fill(3, 3);

            // a bound that holds somewhere: the value at the origin is brought to e^-1
            LogConvexFunction held = constraint.Times(-1 - constraint.Value(Fill(3, 0)));
            GeometricOptimum optimum = new GeometricProgram(objective, [held], lower, upper).Minimize(RandomPoint(random, 3));
            Assert.True(optimum.IsFeasible);
            Assert.InRange(optimum.Gap, 0, 1e-8);
            Assert.True(held.Value(optimum.Logarithms) <= 1e-10);
            double best = double.PositiveInfinity;
            for (int start = 0; start < 5; start++)
            {
                best = Math.Min(best, NelderMeadSimplex.Minimum(
                    ObjectiveFunction.Value(p => Penalised(objective, held, p)), Vector<double>.Build.Dense(RandomPoint(random, 3)), 1e-8, 20000).FunctionInfoAtMinimum.Value);
            }

            Assert.True(best >= optimum.LogValue - 1e-6, $"{best} is below {optimum.LogValue}");
        }

        double Penalised(LogConvexFunction objective, LogConvexFunction held, Vector<double> p)
        {
            double[] x = [.. p];
            bool isAllowed = held.Value(x) <= 0 && x.All(v => Math.Abs(v) <= 3);
            return isAllowed ? objective.Value(x) : 1e3 + Math.Max(held.Value(x), 0) + x.Sum(v => Math.Max(Math.Abs(v) - 3, 0));
        }
    }

    [Fact]
    public void The_gap_of_a_point_that_is_not_the_best_holds_the_difference()
    {
        LogConvexFunction objective = new PosynomialBuilder().Add(1, (0, 1)).Add(1, (0, -1)).Build();
        GeometricProgram program = new(objective, [], [-2], [2]);
        GeometricOptimum optimum = program.Minimize([1]);
        Assert.Equal(2, Math.Exp(optimum.LogValue), 1e-9);
        Assert.True(program.DualityGap([0.5], []) >= objective.Value([0.5]) - optimum.LogValue);
    }

    [Fact]
    public void What_cannot_hold_is_told_with_what_it_exceeds()
    {
        // x >= 4 and x <= 2, so that both are off by a factor of √2 at best
        LogConvexFunction low = new PosynomialBuilder().Add(4, (0, -1)).Build(), high = new PosynomialBuilder().Add(0.5, (0, 1)).Build();
        GeometricOptimum optimum = new GeometricProgram(new PosynomialBuilder().Add(1, (0, 1)).Build(), [low, high], [-5], [5]).Minimize([0]);
        Assert.False(optimum.IsFeasible);
        Assert.Equal(Math.Log(2) / 2, optimum.Excess, 1e-6);
        Assert.All(optimum.Multipliers, m => Assert.Equal(0.5, m, 1e-3));
    }

    private static double[] Fill(int count, double value) => [.. Enumerable.Repeat(value, count)];

    private static double[] RandomPoint(Random random, int count) => [.. Enumerable.Range(0, count).Select(_ => (2 * random.NextDouble()) - 1)];

    private static LogConvexFunction RandomFunction(Random random, int variables, double power)
    {
        PosynomialBuilder builder = new();
        for (int t = 0; t < 8; t++)
        {
            builder.Add(0.1 + random.NextDouble(), [.. Enumerable.Range(0, variables).Select(v => (v, (4 * random.NextDouble()) - 2))]);
            if (t == 4)
            {
                builder.NextGroup();
            }
        }

        return builder.Times(0, 0.1).Build(power);
    }

    private static double[] Gradient(LogConvexFunction function, double[] point, out double[] curvature)
    {
        var gradient = new double[function.Support.Length];
        var work = new double[function.WorkLength];
        function.Evaluate(point, gradient, work);
        curvature = new double[point.Length * point.Length];
        function.AddCurvature(1, gradient, work, curvature, point.Length);
        return gradient;
    }
}
