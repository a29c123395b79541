using ScNet.Analysis;
using ScNet.Design;
using ScNet.Results;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

public sealed class ComparedLoadTests
{
    private static readonly ComparisonConditions s_conditions = new(3, 3, totalCapacitanceFarads: 2e-6, totalConductanceSiemens: 4, frequencyHz: 0.5e6);

    // one capacitor of 2 µF, four switches of 1 Ω: (1/4C f) coth(T/(8 R C)) with R of one switch, from one equation per phase
    [Fact]
    public void A_halving_converter_has_its_closed_form_at_the_totals()
    {
        ComparedLoad load = ComparedLoad.Of(ModeAnalysis.Of(SeriesParallel.StepDown(2)), s_conditions, 0.1);
        double ohms = 1 / (4 * 2e-6 * 0.5e6 * Math.Tanh(2e-6 / (8 * 1 * 2e-6)));
        Assert.Equal(ohms, load.OutputOhms, 1e-12 * ohms);
        Assert.Equal(1.5 - (0.1 * ohms), load.OutputVolts, 1e-12);
        Assert.Equal((1.5 - (0.1 * ohms)) / 1.5, load.ResistiveEfficiency!.Value, 1e-12);
        Assert.Equal(ohms * 0.01, load.LossWatts, 1e-12);
    }

    // a plate of a hundredth that swings by 1.5 V and back
    [Fact]
    public void Plates_keep_their_proportion_to_the_scaled_capacitor()
    {
        Converter plated = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n", 1e-9, plates: new CapacitorPlates(BottomFarads: 1e-11))
            .Switch("s1", "vin", "p", 1, 1e-3).Switch("s2", "n", "vout", 1, 1e-3).Switch("s3", "p", "vout", 2, 1e-3).Switch("s4", "n", "gnd", 2, 1e-3).Build();
        ComparedLoad load = ComparedLoad.Of(ModeAnalysis.Of(plated), s_conditions, 0);
        double watts = 0.5e6 * 2e-8 * 1.5 * 1.5;
        Assert.Equal(watts, load.LossWatts, 0.01 * watts);
        Assert.Null(load.ResistiveEfficiency);
    }

    // plates, or ripple over switches of different resistance, move the voltage without load; the ideal one is that of the ratio
    [Fact]
    public void Phases_of_fixed_length_keep_their_ideal_voltage()
    {
        Converter plated = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n", 1e-9, plates: new CapacitorPlates(BottomFarads: 1e-10))
            .Switch("s1", "vin", "p", 1, 1).Switch("s2", "n", "vout", 1, 1).Switch("s3", "p", "vout", 2, 1).Switch("s4", "n", "gnd", 2, 1).Build();
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Duties(0.25, 0.75).Inductor("coil", "x", "vout", 1e-6, 0.1)
            .Switch("high", "vin", "x", 1, 1).Switch("low", "x", "gnd", 2, 2).Build();
        Assert.All([(plated, 1.5), (stage, 0.75)], ((Converter Converter, double IdealVolts) c) =>
        {
            ComparedLoad load = ComparedLoad.Of(ModeAnalysis.Of(c.Converter), s_conditions, 0.1);
            Assert.Equal(c.IdealVolts, load.Steady.IdealOutputVoltageVolts, 1e-12);
            Assert.True(Math.Abs(load.Steady.OpenOutputVoltageVolts - c.IdealVolts) > 1e-6);
        });
    }

    [Fact]
    public void The_highest_efficiency_comes_first()
    {
        Converter[] converters = [Ladder.StepDown(4), SeriesParallel.StepDown(4)];
        ResultRow<ComparedMode>[] rows = [.. converters.Select(c => ModeAnalysis.Try(c, c.Modes[0])).Select(o => ResultRow.Of(
            null, o, new ComparedMode(ModeComparison.Of(o.Analysis!, s_conditions), Load: ComparedLoad.Of(o.Analysis!, s_conditions, 0.02))))];
        ResultTable table = ResultTable.OfComparisons(s_conditions, rows, loadAmperes: 0.02);
        double[] sorted = [.. table.Order("atLoad.resistiveEfficiency", isDescending: true).Select(i => rows[i].Result!.Load!.ResistiveEfficiency!.Value)];
        Assert.True(sorted[0] > sorted[1]);
        double[] losses = [.. table.Order("atLoad.dissipationWatts").Select(i => rows[i].Result!.Load!.LossWatts)];
        Assert.True(losses[0] < losses[1]);
        Assert.DoesNotContain("atLoad", ResultTable.OfComparisons(s_conditions, rows).ToCsv(), StringComparison.Ordinal);
        Assert.Contains("atLoad.resistiveEfficiency", ResultTable.OfComparisons(s_conditions, rows, loadAmperes: 0.02).ToCsv(), StringComparison.Ordinal);
    }
}
