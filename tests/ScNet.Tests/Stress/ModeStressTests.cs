using ScNet.Analysis;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Stress;

public sealed class ModeStressTests
{
    private static readonly Interval<double> s_cell = new(2.8, 4.2);

    // every switch of a ladder blocks one rung: common practice, no source
    [Fact]
    public void Every_switch_of_a_ladder_blocks_one_rung_one_way()
    {
        ConverterStress stress = RatedNetworks.Stress(Ladder.StepDown(4), s_cell);
        Assert.All(stress.Switches, s =>
        {
            Assert.Equal(Quantity.Exact(1, 4), s.PeakPositive!.PerVoltOfInput);
            Assert.Equal(1.05, s.PeakPositive.Volts);
            Assert.Equal(4.2, s.PeakPositive.InputVoltageVolts);
            Assert.Null(s.PeakNegative);
            Assert.False(s.BlocksBothWays);
            Assert.True(!s.IsFloating && s.IsDetermined);
        });
        Assert.All(stress.Capacitors, c => Assert.Equal(Quantity.Exact(1, 4), c.Peak!.PerVoltOfInput));
    }

    // inner chain switches of a Dickson network see two stages, all others one: common practice, no source
    [Fact]
    public void Inner_switches_of_a_Dickson_network_block_two_stages()
    {
        ConverterStress stress = RatedNetworks.Stress(Dickson.StepDown(5), s_cell);
        Assert.All(stress.Switches, s =>
        {
            int stages = s.Switch.Name is "s2" or "s3" or "s4" ? 2 : 1;
            Assert.Equal(Quantity.Exact(stages, 5), s.Peak!.PerVoltOfInput);
            Assert.Null(s.PeakNegative);
            Assert.False(s.BlocksBothWays);
        });
        Assert.Equal(1.68, stress.Switches[1].Peak!.Volts);
    }

    [Fact]
    public void A_halver_of_exchanged_terminals_blocks_the_negative_half()
    {
        SwitchStress s2 = RatedNetworks.First(RatedNetworks.Half().Build()).Switches[1];
        Assert.Null(s2.PeakPositive);
        Assert.Equal(Quantity.Exact(-1, 2), s2.Peak!.PerVoltOfInput);
        Assert.False(s2.BlocksBothWays);
        Assert.Equal(2, s2.Peak.Phase);
        Assert.Equal("s2: never positive; -0.5 V (-1/2) at 1 V, mode default, phase 2", s2.ToString());
    }

    // vout is 1/2; x is on vin in phase 1 and on gnd in phase 2, so the open switch sees 1/2 and -1/2
    [Fact]
    public void A_switch_that_sees_both_signs_must_block_both_ways()
    {
        Converter converter = RatedNetworks.Half().Switch("up", "vin", "x", 1).Switch("down", "x", "gnd", 2).Switch("never", "x", "vout").Build();
        SwitchStress never = RatedNetworks.First(converter).Switches[^1];
        Assert.True(never.BlocksBothWays);
        Assert.Equal("1/2; -1/2", RatedNetworks.Text(never));
        Assert.Equal(Quantity.Exact(1, 2), never.Peak!.PerVoltOfInput);
    }

    // All open in phase 3. Before it, in phase 2, p = 1/2 and n = 0: held, they stay. Leaking, n lies anywhere
    // between what s4 (n = 0), s3 (p = 1/2), s2 (n = 1/2) and s1 (p = 1) pull it to: 0 to 1/2, with p 1/2 above.
    [Theory]
    [InlineData(false, "1/2 (floating)", "-1/2 (floating)", "0 (floating)", "0 (floating)")]
    [InlineData(true, "0 to 1/2 (floating)", "-1/2 to 0 (floating)", "0 to 1/2 (floating)", "0 to 1/2 (floating)")]
    public void A_capacitor_cut_off_keeps_its_potentials_or_leaks_towards_its_neighbours(bool openSwitchesLeak, params string[] expected)
    {
        ModeStress stress = RatedNetworks.First(RatedNetworks.Half().Phases(3).Build(), openSwitchesLeak);
        Assert.Equal(expected, stress.Switches.Select(s => s.Phases[3].ToString()));
        Assert.All(stress.Switches, s => Assert.True(s.IsFloating && s.IsDetermined));
    }

    // x is on vin in phase 1 and on vout (1/2) in phase 2; in phase 3 it keeps 1/2, in phase 1 of the other order 1
    [Fact]
    public void A_held_node_has_the_potential_of_the_phase_before()
    {
        Converter converter = RatedNetworks.Half().Phases(4).Switch("up", "vin", "x", 1).Switch("mid", "vout", "x", 3).Build();
        ModeStress stress = RatedNetworks.First(converter, false);
        int x = converter.Nodes.PositionOf("x");
        Assert.Equal(["1", "1 (floating)", "1/2", "1/2 (floating)"], stress.NodePotentials[x].Select(p => p.ToString()));
        Assert.Equal("0; 0 (floating); 1/2; 1/2 (floating)", RatedNetworks.Text(stress.Switches[4]));
    }

