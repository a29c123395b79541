using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Requirements;
using ScNet.Devices;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Maps;

public sealed class LifeEstimateTests
{
    private static readonly DischargePoint[] s_twoPoints = [new(1, 4), new(0, 3)];

    [Fact]
    public void A_discharge_of_two_points_by_hand()
    {
        // half of 10 mA whatever the voltage: 36 C last 7200 s. 126 J, of which the load gets 1.2 V · 10 mA · 7200 s
        LifeEstimate life = LifeEstimate.Of([InventedGears.IdealHalf], s_twoPoints, [new("on", 0.01, 1, 1.2)], 0, 36);
        Assert.Equal(2, life.Hours!.Value, 1e-8);
        Assert.Equal(86.4, life.OutputJoules, 1e-6);
        Assert.Equal(126, life.InputJoules, 1e-6);
        Assert.Equal(86.4 / 126, life.AverageEfficiency!.Value, 1e-8);
        Assert.Equal(126 - 86.4, Enum.GetValues<LossKind>().Sum(life.JoulesOf), 1e-6);

        // without losses 12 mW would have drawn 12 mW · 7200 s · ln(4/3)/1 V
        Assert.Equal(1 - (0.012 * 7200 * Math.Log(4.0 / 3) / 36), life.WastedShare, 1e-6);
        Assert.Equal((1, null), (life.HeldShare, life.End));
        Assert.Equal([1], life.ModeShares);
    }

    [Fact]
    public void The_resistance_of_the_source_takes_voltage_and_no_charge_from_a_ratio()
    {
        LifeEstimate life = LifeEstimate.Of([InventedGears.IdealHalf], s_twoPoints, [new("on", 0.01, 1, 1.2)], 10, 36);
        Assert.Equal(2, life.Hours!.Value, 1e-8);
        Assert.Equal(10 * 0.005 * 0.005 * 7200, life.SourceJoules, 1e-8);
        Assert.Equal(126, life.InputJoules + life.SourceJoules, 1e-6);
    }

    [Fact]
    public void A_constant_current_of_a_linear_regulator_takes_charge_over_current()
    {
        LifeEstimate life = LifeEstimate.Of(
            [InventedGears.Linear], [new(1, 4.2), new(0.5, 3.7), new(0, 3)], [new("sleep", 1e-6, 0.9, 0.8), new("active", 1e-2, 0.1, 0.8)], 0.5, 3600);
        Assert.Equal(1 / (0.9e-6 + 1e-3), life.Hours!.Value, 1e-6);
    }

    [Fact]
    public void Where_the_voltage_no_longer_suffices_it_ends_and_the_rest_is_wasted()
    {
        // half of 3.2 V is 1.6 V: three quarters of the charge down from 4 V, 0.1 V of it above 3.3 V for the resistance
        LifeEstimate life = LifeEstimate.Of([InventedGears.IdealHalf], s_twoPoints, [new("on", 0.01, 1, 1.6)], 20, 36, slices: 1000);
        Assert.Equal(0.7, life.HeldShare, 0.002);
        Assert.Equal(0.7 * 2, life.Hours!.Value, 0.004);
        Assert.Equal(0.7, life.End!.Load.Amperes * (1 - life.End.StateOfCharge) * 100, 0.002);
        Assert.Equal("the resistance of the source takes too much", Assert.Single(life.End.Reasons));
        Assert.True(life.WastedShare > 0.3);
        Assert.StartsWith("'on' is lost at 3.3 V with ", life.End.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_state_of_the_load_has_its_mode_and_energies_add_up()
    {
        LifeEstimate life = LifeEstimate.Of(
            InventedGears.All, [new(1, 4.2), new(0.9, 3.9), new(0.1, 3.5), new(0, 2.8)], [new("sleep", 1e-6, 0.95, 0.8), new("burst", 0.02, 0.05, 0.8)], 0.3, 720);
        Assert.Equal(1, life.ModeShares.Sum(), 1e-12);
        Assert.Equal(life.InputJoules, life.OutputJoules + Enum.GetValues<LossKind>().Sum(life.JoulesOf), 1e-9 * life.InputJoules);
        double given = 720 * ((0.1 * 4.05) + (0.8 * 3.7) + (0.1 * 3.15));
        Assert.Equal(given, life.InputJoules + life.SourceJoules, 1e-5 * given);
        Assert.InRange(life.SkippingShare, 0.9, 1);
    }

    [Fact]
    public void A_requirement_without_a_curve_counts_every_voltage_alike()
    {
        Requirement requirement = new()
        {
            Name = "invented",
            InputVolts = new(3, 4),
            OutputVolts = [1, 1.2],
            Loads = [new("on", 0.01, 1)],
            FrequencyHz = InventedGears.Hertz,
            Process = new Process { Name = "invented", Switches = [Sized.Switch], Capacitors = [Sized.Capacitor] },
        };
        LifeEstimate life = LifeEstimate.Of([InventedGears.IdealHalf], requirement);
        Assert.Null(life.Hours);
        Assert.Equal(1.1 / 1.75, life.AverageEfficiency!.Value, 1e-6);
    }

    [Fact]
    public void Misuse_is_refused()
    {
        LoadShare[] loads = [new("on", 0.01, 1, 1.2)];
        Assert.Throws<ArgumentException>(() => LifeEstimate.Of([], s_twoPoints, loads, 0, 36));
        Assert.Throws<ArgumentException>(() => LifeEstimate.Of(InventedGears.All, [new(1, 4)], loads, 0, 36));
        Assert.Throws<ArgumentException>(() => LifeEstimate.Of(InventedGears.All, [new(0, 3), new(1, 4)], loads, 0, 36));
        Assert.Throws<ArgumentException>(() => LifeEstimate.Of(InventedGears.All, s_twoPoints, [], 0, 36));
        Assert.Throws<ArgumentException>(() => LifeEstimate.Of(InventedGears.All, s_twoPoints, [new("on", 1, 1)], 0, 36));
    }
}
