using Fractions;
using ScNet.Analysis;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>Facts of the trade on the four-level stage at a cell of 4.2 V; common practice, no source.</summary>
public class HybridStressTests
{
    private static readonly Interval<double> s_cell = new(4.2, 4.2);

    [Fact]
    public void The_first_flying_capacitor_of_four_levels_takes_four_times_the_area()
    {
        ConverterStress stress = Stress(InductiveStages.MultiLevel(4, new Fraction(1, 5)).Build());
        Assert.Equal(2.8, stress.Modes[0].Capacitors["fly1"].Peak!.Volts, 1e-12);
        Assert.Equal(1.4, stress.Modes[0].Capacitors["fly2"].Peak!.Volts, 1e-12);

        CapacitorDevice dense = new() { Name = "dense", Source = "invented", RatedVolts = 1.4, FaradsPerSquareMetre = 0.01 };
        ConverterRatings ratings = ConverterRatings.Of(stress, new RatingLimits { Switch = DemoDevices.NType1V2, Capacitor = dense });
        StackedCapacitor first = ratings.Capacitors["fly1"].Stack, second = ratings.Capacitors["fly2"].Stack;
        Assert.Equal((2, 1), (first.Count, second.Count));
        Assert.Equal(4, first.AreaSquareMetres / second.AreaSquareMetres, 1e-12);
    }

    [Fact]
    public void Three_devices_of_1_8_volts_withstand_a_cell_and_the_switching_node_swings_by_a_third()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(4, new Fraction(1, 5)).Build());
        ConverterStress stress = Stress(analysis.Converter);
        Assert.All(stress.Modes[0].Switches, s => Assert.InRange(Math.Abs(s.Peak!.Volts), 1.4 - 1e-12, 1.8));

        // the same device alone across the cell is over its rating
        Assert.True(s_cell.Maximum > 1.8);
        PhaseValues x = analysis.IdealPoint.NodePotentials["x"];
        Assert.Equal(["1/3", "0", "1/3", "0", "1/3", "0"], x.Select(v => v.ToString()));
    }

    [Fact]
    public void A_voltage_that_losses_fix_is_no_idle_capacitors()
    {
        // a second mode that holds fly1 must not lend its voltage to the mode that moves it
        ConverterStress stress = Stress(InductiveStages.MultiLevel(3, new Fraction(1, 5)).Build());
        CapacitorStress fly = stress.Modes[0].Capacitors["fly1"];
        Assert.False(fly.IsDetermined);
        Assert.Equal("undetermined in mode default, as only losses fix fly1", "undetermined in " + Assert.Single(fly.Undetermined));
    }

    private static ConverterStress Stress(Converter converter) => ConverterStress.Of(ConverterAnalysis.Of(converter), s_cell);
}
