using Fractions;
using ScNet.Devices;
using ScNet.Tests.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Devices;

public sealed class GateDriveTests
{
    // three 1.8 V p-type devices from a cell of 5.4 V need rails 1.8 V and 3.6 V below it: common practice, no source
    [Fact]
    public void Three_p_type_devices_from_a_cell_need_two_rails_below_it()
    {
        StackGateLevels levels = StackGateLevels.Of(DemoDevices.PType1V8, 3, sourceVolts: 5.4, blockedVolts: 5.4);
        Assert.Equal(3.6, levels.OnVolts, 1e-12);
        Assert.Equal(5.4, levels.OffVolts[0], 1e-12);
        Assert.Equal(3.6, levels.OffVolts[1], 1e-12);
        Assert.Equal(1.8, levels.OffVolts[2], 1e-12);
        Assert.Equal(2, levels.RailsFromSourceVolts.Count);
        Assert.Equal(1.8, levels.RailsFromSourceVolts[0], 1e-12);
        Assert.Equal(3.6, levels.RailsFromSourceVolts[1], 1e-12);
    }

    // an n-type device on the reference: 1 V on, 0 V off; of two that block 2 V the upper one rests at 1 V
    [Fact]
    public void N_type_devices_need_rails_above_their_source()
    {
        Assert.Equal([1.0], StackGateLevels.Of(DemoDevices.NType1V2, 1, 0, 1.2).RailsFromSourceVolts);
        StackGateLevels two = StackGateLevels.Of(DemoDevices.NType1V2, 2, 0, 2.4);
        Assert.Equal([0, 1.2], two.OffVolts);
        Assert.Equal([1.0, 1.2], two.RailsFromSourceVolts);
    }

    // A ladder of two rungs at up to 4 V, of devices of 1 V: a switch blocks half the input, 2 V, and is a stack of two. Open, the source of its inner one
    // rests in the middle. The lowest switch lies between gnd and half the input while it is open: 0 V and 1 V; the one at the
    // input, as p-type, hangs from 4 V: 4 V and 3 V.
    [Fact]
    public void The_gates_of_an_open_stack_share_what_it_blocks()
    {
        ConverterRatings Rate(SwitchDevice device) => ConverterRatings.Of(
            RatedNetworks.Stress(Ladder.StepDown(2), new Interval<double>(2, 4)),
            new RatingLimits { Switch = device with { RatedVolts = 1 }, Capacitor = DemoDevices.Plate3V6, MaximumSwitchesInSeries = 4, MaximumCapacitorsInSeries = 4 });
        ConverterGateDrive n = ConverterGateDrive.Of(Rate(Kind(DevicePolarity.NType, 0.85, 1.1))), p = ConverterGateDrive.Of(Rate(Kind(DevicePolarity.PType, 0.85, 1.1)));
        Assert.All(n.Switches, s => Assert.Equal(2, s.Rating.Stack.Count));
        StackOffPhase low = Assert.Single(n.Switches[0].OffPhases), high = Assert.Single(p.Switches[^1].OffPhases);
        Assert.Equal([new Interval<double>(0, 0), new Interval<double>(0.5, 1)], low.GateVolts);
        Assert.Equal([new Interval<double>(2, 4), new Interval<double>(1.5, 3)], high.GateVolts);
        Assert.DoesNotContain(low.Phase, n.Switches[0].OnPhases.Select(o => o.Phase));
        Assert.Empty(Drive(Ladder.StepDown(2), new Interval<double>(2, 4), Kind(DevicePolarity.NType, 0.85, 1.1) with { RatedVolts = 9 }).Switches[0].OffPhases);
    }

