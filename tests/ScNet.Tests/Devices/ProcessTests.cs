using ScNet.Devices;

namespace ScNet.Tests.Devices;

public sealed class ProcessTests
{
    private static readonly SwitchDevice s_switch = new()
    {
        Name = "n",
        Source = "invented",
        RatedVolts = 1.8,
        GateDriveVolts = 1.5,
        GateRatedVolts = 1.98,
        OnResistanceOhmMicrometres = 1000,
        GateChargeCoulombsPerMicrometre = 2e-15,
        JunctionChargeCoulombsPerMicrometre = 1e-15,
        AreaSquareMetresPerMicrometre = 1e-12,
        ThresholdVolts = 0.5,
        LeakageAmperesPerMicrometre = 1e-12,
        StackAreaFactor = 1.5,
        GuardMetres = 1e-6,
        BodyDiodeVolts = 0.6,
        Polarity = DevicePolarity.PType,
    };

    private static readonly CapacitorDevice s_capacitor = new()
    {
        Name = "mos",
        Source = "invented",
        RatedVolts = 1.8,
        FaradsPerSquareMetre = 8e-3,
        DensityAgainstBias = [new(0, 4e-3), new(1, 8e-3)],
        BottomPlateFraction = 0.05,
        TopPlateFraction = 0.01,
        EsrOhmSquareMetres = 1e-10,
        LeakageAmperesPerSquareMetre = 1e-3,
        StackAreaFactor = 1.25,
        GuardMetres = 2e-6,
    };

    private static readonly Process s_process = new()
    {
        Name = "p",
        Switches = [s_switch],
        Capacitors = [s_capacitor],
        Inductors = [new InductorDevice { Name = "coil", Source = "invented", Henries = 1e-6, Ohms = 0.1 }],
        MaximumSwitchesInSeries = 4,
        MaximumCapacitorsInSeries = 3,
        GateRailEfficiency = 0.8,
        WiringOhms = 0.2,
        DeadTimeSeconds = 1e-9,
        Control = new ControlOverhead { FixedWatts = 1e-6, CoulombsPerCycle = 1e-12 },
        Corners = [new Corner("slow", 1.2, 0.9, 1.4)],
    };

    // 1000 Ω·µm · 1.2 · (1.5 − 0.5)/(1.5 − 0.7) = 1500 Ω·µm; capacitances by 0.9; wires and series resistances by 1.2
    [Fact]
    public void A_corner_moves_what_it_names_and_nothing_else()
    {
        Process slow = s_process.At(s_process.Corners[0]);

        Assert.Equal((1500, 1.8e-15, 0.9e-15, 0.7), (slow.Switches[0].OnResistanceOhmMicrometres, slow.Switches[0].GateChargeCoulombsPerMicrometre, slow.Switches[0].JunctionChargeCoulombsPerMicrometre, slow.Switches[0].ThresholdVolts), Near);
        Assert.Equal((7.2e-3, 3.6e-3, 5.4e-3, 1.2e-10), (slow.Capacitors[0].FaradsPerSquareMetre, slow.Capacitors[0].DensityAgainstBias[0].FaradsPerSquareMetre, slow.Capacitors[0].FaradsPerSquareMetreAt(0.5), slow.Capacitors[0].EsrOhmSquareMetres), Near);
        Assert.Equal(0.24, slow.WiringOhms, 1e-15);
        Assert.Empty(slow.Corners);
        Assert.Equal(
            [nameof(SwitchDevice.OnResistanceOhmMicrometres), nameof(SwitchDevice.GateChargeCoulombsPerMicrometre), nameof(SwitchDevice.JunctionChargeCoulombsPerMicrometre), nameof(SwitchDevice.ThresholdVolts)],
            Moved(s_switch, slow.Switches[0]));
        Assert.Equal(
            [nameof(CapacitorDevice.FaradsPerSquareMetre), nameof(CapacitorDevice.DensityAgainstBias), nameof(CapacitorDevice.EsrOhmSquareMetres)],
            Moved(s_capacitor, slow.Capacitors[0]));
        Assert.Equal(
            [nameof(Process.Switches), nameof(Process.Capacitors), nameof(Process.WiringOhms), nameof(Process.Corners)], Moved(s_process, slow));
        Assert.Equal(s_process.Inductors, slow.Inductors);
    }

