using Fractions;
using ScNet.Devices;
using ScNet.Stress;
using ScNet.Tests.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Devices;

public sealed class RatingTests
{
    private static readonly RatingLimits s_demo = new() { Switch = DemoDevices.NType1V2, Capacitor = DemoDevices.Dense1V2 };

    // Half of 3.6 V is 1.8 V: two devices of 1.2 V, 0.9 V each
    [Fact]
    public void A_stack_of_two_shares_the_voltage_equally()
    {
        ConverterRatings ratings = Rate(RatedNetworks.Half().Build(), 3.6);
        Assert.All(ratings.Switches, s =>
        {
            Assert.Equal(RatingOutcome.NeedsStack, s.Overall.Outcome);
            Assert.Equal(2, s.Overall.StackCount);
            Assert.Equal(1.8, s.Overall.Volts);
            Assert.Equal(0.9, s.Overall.VoltsPerDevice);
            Assert.Null(s.AtChanges);
        });
        Assert.Equal("s1: 1.8 V of 1.2 V, needs a stack of 2", ratings.Switches[0].ToString());
        Assert.Equal("s1, mode default: 1.8 V of 1.2 V, needs a stack of 2", ratings.Switches[0].Modes[0].ToString());
        Assert.True(ratings.IsAllowed);
    }

    // n devices of V/n each: n-high stacks by hand for 1, 2, 3 and 4 devices of 1.2 V, with the limit at 3
    [Theory]
    [InlineData(2.4, 1, RatingOutcome.WithinRating)]
    [InlineData(2.400001, 2, RatingOutcome.NeedsStack)]
    [InlineData(4.8, 2, RatingOutcome.NeedsStack)]
    [InlineData(7.2, 3, RatingOutcome.NeedsStack)]
    [InlineData(9.6, 4, RatingOutcome.NotAllowed)]
    public void The_count_is_voltage_over_rating_rounded_up(double inputVolts, int count, RatingOutcome outcome)
    {
        RatingVerdict verdict = Rate(RatedNetworks.Half().Build(), inputVolts).Switches[0].Overall;
        Assert.Equal((count, outcome), (verdict.StackCount, verdict.Outcome));
        Assert.Equal(inputVolts / 2 / count, verdict.VoltsPerDevice!.Value, 1e-12);
    }

    [Fact]
    public void A_third_of_3_6_V_needs_no_stack_of_devices_for_1_2_V()
    {
        ConverterRatings ratings = Rate(Ladder.StepDown(3), 3.6);
        Assert.All(ratings.Switches, s => Assert.Equal(RatingOutcome.WithinRating, s.Overall.Outcome));
        Assert.All(ratings.Capacitors, s => Assert.Equal(RatingOutcome.WithinRating, s.Overall.Outcome));
    }

    // four times the area for twice the voltage: common practice, no source
    [Fact]
    public void Twice_the_voltage_costs_four_times_the_area()
    {
        StackedSwitch one = new(DemoDevices.NType1V2, 1, 2), two = new(DemoDevices.NType1V2, 2, 2);
        Assert.Equal(300, one.WidthOfEachMicrometres);
        Assert.Equal(600, two.WidthOfEachMicrometres);
        Assert.Equal(1200, two.TotalWidthMicrometres);
        Assert.Equal(4 * one.AreaSquareMetres, two.AreaSquareMetres);
        Assert.Equal(4 * one.GateChargeCoulombs, two.GateChargeCoulombs);
        Assert.Equal(4 * one.JunctionChargeCoulombs, two.JunctionChargeCoulombs);
        Assert.Equal(2.4, two.RatedVolts);
        StackedCapacitor single = new(DemoDevices.Dense1V2, 1, 1e-9), pair = new(DemoDevices.Dense1V2, 2, 1e-9);
        Assert.Equal(1e-7, single.AreaSquareMetres, 1e-20);
        Assert.Equal(4e-7, pair.AreaSquareMetres, 1e-20);
        Assert.Equal(2e-9, pair.CapacitanceOfEachFarads);
        Assert.Equal(single.EsrOhms, pair.EsrOhms, 1e-15);
        Assert.Equal(4 * single.BottomPlateFarads, pair.BottomPlateFarads, 1e-22);
        Assert.Equal(2 * single.LeakageAmperes, pair.LeakageAmperes, 1e-20);
        Assert.Equal(2.4, pair.RatedVolts);
    }