    // A ladder of four rungs at 3.6 to 4 V: rungs of 0.9 to 1 V. The source of s1 is gnd, of s2 vout,
    // of s3 vout, of s8 vin. One rung up is the next node; n-type devices that need 0.85 V and withstand 1.1 V
    // are served by it, and nothing lies one rung above vin.
    [Fact]
    public void Each_rung_of_a_ladder_drives_the_switches_of_the_one_below_and_the_top_needs_its_own_rail()
    {
        ConverterGateDrive drive = Drive(Ladder.StepDown(4), new Interval<double>(3.6, 4), Kind(DevicePolarity.NType, 0.85, 1.1));
        SwitchGateDrive s1 = drive.Switches[0], s8 = drive.Switches[7];
        GatePhase on = Assert.Single(s1.OnPhases);
        Assert.Equal(2, on.Phase);
        Assert.Equal("0", on.SourcePotential.ToString());
        Assert.Equal((0.85, 0.85), (on.GateVolts.Minimum!.Value, on.GateVolts.Maximum!.Value));
        Assert.Contains("vout", s1.CommonSupplies);
        Assert.False(s1.NeedsOwnRail);
        Assert.True(s8.NeedsOwnRail);
        Assert.Empty(s8.OnPhases[0].Supplies);
        Assert.Equal(3.6 + 0.85, s8.OnPhases[0].GateVolts.Minimum!.Value, 1e-12);
        Assert.Equal(4 + 0.85, s8.OnPhases[0].GateVolts.Maximum!.Value, 1e-12);
        Assert.Equal("s8: own rail", s8.ToString());
    }

    // as p-type, the top switch is served by the rung below vin, and the bottom one by nothing
    [Fact]
    public void P_type_devices_are_served_by_the_rung_below()
    {
        ConverterGateDrive drive = Drive(Ladder.StepDown(4), new Interval<double>(3.6, 4), Kind(DevicePolarity.PType, 0.85, 1.1));
        Assert.Contains("r3", drive.Switches[7].CommonSupplies);
        Assert.True(drive.Switches[0].NeedsOwnRail);
    }

    // m1 is on gnd in phase 2, its capacitor fly1 up to m2: that capacitor holds the rung and is named
    [Fact]
    public void A_capacitor_on_the_source_is_named_as_the_supply()
    {
        ConverterGateDrive drive = Drive(Ladder.StepDown(4), new Interval<double>(3.6, 4), Kind(DevicePolarity.NType, 0.85, 1.1));
        GateSupply supply = drive.Switches[0].OnPhases[0].Supplies.First(s => s.Node == "m2");
        Assert.Equal("fly1", supply.Capacitor!.Name);
        Assert.Equal("m2 by fly1 (1/4)", supply.ToString());
        Assert.Null(drive.Switches[0].OnPhases[0].Supplies.First(s => s.Node == "vout").Capacitor);
    }

    // a rung of 0.7 V at 2.8 V is not enough for 0.85 V: it is from 3.4 V on
    [Fact]
    public void A_supply_for_a_part_of_the_range_says_from_which_input_voltage_it_serves()
    {
        ConverterGateDrive drive = Drive(Ladder.StepDown(4), new Interval<double>(2.8, 4), Kind(DevicePolarity.NType, 0.85, 1.1));
        GateSupply vout = drive.Switches[0].OnPhases[0].Supplies.First(s => s.Node == "vout");
        Assert.False(vout.CoversRange);
        Assert.Equal((3.4, 4.0), (vout.InputVolts.Minimum!.Value, vout.InputVolts.Maximum!.Value));
        Assert.True(drive.Switches[0].NeedsOwnRail);
        Assert.Contains("vout (1/4) at 3.4 V to 4 V of input", drive.Switches[0].OnPhases[0].ToString(), StringComparison.Ordinal);
        Assert.EndsWith("own rail elsewhere", drive.Switches[0].OnPhases[0].ToString(), StringComparison.Ordinal);
        Assert.StartsWith("s1: from vout at 3.4 V to 4 V of input", drive.Switches[0].ToString(), StringComparison.Ordinal);
        Assert.Equal("s8: own rail", drive.Switches[7].ToString());
    }