    [Fact]
    public void A_node_that_nothing_ever_pins_stays_undetermined()
    {
        Converter converter = RatedNetworks.Half().Capacitor("idle", "x", "gnd").Switch("open", "vin", "x").Build();
        ModeStress stress = RatedNetworks.First(converter);
        Assert.False(stress.Switches[^1].IsDetermined);
        Assert.Null(stress.Switches[^1].Peak);
        Assert.False(stress.Capacitors[^1].IsDetermined);
        Assert.False(stress.Switches[^1].BlocksBothWays);
    }

    // a node between two open switches, without a capacitor, leaks to anywhere between their other ends
    [Fact]
    public void A_node_behind_open_switches_lies_between_their_other_ends_or_is_undetermined_where_they_do_not_leak()
    {
        Converter converter = RatedNetworks.Half().Switch("a", "vin", "x").Switch("b", "x", "vout").Build();
        Assert.Equal("0 to 1/2 (floating); 0 to 1/2 (floating)", RatedNetworks.Text(RatedNetworks.First(converter).Switches[4]));
        Assert.False(RatedNetworks.First(converter, false).Switches[4].IsDetermined);
    }

    // c2 holds 1/2 and floats in phases 1 and 2, with x on its upper plate, then on its lower one. Where it
    // floats depends on x and x on it: whatever interval is tried, the next round is wider by 1/2.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_node_that_lifts_itself_by_a_floating_capacitor_has_no_bound(bool openSwitchesLeak)
    {
        Converter converter = RatedNetworks.Half().Phases(3).Capacitor("c2", "p2", "n2")
            .Switch("top", "vin", "p2", 3).Switch("bottom", "n2", "vout", 3)
            .Switch("join", "x", "p2", 1).Switch("part", "x", "n2", 2).Build();
        ModeStress stress = RatedNetworks.First(converter, openSwitchesLeak);
        List<string> nodes = [.. converter.Nodes];
        Assert.Equal(["?", "?", "?"], stress.NodePotentials[nodes.IndexOf("x")].Select(p => p.ToString()));
        Assert.Equal(["?", "?", "1"], stress.NodePotentials[nodes.IndexOf("p2")].Select(p => p.ToString()));
        Assert.Equal("0; -1/2; ?", RatedNetworks.Text(stress.Switches[6]));
    }

    [Fact]
    public void A_mode_without_a_result_throws_its_findings()
    {
        Converter shorted = RatedNetworks.Half().Switch("s5", "vin", "gnd", 1).Build();
        Assert.Throws<ScNetException>(() => RatedNetworks.First(shorted));
        ConverterStress stress = RatedNetworks.Stress(shorted);
        Assert.Empty(stress.Modes);
        Assert.Equal("default", Assert.Single(stress.ModesWithoutResult).Name);
        Assert.All(stress.Switches, s => Assert.False(s.IsDetermined));
        Assert.Throws<ArgumentException>(() => stress["default"]);
    }

    [Fact]
    public void A_range_of_its_own_sets_the_stress_of_a_mode()
    {
        Converter gears = RatedNetworks.Example("memory-gears");
        ConverterStress stress = ConverterStress.Of(
            ConverterAnalysis.Of(gears), s_cell, inputVoltsOfModes: new Dictionary<string, Interval<double>> { ["2/3"] = new(2.8, 3) });
        Assert.Equal(3, stress["2/3"].Switches.Max(s => s.Peak?.InputVoltageVolts));
        Assert.Equal(4.2, stress["1/3"].Switches.Max(s => s.Peak?.InputVoltageVolts));
        Assert.Equal(3, stress.Change("1/3", "2/3").InputVolts.Maximum!.Value);
        Assert.Throws<ArgumentException>(() => ConverterStress.Of(
            ConverterAnalysis.Of(gears), s_cell, inputVoltsOfModes: new Dictionary<string, Interval<double>> { ["3/4"] = s_cell }));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(2, 1)]
    [InlineData(1, double.NaN)]
    [InlineData(1, double.PositiveInfinity)]
    public void A_range_must_be_positive_and_ascending(double minimum, double maximum) =>
        Assert.ThrowsAny<ArgumentException>(() => RatedNetworks.Stress(RatedNetworks.Half().Build(), new Interval<double>(minimum, maximum)));

    [Theory]
    [InlineData(2.8, 3.4, 3, 4.2, 3, 3.4)]
    [InlineData(2.8, 3, 3.4, 4.2, 3, 3.4)]
    public void A_change_happens_at_the_common_voltages_or_between_the_ranges(double a, double b, double c, double d, double low, double high)
    {
        Assert.Equal(new Interval<double>(low, high), InputInterval.Between(new(a, b), new(c, d)));
    }
}
