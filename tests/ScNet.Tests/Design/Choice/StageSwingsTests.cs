using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Sizing;
using ScNet.Numerics;

namespace ScNet.Tests.Design.Choice;

/// <summary>Capacitors of a stage whose swing is no bound of their size.</summary>
public sealed class StageSwingsTests
{
    // what stands across the input carries no charge, however small it is: without any loss but that of its plates it is made as small as it may be
    [Fact]
    public void A_capacitor_without_charge_may_be_as_small_as_there_are()
    {
        GeometricOptimum optimum = Solve(Converter.Create("step-down").Input("vin").Output("vout").Duties(0.25, 0.75).Capacitor("in", "vin", "gnd")
            .Inductor("coil", "x", "vout").Switch("high", "vin", "x", 1).Switch("low", "x", "gnd", 2).Build());
        Assert.True(optimum.IsFeasible);
        Assert.InRange(Math.Exp(optimum.Logarithms[0]), 0, 1e-12);
    }

    // of three levels whose flying capacitor's voltage losses alone fix it is not known how much a fifth is
    [Fact]
    public void A_capacitor_of_unknown_voltage_has_sizes()
    {
        Converter levels = InductiveStages.MultiLevel(3, new(1, 4)).Build();
        Assert.False(ModeAnalysis.Of(levels).IdealPoint.CapacitorVoltages[0].IsDetermined);
        GeometricOptimum optimum = Solve(levels);
        Assert.True(optimum.IsFeasible);
    }

    private static GeometricOptimum Solve(Converter converter)
    {
        Candidate candidate = Candidate.Of(converter);
        StagePoint point = LossyStages.PointOf(candidate, LossyStages.Process, 60, 3, 0.01, 1);
        ElementOptions options = LossyStages.Options(candidate, LossyStages.Process);
        StageProgram program = new([point], options, LossyStages.Process.Inductors, new AreaBudget(1e-6), new(1e5, 1e8));
        return program.Solve(new int[options.Capacitors.Length + options.Switches.Length]);
    }
}