    // memory gears at 4.2 V: s4 sees 2/3 · 4.2 V at the worst change, as in ModeChangeTests, and 2/3 in mode 1/3
    [Fact]
    public void Changes_of_mode_count_unless_they_are_left_out()
    {
        Converter gears = RatedNetworks.Example("memory-gears");
        SwitchRating counted = Rate(gears, 4.2).Switches[gears.Switches.PositionOf("s5")];
        SwitchRating steady = Rate(gears, 4.2, new RatingLimits { Switch = s_demo.Switch, Capacitor = s_demo.Capacitor, CountsChanges = false })
            .Switches[gears.Switches.PositionOf("s5")];
        Assert.Equal(4.2, counted.AtChanges!.Volts!.Value, 1e-12);
        Assert.Equal(4, counted.Overall.StackCount);
        Assert.Null(steady.AtChanges);
        Assert.Equal(2.8, steady.Overall.Volts!.Value, 1e-12);
        Assert.Equal(3, steady.Overall.StackCount);
        Assert.Equal(3, steady.Stack.Count);
        Assert.Equal(["1/3", "1/2", "2/3"], steady.Modes.Select(m => m.Mode!.Name));
    }

    [Fact]
    public void A_kind_of_its_own_serves_the_element_that_is_named()
    {
        ConverterRatings ratings = Rate(RatedNetworks.Half().Build(), 3.6, new RatingLimits
        {
            Switch = DemoDevices.NType1V2,
            Capacitor = DemoDevices.Dense1V2,
            SwitchDevices = new Dictionary<string, SwitchDevice> { ["s3"] = DemoDevices.PType1V8 },
            CapacitorDevices = new Dictionary<string, CapacitorDevice> { ["fly"] = DemoDevices.Plate3V6 },
        });
        Assert.Equal([2, 2, 1, 2], ratings.Switches.Select(s => s.Overall.StackCount));
        Assert.Equal(RatingOutcome.WithinRating, ratings.Capacitors[0].Overall.Outcome);
        Assert.Equal(1e-9 / 2e-3, ratings.CapacitorAreaSquareMetres, 1e-18);
        Assert.Equal(
            (3 * 4 * 600 / 2 * 0.4e-12) + (2200 / 2 * 0.7e-12), ratings.SwitchAreaSquareMetres, 1e-20);
    }

    [Fact]
    public void An_undetermined_voltage_gives_no_verdict_and_is_not_allowed()
    {
        ConverterRatings ratings = Rate(RatedNetworks.Half().Capacitor("idle", "x", "gnd").Switch("open", "vin", "x").Build(), 1);
        Assert.Equal(RatingOutcome.Undetermined, ratings.Switches[^1].Overall.Outcome);
        Assert.Equal(RatingOutcome.Undetermined, ratings.Capacitors[^1].Overall.Outcome);
        Assert.Null(ratings.Switches[^1].Overall.Volts);
        Assert.False(ratings.IsAllowed);
        Assert.Equal("open: ? of 1.2 V, undetermined in mode default, phase 1, as idle idles, and in 1 other place", ratings.Switches[^1].ToString());
    }

    // fly2 idles in mode "without"; 1/3, 1/2 and 2/3 leave it with 1/3 or 1/2 of 3.6 V: two devices of 1.2 V
    [Fact]
    public void A_capacitor_that_one_mode_leaves_idle_keeps_no_verdict_open()
    {
        ConverterRatings ratings = Rate(RatedNetworks.GearsWithIdle(), 3.6);
        Assert.True(ratings.IsAllowed);
        Assert.All(ratings.Switches, s => Assert.False(s.Overall.IsLowerBound));
        Assert.Equal((RatingOutcome.NeedsStack, 1.8), (ratings.Capacitors[1].Modes[3].Outcome, ratings.Capacitors[1].Modes[3].Volts));
        Assert.Equal("without", ratings.Capacitors[1].Modes[3].Mode!.Name);
    }

