using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Numerics;

namespace ScNet.Tests.Design.Choice;

/// <summary>What area is worth to capacitors where switches have their own.</summary>
public sealed class StageProgramPricesTests
{
    // capacitors have more area than they can use, switches hardly any: a capacitor costs what it loses, the share I/J of what cycles lose and
    // what leaks always, and a switch much more than that
    [Fact]
    public void The_scarce_area_of_switches_is_no_price_of_a_capacitor()
    {
        StagePoint point = LossyStages.PointOf(LossyStages.ThreeLevel, LossyStages.Process, 60, 3, 0.02, 0.5);
        StageProgram program = new(
            [point], LossyStages.Options(LossyStages.ThreeLevel, LossyStages.Process), LossyStages.Process.Inductors, new AreaBudget(null, 1e-3, 1e-9), new(1e5, 1e8));
        GeometricOptimum optimum = program.Solve(new int[5]);
        Assert.True(optimum.IsFeasible);
        Assert.Equal(1, program.CostOf(0, 0, optimum) / LossOf(0), 1e-3);
        Assert.True(program.CostOf(1, 0, optimum) > 1.1 * LossOf(1));

        double LossOf(int element)
        {
            double value = Math.Exp(optimum.Logarithms[element]), hertz = Math.Exp(optimum.Logarithms[program.FrequencyOf(0)]), amperes = Math.Exp(optimum.Logarithms[program.CurrentOf(0)]);
            LossPolynomial rest = point.Costs.Rest(element, 0);
            double always = rest.Constant + (3 * rest.Volts) + (9 * rest.Volts2), cycles = rest.At(3, 0, hertz) - always;
            return 0.5 * ((0.02 / amperes * ((point.Costs.Conduction(element, 0).At(3, amperes, hertz) / value) + (cycles * value))) + (always * value));
        }
    }
}
