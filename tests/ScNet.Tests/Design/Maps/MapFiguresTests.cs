using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Requirements;
using ScNet.Tests.Design.Losses;

namespace ScNet.Tests.Design.Maps;

/// <summary>Ratios, stress, places and texts of a map.</summary>
public sealed class MapFiguresTests
{
    [Fact]
    public void The_next_ratio_above_is_the_least_that_is_larger()
    {
        MapRatios ratios = MapRatios.Of([InventedGears.Half, InventedGears.Quarter, InventedGears.Third]);
        Assert.Equal(0.25, ratios.Above(0.1));
        Assert.Equal(1 / 3.0, ratios.Above(0.25));
        Assert.Equal(0.5, ratios.Above(0.4));
        Assert.Null(ratios.Above(0.5));
        Assert.Equal(1.0, ratios.IdealEfficiency(4, 1));
        Assert.Equal(1.5 / 2, ratios.IdealEfficiency(4, 1.5));
        Assert.Null(ratios.IdealEfficiency(4, 2.1));
    }

    // the sources' own capacitor has all of the input, on three devices of 2 V; the others half of it, on three as well
    [Fact]
    public void The_worst_stress_is_the_largest_share_of_a_rating()
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n").Capacitor("in", "gnd", "vin")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        RatedStress worst = RatedStress.PerVoltOf(Model(half, 3))!.Value;
        Assert.Equal(("in", 1, 6), (worst.Element, worst.Volts, worst.RatedVolts));
        Assert.Equal(0.5, worst.At(3).Share);
        Assert.Equal("in: 3 V of 6 V", worst.At(3).ToString());
        Assert.Null(RatedStress.PerVoltOf(null));
    }

    // two switches with all of the input in series with nothing else: of equals the first
    [Fact]
    public void Of_equal_stresses_the_first_counts_and_what_is_undetermined_none()
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout").Capacitor("apart", "q", "r").Capacitor("fly", "p", "n").Switch("air", "vin", "q")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        RatedStress worst = RatedStress.PerVoltOf(Model(half, 1))!.Value;
        Assert.Equal(("s1", 0.5, 2), (worst.Element, worst.Volts, worst.RatedVolts));
    }

    [Fact]
    public void Points_stand_by_input_then_output_then_load()
    {
        OperatingMap map = OperatingMap.Of([InventedGears.Linear], [3, 4], [1, 2, 3.5], [1e-3, 2e-3]);
        Assert.Equal(12, map.Count);
        Assert.Equal((4, 2, 1e-3), Of(map.At(1, 1)));
        Assert.Equal((3, 3.5, 2e-3), Of(map.At(0, 2, 1)));
        Assert.Equal(
            from volts in map.InputVolts from wanted in map.OutputVolts from amperes in map.LoadAmperes select (volts, wanted, amperes),
            map.Points.Select(Of));

        // from 3 V nothing gives 3.5 V: 10 points of 12
        Assert.Equal(10 / 12.0, map.HeldShare);
        Assert.Null(map.At(0, 2).LinearEfficiency);
        Assert.Null(map.At(0, 2).BestMode);
        Assert.Equal(3.5 / 4, map.At(1, 2).LinearEfficiency);
        double output = map.Points.Where(p => p.IsHeld).Sum(p => p.OutputVolts * p.LoadAmperes), input = map.Points.Where(p => p.IsHeld).Sum(p => p.InputVolts * p.LoadAmperes);
        Assert.Equal(output / input, map.AverageEfficiency!.Value, 1e-12);
        Assert.Equal(1, OperatingMap.Of([InventedGears.Linear], [3], [3], [1]).At(0, 0).LinearEfficiency);

        static (double, double, double) Of(MapPoint point) => (point.InputVolts, point.OutputVolts, point.LoadAmperes);
    }

    [Fact]
    public void Places_outside_a_map_are_refused_by_their_names()
    {
        OperatingMap map = OperatingMap.Of([InventedGears.Linear], [3, 4], [1, 2, 3.5], [1e-3]);
        Assert.Equal("input", Refusal(() => map.At(2, 0)));
        Assert.Equal("input", Refusal(() => map.At(-1, 0)));
        Assert.Equal("output", Refusal(() => map.At(0, 3)));
        Assert.Equal("load", Refusal(() => map.At(0, 0, 1)));
        Assert.Equal("mode", Refusal(() => map.At(0, 0).OutcomeOf(1)));
        Assert.Equal("mode", Refusal(() => map.At(0, 0).OutcomeOf(-1)));
        Assert.Equal("threads", Refusal(() => OperatingMap.Of([InventedGears.Linear], [3], [1], [1], threads: -1)));
        Assert.Equal("loadAmperes", Refusal(() => OperatingMap.Of([InventedGears.Linear], [3], [1], [0])));

        static string? Refusal(Func<object> act) => Assert.Throws<ArgumentOutOfRangeException>(act).ParamName;
    }

    [Fact]
    public void Two_hundred_and_fifty_four_modes_are_the_most()
    {
        Assert.Equal(254, OperatingMap.Of([.. Enumerable.Repeat(InventedGears.Linear, 254)], [3], [1], [1]).Modes.Count);
        Assert.StartsWith(
            "Expected from 1 to 254 modes, but got 255.",
            Assert.Throws<ArgumentException>(() => OperatingMap.Of([.. Enumerable.Repeat(InventedGears.Linear, 255)], [3], [1], [1])).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Of_equally_good_modes_the_first_serves() =>
        Assert.Equal(0, OperatingMap.Of([InventedGears.Half, InventedGears.Half, InventedGears.Half], [3], [1.2], [1e-3]).At(0, 0).BestModeIndex);

    [Fact]
    public void Maps_points_and_losses_of_loads_tell_their_figures()
    {
        OperatingMap map = OperatingMap.Of([InventedGears.Linear], [4, 3], [3], [0.5]);
        Assert.Equal("1 mode at 2 points, 100.0 % held, efficiency 85.7 % on average", map.ToString());
        Assert.Equal($"4 V to 3 V at 0.5 A: {InventedGears.Linear}, {map.At(0, 0).Best}", map.At(0, 0).ToString());
        Assert.Equal("3 V to 4 V at 0.5 A: not held", OperatingMap.Of([InventedGears.Linear], [3], [4], [0.5]).At(0, 0).ToString());
        LifeEnd end = LifeEnd.Of(new(0.5, 3, 3), new LoadShare("on", 0.1, 1, 4), [InventedGears.Half]);
        Assert.Equal((0.5, 3, "on"), (end.StateOfCharge, end.OpenVolts, end.Load.Name));
        Assert.Equal("'on' is lost at 3 V with 50 % of the charge left", end.ToString());
        Assert.Equal("a ratio of 1/2 gives at most 1.5 V without load, and 4 V is wanted", Assert.Single(end.Reasons));
    }

    private static LossModel Model(Converter converter, int inSeries) => LossModel.Of(Sized.Of(converter, inSeries: inSeries), ModeAnalysis.Of(converter));
}