    [Fact]
    public void The_typical_corner_moves_nothing()
    {
        Process typical = s_process.At(Corner.Typical);
        Assert.Empty(Moved(s_switch, typical.Switches[0]));
        Assert.Equal([nameof(CapacitorDevice.DensityAgainstBias)], Moved(s_capacitor, typical.Capacitors[0]));
        Assert.Equal(s_capacitor.DensityAgainstBias, typical.Capacitors[0].DensityAgainstBias);
    }

    [Fact]
    public void A_switch_that_a_corner_leaves_open_is_refused_in_whichever_order()
    {
        Corner dead = new("dead", ThresholdFactor: 3);
        Assert.Contains("'dead'", Assert.Throws<ArgumentException>(() => s_process.At(dead)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new Process { Name = "p", Switches = [s_switch], Capacitors = [s_capacitor], Corners = [dead] });
        Assert.Throws<ArgumentException>(() => new Process { Name = "p", Corners = [dead], Switches = [s_switch], Capacitors = [s_capacitor] });
        Assert.Throws<ArgumentException>(() => DemoWith(threshold: 1.5));
        Assert.Equal(1.4, DemoWith(threshold: 1.4).ThresholdVolts);
    }

    [Fact]
    public void Misuse_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new Process { Name = "p", Switches = [], Capacitors = [s_capacitor] });
        Assert.Throws<ArgumentException>(() => new Process { Name = "p", Switches = [s_switch, s_switch], Capacitors = [s_capacitor] });
        Assert.Throws<ArgumentException>(() => new Process { Name = "p", Switches = [s_switch], Capacitors = [] });
        Assert.Throws<ArgumentException>(() => new Process { Name = "", Switches = [s_switch], Capacitors = [s_capacitor] });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Process { Name = "p", Switches = [s_switch], Capacitors = [s_capacitor], GateRailEfficiency = 1.1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Process { Name = "p", Switches = [s_switch], Capacitors = [s_capacitor], GateRailEfficiency = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Process { Name = "p", Switches = [s_switch], Capacitors = [s_capacitor], MaximumSwitchesInSeries = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Process { Name = "p", Switches = [s_switch], Capacitors = [s_capacitor], MaximumCapacitorsInSeries = 0 });
        Assert.Throws<ArgumentException>(() => new Process { Name = "p", Switches = [s_switch], Capacitors = [s_capacitor], Corners = [new("a"), new("a")] });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Corner("a", 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Corner.Typical with { CapacitanceFactor = double.NaN });
    }

    private static SwitchDevice DemoWith(double threshold) => new()
    {
        Name = "n",
        Source = "invented",
        RatedVolts = 1.8,
        ThresholdVolts = threshold,
        GateDriveVolts = 1.5,
        GateRatedVolts = 1.98,
        OnResistanceOhmMicrometres = 1000,
        GateChargeCoulombsPerMicrometre = 2e-15,
        JunctionChargeCoulombsPerMicrometre = 1e-15,
        AreaSquareMetresPerMicrometre = 1e-12,
    };

    private static IEnumerable<string> Moved<T>(T before, T after) => typeof(T).GetProperties()
        .Where(p => !Equals(p.GetValue(before), p.GetValue(after))).Select(p => p.Name);

    private static bool Near((double, double, double, double) a, (double, double, double, double) b) =>
        new[] { (a.Item1, b.Item1), (a.Item2, b.Item2), (a.Item3, b.Item3), (a.Item4, b.Item4) }.All(p => Math.Abs(p.Item1 - p.Item2) <= 1e-12 * Math.Abs(p.Item1));
}