    // a third capacitor of which no mode fixes the voltage: what it touches is unknown, the rest is not
    [Fact]
    public void What_is_known_is_said_where_something_is_not()
    {
        ConverterRatings ratings = Rate(RatedNetworks.GearsWithIdle(capacitor: "lone = { between = [\"y\", \"gnd\"] }", @switch: "touch = { between = [\"vout\", \"y\"] }"), 3.6);
        SwitchRating touch = ratings.Switches[0];
        Assert.Equal(RatingOutcome.Undetermined, touch.Overall.Outcome);
        Assert.Contains("as lone idles", touch.ToString(), StringComparison.Ordinal);
        Assert.Equal("lone", Assert.Single(touch.Overall.Places[0].IdleCapacitors).Name);
        Assert.All(ratings.Switches.Skip(1), s => Assert.False(s.Overall.IsLowerBound));
    }

    [Fact]
    public void A_lower_bound_says_what_it_needs_at_least_and_where_it_is_open()
    {
        Converter converter = RatedNetworks.Half().Capacitor("lone", "y", "gnd").Switch("part", "vin", "y").Build();
        UndeterminedStress place = new(converter.Modes[0], null, 2, [converter.Capacitors[1]], []);
        RatingVerdict verdict = RatingVerdict.Of("s1", null, new Fraction(24, 10), true, [place], new Fraction(12, 10), 3);
        Assert.Equal("s1: 2.4 V of 1.2 V, at least a stack of 2; undetermined in mode default, phase 2, as lone idles", verdict.ToString());
        Assert.Equal((RatingOutcome.Undetermined, 2, true), (verdict.Outcome, verdict.StackCount, verdict.IsLowerBound));
        Assert.Equal("s1: 1 V of 1.2 V; undetermined in mode default, phase 2, as lone idles",
            RatingVerdict.Of("s1", null, Fraction.One, true, [place], new Fraction(12, 10), 3).ToString());
        Assert.Equal(RatingOutcome.NotAllowed, RatingVerdict.Of("s1", null, new Fraction(24, 10), true, [place], Fraction.One, 2).Outcome);
    }

    [Fact]
    public void Names_that_do_not_exist_and_values_out_of_range_are_refused()
    {
        RatingLimits wrong = new()
        {
            Switch = s_demo.Switch,
            Capacitor = s_demo.Capacitor,
            SwitchDevices = new Dictionary<string, SwitchDevice> { ["s9"] = s_demo.Switch },
        };
        Assert.Contains("s9", Assert.Throws<ArgumentException>(() => Rate(RatedNetworks.Half().Build(), 1, wrong)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new RatingLimits { Switch = s_demo.Switch, Capacitor = s_demo.Capacitor, MaximumSwitchesInSeries = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new StackedSwitch(s_demo.Switch, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StackedCapacitor(s_demo.Capacitor, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CapacitorDevice { Name = "x", Source = "invented", RatedVolts = -1, FaradsPerSquareMetre = 1 });
    }

    [Fact]
    public void Every_demo_kind_says_that_it_is_invented() =>
        Assert.All(
            new[] { DemoDevices.NType1V2, DemoDevices.NType1V8, DemoDevices.PType1V8 }.Select(k => k.Source)
                .Concat(new[] { DemoDevices.Dense1V2, DemoDevices.Plate3V6 }.Select(k => k.Source)),
            source => Assert.Equal("invented", source));

    private static ConverterRatings Rate(Converter converter, double inputVolts, RatingLimits? limits = null) =>
        ConverterRatings.Of(RatedNetworks.Stress(converter, new Interval<double>(1, inputVolts)), limits ?? s_demo);
}