    // every node against the plain definition: its potential minus the source's lies between drive and rating somewhere in the range
    [Theory]
    [InlineData(DevicePolarity.NType)]
    [InlineData(DevicePolarity.PType)]
    public void The_supplies_are_all_the_nodes_that_the_definition_admits(DevicePolarity polarity)
    {
        Converter converter = Ladder.StepDown(6);
        const double drive = 0.85, rating = 1.4, minimum = 3, maximum = 6;
        ConverterGateDrive gates = Drive(converter, new Interval<double>(minimum, maximum), Kind(polarity, drive, rating));
        PhaseTable potentials = gates.Ratings.Stress.Analysis.Modes[0].Require().IdealPoint.NodePotentials;
        foreach ((SwitchGateDrive gate, int s) in gates.Switches.Select((g, s) => (g, s)))
        {
            GatePhase phase = Assert.Single(gate.OnPhases);
            int source = converter.Network.SwitchFirst[s];
            IEnumerable<string> expected = converter.Nodes.Where((_, node) =>
            {
                Fraction share = potentials[node][phase.Phase].ToFraction() - potentials[source][phase.Phase].ToFraction();
                double volts = (polarity == DevicePolarity.NType ? share : -share).ToDouble();
                return volts * maximum >= drive - 1e-12 && volts * minimum <= rating + 1e-12;
            });
            Assert.Equal(expected, phase.Supplies.Select(p => p.Node));
            Assert.Equal(phase.Supplies.Any(p => p.CoversRange), phase.HasSupply);
        }
    }

    // twice the ladder, at one voltage a rung or at one voltage in all: memory in proportion, so time at most with a logarithm more
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_gate_drive_of_a_ladder_grows_with_its_size(bool isOneVoltage)
    {
        long small = Allocated(100), large = Allocated(400);
        Assert.InRange(large, small, 5 * small);

        long Allocated(int levels)
        {
            double volts = isOneVoltage ? 4 : levels;
            ConverterRatings ratings = ConverterRatings.Of(
                RatedNetworks.Stress(Ladder.StepDown(levels), new Interval<double>(0.9 * volts, volts)),
                new RatingLimits { Switch = DemoDevices.NType1V2, Capacitor = DemoDevices.Plate3V6 });
            ConverterGateDrive.Of(ratings);
            long before = GC.GetAllocatedBytesForCurrentThread();
            ConverterGateDrive.Of(ratings);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
    }

    [Fact]
    public void Bodies_rest_on_nodes_that_no_terminal_passes()
    {
        ConverterGateDrive n = Drive(RatedNetworks.Half().Build(), new Interval<double>(2, 3), DemoDevices.NType1V8);
        // s1 between vin and p: p lies between vout and vin
        Assert.Equal((1.0, 3.0), (n.Switches[0].TerminalVolts.Minimum!.Value, n.Switches[0].TerminalVolts.Maximum!.Value));
        Assert.Equal(["gnd", "vout", "p", "n"], n.Switches[0].BodyNodes);
        Assert.Equal(["gnd"], n.Switches[3].BodyNodes);
        ConverterGateDrive p = Drive(RatedNetworks.Half().Build(), new Interval<double>(2, 3), DemoDevices.PType1V8);
        Assert.Equal(["vin"], p.Switches[0].BodyNodes);
    }

    private static ConverterGateDrive Drive(Converter converter, Interval<double> input, SwitchDevice kind) => ConverterGateDrive.Of(
        ConverterRatings.Of(RatedNetworks.Stress(converter, input), new RatingLimits { Switch = kind, Capacitor = DemoDevices.Plate3V6 }));

    private static SwitchDevice Kind(DevicePolarity polarity, double drive, double rating) => new()
    {
        Name = "test",
        Source = "invented",
        Polarity = polarity,
        RatedVolts = 1.2,
        GateDriveVolts = drive,
        GateRatedVolts = rating,
        OnResistanceOhmMicrometres = 1000,
        GateChargeCoulombsPerMicrometre = 1e-15,
        JunctionChargeCoulombsPerMicrometre = 1e-15,
        AreaSquareMetresPerMicrometre = 1e-12,
    };
}
