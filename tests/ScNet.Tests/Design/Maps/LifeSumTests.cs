using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Requirements;

namespace ScNet.Tests.Design.Maps;

/// <summary>A linear regulator draws its load current whatever the voltage: life, energies and shares by hand.</summary>
public sealed class LifeSumTests
{
    // 3 A for a quarter and 1 A for a quarter of the time told, which is half each: 2 A. 8 C last 4 s, 2 s in each state, at 3.5 V on average
    [Fact]
    public void Two_states_share_the_time_by_their_shares()
    {
        LifeEstimate life = LifeEstimate.Of(
            [InventedGears.Half, InventedGears.Linear], [new(1, 4), new(0, 3)], [new("a", 3, 0.25, 2), new("b", 1, 0.25, 2.5)], 0, 8, slices: 4);
        Assert.Equal(4, life.Seconds!.Value, 1e-12);
        Assert.Equal(4 / 3600.0, life.Hours!.Value, 1e-15);
        Assert.Equal((2 * 3 * 2) + (2 * 1 * 2.5), life.OutputJoules, 1e-12);
        Assert.Equal(8 * 3.5, life.InputJoules, 1e-12);
        Assert.Equal(17.0 / 28, life.AverageEfficiency!.Value, 1e-12);
        Assert.Equal(17.0 / 4, life.OutputWatts!.Value, 1e-12);
        Assert.Equal(7, life.InputWatts!.Value, 1e-12);
        Assert.Equal(28 - 17, life.JoulesOf(LossKind.LinearDrop), 1e-12);
        Assert.Equal(0, life.JoulesOf(LossKind.Conduction));
        Assert.Equal([0, 1], life.ModeShares);
        Assert.Equal((1, 0, 0, null), (life.HeldShare, life.SourceJoules, life.SkippingShare, life.End));
        Assert.Equal(["a", "b"], life.Loads.Select(l => l.Load.Name));
        Assert.Equal([6, 2.5], life.Loads.Select(l => Math.Round(l.OutputWatts, 12)));
        Assert.Equal([4.5, 1], life.Loads.Select(l => Math.Round(l.LossWatts, 12)));

        // without losses: 17 J over 4 s from each of four slices at 3.875, 3.625, 3.375, 3.125 V
        double lossless = 4.25 * (1 / 3.875 + (1 / 3.625) + (1 / 3.375) + (1 / 3.125)) / 8;
        Assert.Equal(1 - lossless, life.WastedShare, 1e-12);
        Assert.StartsWith("0.001111 h, efficiency 60.71 %, ", life.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(" of the charge wasted", life.ToString(), StringComparison.Ordinal);
    }

    // 0.1 Ω takes 0.01 · 9 W and 0.01 · 1 W … of the cell's own power, for as long as before
    [Fact]
    public void The_resistance_of_the_source_takes_its_own_part()
    {
        LifeEstimate life = LifeEstimate.Of([InventedGears.Linear], [new(1, 4), new(0, 3)], [new("a", 3, 0.25, 2), new("b", 1, 0.25, 2.5)], 0.1, 8, slices: 4);
        Assert.Equal(4, life.Seconds!.Value, 1e-9);
        Assert.Equal((2 * 0.1 * 9) + (2 * 0.1 * 1), life.SourceJoules, 1e-9);
        Assert.Equal(28 - 2, life.InputJoules, 1e-9);
    }

    // 3 V is wanted from 4 V down to 2 V: the fourth of eight parts, at 3.125 V, is the last that gives it
    [Fact]
    public void A_load_that_is_lost_ends_the_life()
    {
        LifeEstimate life = LifeEstimate.Of([InventedGears.Linear], [new(1, 4), new(0, 2)], [new("on", 1, 1, 3)], 0, null, slices: 8);
        Assert.Equal(0.5, life.HeldShare);
        Assert.Null(life.Seconds);
        Assert.Null(life.Hours);
        Assert.Equal((0.5, 2.875), (life.End!.StateOfCharge, life.End.OpenVolts));
        Assert.EndsWith("; 'on' is lost at 2.875 V with 50 % of the charge left", life.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("efficiency ", life.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_that_is_never_held_leaves_no_figures()
    {
        LifeEstimate life = LifeEstimate.Of([InventedGears.Linear], [new(1, 4), new(0, 2)], [new("on", 1, 1, 5)], 0, 36);
        Assert.Equal((0, 0, 1, 0), (life.Seconds, life.HeldShare, life.WastedShare, life.SkippingShare));
        Assert.Null(life.AverageEfficiency);
        Assert.Null(life.OutputWatts);
        Assert.Null(life.InputWatts);
        Assert.Equal([0], life.ModeShares);
        Assert.Empty(life.Loads);
    }

    [Fact]
    public void Values_out_of_range_are_refused_by_their_names()
    {
        DischargePoint[] curve = [new(1, 4), new(0, 3)];
        LoadShare[] loads = [new("on", 1, 1, 2)];
        Assert.Equal("slices", Assert.Throws<ArgumentOutOfRangeException>(() => LifeEstimate.Of([InventedGears.Linear], curve, loads, 0, 1, slices: 0)).ParamName);
        Assert.Equal("slices", Assert.Throws<ArgumentOutOfRangeException>(() => LifeEstimate.Of([InventedGears.Linear], curve, loads, 0, 1, slices: 100_001)).ParamName);
        Assert.Equal("sourceOhms", Assert.Throws<ArgumentOutOfRangeException>(() => LifeEstimate.Of([InventedGears.Linear], curve, loads, -1, 1)).ParamName);
        Assert.Equal("cellCoulombs", Assert.Throws<ArgumentOutOfRangeException>(() => LifeEstimate.Of([InventedGears.Linear], curve, loads, 0, 0)).ParamName);
        Assert.Equal("modes", Assert.Throws<ArgumentException>(() => LifeEstimate.Of([], curve, loads, 0, 1)).ParamName);
        Assert.Equal("loads", Assert.Throws<ArgumentException>(() => LifeEstimate.Of([InventedGears.Linear], curve, [.. loads, new("off", 1, 1)], 0, 1)).ParamName);
    }
}
