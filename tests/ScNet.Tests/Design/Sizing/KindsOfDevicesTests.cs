using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Sizing;

/// <summary>Which kinds of devices the search takes for a halver.</summary>
public sealed class KindsOfDevicesTests
{
    private const double Area = 1e-8;

    private static readonly CapacitorDevice s_dense = Sized.Capacitor with { BottomPlateFraction = 0.05 };

    private static readonly CapacitorDevice s_light = Sized.Capacitor with { Name = "light", FaradsPerSquareMetre = 2e-3, BottomPlateFraction = 1e-4, TopPlateFraction = 0 };

    private static readonly SwitchDevice s_fast = Sized.Switch with { Name = "fast", OnResistanceOhmMicrometres = 500, GateChargeCoulombsPerMicrometre = 6e-15 };

    [Theory]
    [InlineData(1.02)]
    [InlineData(1.5)]
    [InlineData(4)]
    [InlineData(30)]
    public void No_kinds_alone_lose_less_than_a_choice_among_them(double room)
    {
        SizingPoint point = Needing(room * LeastImpedance.OfHalver(s_light.FaradsPerSquareMetre, Area, InventedSizing.Frequencies.Maximum!.Value));
        SizingSolution choice = Run([point], [Sized.Switch, s_fast], [s_dense, s_light]);
        Assert.InRange(choice.Gap, 0, 3e-6);
        foreach (SwitchDevice @switch in (SwitchDevice[])[Sized.Switch, s_fast])
        {
            foreach (CapacitorDevice capacitor in (CapacitorDevice[])[s_dense, s_light])
            {
                Assert.True(choice.Watts <= Run([point], [@switch], [capacitor]).Watts * (1 + 1e-6));
            }
        }
    }

    [Fact]
    public void By_area_the_densest_kinds_stay_although_others_lose_less()
    {
        SizingPoint point = Needing(1000);
        SizingSolution byArea = Run([point], [Sized.Switch, s_fast], [s_light, s_dense], new() { Criterion = DeviceCriterion.LeastArea });
        Assert.Equal([1, 1, 1, 1, 1], byArea.Options);
        Assert.InRange(byArea.Gap, 0, 3e-6);
        Assert.True(Run([point], [Sized.Switch, s_fast], [s_light, s_dense]).Watts < 0.99 * byArea.Watts);
    }

    [Fact]
    public void Of_kinds_that_differ_too_little_to_change_that_of_the_least_area_times_loss_is_taken()
    {
        // a leakage that both have is nearly all of their loss: half of the plates at a ten thousandth more of area is worth a start, but no change
        CapacitorDevice heavier = Sized.Capacitor with { BottomPlateFraction = 2e-3, TopPlateFraction = 0, LeakageAmperesPerSquareMetre = 1e7 };
        CapacitorDevice lighter = heavier with { Name = "lighter", BottomPlateFraction = 1e-3, FaradsPerSquareMetre = 0.9999e-2 };
        SizingPoint[] points = [Needing(100), Needing(200)];
        Assert.Equal(1, Run(points, [Sized.Switch], [heavier, lighter]).Options[0]);
        Assert.Equal(0, Run(points, [Sized.Switch], [lighter, heavier]).Options[0]);
        Assert.Equal(0, Run(points, [Sized.Switch], [heavier, lighter], new() { Criterion = DeviceCriterion.LeastArea }).Options[0]);
        Assert.Equal(1, Run(points, [Sized.Switch], [lighter, heavier], new() { Criterion = DeviceCriterion.LeastArea }).Options[0]);
    }

    [Fact]
    public void Losses_of_all_points_count_together_when_kinds_are_first_taken()
    {
        // gates cost the same at every input, junctions four times as much at twice of it: less in all, but more at the higher one
        SwitchDevice gates = Sized.Switch with { JunctionChargeCoulombsPerMicrometre = 1e-25, LeakageAmperesPerMicrometre = 1e-2 };
        SwitchDevice junctions = gates with { Name = "junctions", GateChargeCoulombsPerMicrometre = 1e-25, JunctionChargeCoulombsPerMicrometre = 8e-15 };
        SizingPoint[] points = [InventedSizing.Point(2, 0.9, 1e-3), InventedSizing.Point(1, 0.4, 1e-3)];
        SizingTask task = Task(points, [gates, junctions], [Sized.Capacitor]);
        double[] ofGates = [.. points.Select(p => task.Costs[0].At(1, 0, p.InputVolts).PerHertz)], ofJunctions = [.. points.Select(p => task.Costs[0].At(1, 1, p.InputVolts).PerHertz)];
        Assert.True(ofJunctions.Sum() < 0.95 * ofGates.Sum(), $"{ofJunctions[0]} {ofJunctions[1]} {ofGates[0]} {ofGates[1]}");
        Assert.True(ofJunctions.Max() > 1.05 * ofGates.Max(), $"{ofJunctions[0]} {ofJunctions[1]} {ofGates[0]} {ofGates[1]}");
        Assert.Equal([1, 1, 1, 1], new SizingSearch(task).Run()!.Options[1..]);
    }

    [Fact]
    public void With_room_for_both_the_switch_whose_charge_times_resistance_is_least_is_taken_though_it_takes_more_area()
    {
        // a fast converter at one frequency, its impedance of switches alone: the first program is exact, and the kinds must change by then
        SwitchDevice wide = Sized.BareSwitch with { RatedVolts = 4, GateChargeCoulombsPerMicrometre = 2e-15 };
        SwitchDevice better = wide with { Name = "better", GateChargeCoulombsPerMicrometre = 1.5e-15, AreaSquareMetresPerMicrometre = 5e-12 };
        Process process = new() { Name = "invented", Switches = [wide, better], Capacitors = [Sized.BareCapacitor] };
        SizingPoint[] points = [InventedSizing.Point(2, null, 0.05)];
        SizingTask task = InventedSizing.Task(InventedSizing.Halver, points, new AreaBudget(null, 1e-3, 1e-3), process, new(1e8, 1e8));
        SizingSolution found = new SizingSearch(task).Run()!;
        Assert.Equal([1, 1, 1, 1], found.Options[1..]);

        // I √(κ/(γ f)), κ = 1/2 of each switch, γ = 1.5 fC/µm · 1000 Ω µm · 1.5 V
        double siemens = 0.05 * Math.Sqrt(0.5 / (1.5e-12 * 1.5 * 1e8));
        Assert.All(found.Values[1..], value => Assert.Equal(siemens, value, 2e-3 * siemens));
    }

    private static SizingTask Task(SizingPoint[] points, SwitchDevice[] switches, CapacitorDevice[] capacitors, SizingOptions? how = null) =>
        InventedSizing.Task(InventedSizing.Halver, points, new AreaBudget(Area), new Process { Name = "invented", Switches = switches, Capacitors = capacitors }, how: how);

    private static SizingSolution Run(SizingPoint[] points, SwitchDevice[] switches, CapacitorDevice[] capacitors, SizingOptions? how = null) =>
        new SizingSearch(Task(points, switches, capacitors, how)).Run()!;

    // (1 − V) V over 0.1 mA
    private static SizingPoint Needing(double ohms) => InventedSizing.Point(2, 1 - (ohms * 1e-4), 1e-4);
}
