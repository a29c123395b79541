using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

/// <summary>What three times an assumption makes of a requirement, key by key; what it does not name stays.</summary>
public sealed class AssumptionsTests
{
    private static readonly Requirement s_requirement = new()
    {
        Name = "all",
        InputVolts = new(2.8, 4.2),
        OutputVolts = [0.5],
        Loads = [new("sleep", 2e-3, 0.5), new("on", 4e-3, 0.25), new("burst", 8e-3, 0.25)],
        Process = new Process
        {
            Name = "invented",
            Switches = [DemoDevices.NType1V2, DemoDevices.NType1V8],
            Capacitors =
            [
                Plain(DemoDevices.Dense1V2) with { TopPlateFraction = 0.03, DensityAgainstBias = [new(0, 8e-3), new(1, 4e-3)] },
                Plain(DemoDevices.Plate3V6),
            ],
            Inductors = [Coil("lossless", 1e-6, 0), Coil("lossy", 2e-6, 0.5)],
            Control = new ControlOverhead { FixedWatts = 2e-6, CoulombsPerCycle = 1e-13 },
        },
        AreaSquareMetres = 4e-6,
        CapacitorAreaSquareMetres = 2e-6,
        SwitchAreaSquareMetres = 1e-6,
        FrequencyHz = new(1e4, 1e8),
    };

    [Fact]
    public void Every_assumption_that_counts_is_named_once()
    {
        Assert.Equal(
            [
                "plate fraction", "capacitor density", "on-resistance", "gate charge", "junction charge", "winding resistance", "inductance",
                "fixed control power", "control charge per cycle", "area", "load current", "time in sleep", "time in on", "time in burst",
            ],
            Names(s_requirement));
    }

    [Fact]
    public void What_is_zero_or_missing_is_no_assumption()
    {
        Requirement bare = s_requirement with
        {
            Loads = [new("on", 1e-3, 1)],
            Process = s_requirement.Process with { Capacitors = [Plain(DemoDevices.Plate3V6)], Inductors = [], Control = ControlOverhead.None },
        };
        Assert.Equal(["capacitor density", "on-resistance", "gate charge", "junction charge", "area", "load current"], Names(bare));
        Assert.Contains("inductance", Names(bare with { Process = bare.Process with { Inductors = [Coil("lossless", 1e-6, 0)] } }));
        Assert.DoesNotContain("winding resistance", Names(bare with { Process = bare.Process with { Inductors = [Coil("lossless", 1e-6, 0)] } }));
    }

    // as much at the bottom as at the top: both count, neither cancels the other
    [Fact]
    public void Plates_of_either_side_are_an_assumption()
    {
        CapacitorDevice plain = Plain(DemoDevices.Plate3V6);
        Assert.Contains("plate fraction", Names(With([plain with { TopPlateFraction = 0.1 }])));
        Assert.Contains("plate fraction", Names(With([plain with { BottomPlateFraction = 0.1 }])));
        Assert.Contains("plate fraction", Names(With([plain with { BottomPlateFraction = 0.1, TopPlateFraction = 0.1 }])));

        static Requirement With(CapacitorDevice[] capacitors) => s_requirement with { Process = s_requirement.Process with { Capacitors = capacitors } };
    }

    [Fact]
    public void Devices_have_three_times_what_is_assumed()
    {
        Process plates = Changed("plate fraction").Process, density = Changed("capacitor density").Process;
        Requirement both = s_requirement with { Process = s_requirement.Process with { Capacitors = [DemoDevices.Dense1V2 with { TopPlateFraction = 0.03 }] } };
        CapacitorDevice capacitor = Assumptions.Of(both).Single(a => a.Name == "plate fraction").With(3).Process.Capacitors[0];
        Assert.Equal([0.15, 0.09], Rounded([capacitor.BottomPlateFraction, capacitor.TopPlateFraction]));
        Assert.Equal([0.09, 0], Rounded([.. plates.Capacitors.Select(c => c.TopPlateFraction)]));
        Assert.Equal([30e-3, 6e-3], Rounded([.. density.Capacitors.Select(c => c.FaradsPerSquareMetre)]));
        Assert.Equal([24e-3, 12e-3], Rounded([.. density.Capacitors[0].DensityAgainstBias.Select(d => d.FaradsPerSquareMetre)]));
        Assert.Equal([1800, 3000], Changed("on-resistance").Process.Switches.Select(s => s.OnResistanceOhmMicrometres));
        Assert.Equal([3.6e-15, 6.6e-15], Rounded([.. Changed("gate charge").Process.Switches.Select(s => s.GateChargeCoulombsPerMicrometre)]));
        Assert.Equal([2.4e-15, 4.5e-15], Rounded([.. Changed("junction charge").Process.Switches.Select(s => s.JunctionChargeCoulombsPerMicrometre)]));
        Assert.Equal([0, 1.5], Changed("winding resistance").Process.Inductors.Select(l => l.Ohms));
        Assert.Equal([3e-6, 6e-6], Rounded([.. Changed("inductance").Process.Inductors.Select(l => l.Henries)]));
    }

    [Fact]
    public void Control_area_and_load_have_three_times_what_is_assumed()
    {
        ControlOverhead own = s_requirement.Process.Control;
        Assert.Equal(own with { FixedWatts = 3 * 2e-6 }, Changed("fixed control power").Process.Control);
        Assert.Equal(own with { CoulombsPerCycle = 3 * 1e-13 }, Changed("control charge per cycle").Process.Control);
        Requirement area = Changed("area");
        Assert.Equal([12e-6, 6e-6, 3e-6], Rounded([area.AreaSquareMetres!.Value, area.CapacitorAreaSquareMetres!.Value, area.SwitchAreaSquareMetres!.Value]));
        Assert.Equal([6e-3, 12e-3, 24e-3], Rounded([.. Changed("load current").Loads.Select(l => l.Amperes)]));
    }

    // three times a quarter is three quarters, and the last quarter is shared one to two by those that had a quarter and a half
    [Fact]
    public void Time_in_a_state_is_taken_from_the_others_in_their_proportions()
    {
        Assert.Equal(Rounded([1.0 / 6, 0.75, 1.0 / 12]), Rounded([.. Changed("time in on").Loads.Select(l => l.Share)]));
        Assert.Equal(Rounded([1.0 / 6, 1.0 / 12, 0.75]), Rounded([.. Changed("time in burst").Loads.Select(l => l.Share)]));
    }

    // three times a half would be more than all of it
    [Fact]
    public void Time_in_a_state_stays_below_all_of_it() =>
        Assert.Equal([0.999, 0.0005, 0.0005], Rounded([.. Changed("time in sleep").Loads.Select(l => l.Share)]));

    private static string[] Names(Requirement requirement) => [.. Assumptions.Of(requirement).Select(a => a.Name)];

    private static Requirement Changed(string name) => Assumptions.Of(s_requirement).Single(a => a.Name == name).With(3);

    private static double[] Rounded(double[] values) => [.. values.Select(SixDigits.Of)];

    private static CapacitorDevice Plain(CapacitorDevice device) => device with { BottomPlateFraction = 0, TopPlateFraction = 0 };

    private static InductorDevice Coil(string name, double henries, double ohms) => new() { Name = name, Source = "invented", Henries = henries, Ohms = ohms };
}
