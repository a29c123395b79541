using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Bands, their overlaps and the steps between them, for modes whose input currents are given.</summary>
public sealed class ModeScheduleBandTests
{
    private static readonly Interval<double> s_range = new(1, 5);

    [Fact]
    public void Neighbours_overlap_by_the_margin_and_the_largest_change_of_the_voltage_of_the_source()
    {
        // at the border, 2.5 V, the current falls by 0.5 A - 0.3 A = 0.2 A: 0.1 V + 1 Ω · 0.2 A = 0.3 V;
        // at 2.8 V it falls by 0.56 A - 0.3 A = 0.26 A: 0.1 V + 1 Ω · 0.26 A = 0.36 V
        ModeSchedule schedule = Of([Mode("below", 0, 9, v => 0.2 * v), Mode("above", 2.5, 9, _ => 0.3)], sourceOhms: 1, marginVolts: 0.1);
        Check(schedule, ("below", 1, 2.86), ("above", 2.5, 5));
        Assert.Empty(schedule.Warnings);
    }

    [Fact]
    public void Where_the_mode_below_ends_the_one_above_reaches_down()
    {
        // beyond 3 V the mode below draws nothing: 0.1 V + 1 Ω · 0.5 A = 0.6 V
        ModeSchedule schedule = Of([Mode("below", 0, 3, _ => 0.2), Mode("above", 1, 9, _ => 0.5)], sourceOhms: 1, marginVolts: 0.1);
        Check(schedule, ("below", 1, 3), ("above", 2.4, 5));
        Assert.Empty(schedule.Warnings);
    }

    [Fact]
    public void Modes_that_meet_without_overlap_are_warned_of()
    {
        ModeSchedule schedule = Of([Mode("below", 0, 3, _ => 0.2), Mode("above", 3, 9, _ => 0.5)], sourceOhms: 1, marginVolts: 0.1);
        Check(schedule, ("below", 1, 3), ("above", 3, 5));
        Assert.StartsWith("below and above cannot overlap by 0.6 V at 3 V,", Assert.Single(schedule.Warnings), StringComparison.Ordinal);
    }

    [Fact]
    public void A_band_stays_on_its_limits_and_the_outer_ones_have_nothing_beyond()
    {
        ModeSchedule schedule = Of([Mode("below", 0, 9, _ => 0.5), Mode("above", 2.5, 9, _ => 0.25)], sourceOhms: 2, marginVolts: 0.125);
        double lowest = schedule.Bands[1].LowestVolts, highest = schedule.Bands[0].HighestVolts;
        Assert.Equal((1, 0), (schedule.Next(1, lowest), schedule.Next(1, Math.BitDecrement(lowest))));
        Assert.Equal((0, 1), (schedule.Next(0, highest), schedule.Next(0, Math.BitIncrement(highest))));
        Assert.Equal((0, 1), (schedule.Next(0, 0.5), schedule.Next(1, 6)));
        Assert.Throws<ArgumentOutOfRangeException>(() => schedule.Next(2, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => schedule.Next(-1, 3));
    }

    [Fact]
    public void It_looks_at_voltages_evenly_over_the_range_and_none_beyond()
    {
        // 257 voltages from 1 V to 5 V are 1/64 V apart, so 2 V is one of them; neither mode holds beyond the range
        ModeSchedule schedule = Of([Mode("wide", 1, 5, _ => 0.5), Mode("island", 1.999, 2.001, _ => 0.2)]);
        Check(schedule, ("wide", 1, 1.999), ("island", 1.999, 2.001), ("wide", 2.001, 5));
        Assert.Empty(schedule.Gaps);
    }

    [Fact]
    public void The_last_voltage_it_looks_at_is_the_end_of_the_range()
    {
        Assert.True(0.7 + (2.9 - 0.7) > 2.9);
        ModeSchedule schedule = ModeSchedule.Of([Mode("whole", 0.7, 2.9, _ => 0.5)], new(0.7, 2.9), 1, 0.1, 0, 0);
        Check(schedule, ("whole", 0.7, 2.9));
        Assert.Empty(schedule.Gaps);
    }

    [Theory]
    [InlineData(1e-9, 2)]
    [InlineData(5e-9, 3)]
    public void What_is_narrower_than_a_billionth_of_the_range_is_no_band(double widthVolts, int bandCount)
    {
        // a billionth of 4 V is 4 nV
        ModeSchedule schedule = Of([Mode("below", 0, 2, _ => 0.5), Mode("sliver", 2, 2 + widthVolts, _ => 0.1), Mode("above", 2, 9, _ => 0.3)]);
        Assert.Equal(bandCount, schedule.Bands.Count);
        Assert.Equal(("below", "above"), (schedule.Bands[0].Mode.Name, schedule.Bands[^1].Mode.Name));
        Assert.Equal(2, schedule.Bands[^1].LowestVolts, 1e-8);
        Assert.Equal(5, schedule.Bands[^1].HighestVolts);
    }

    [Fact]
    public void Its_text_has_the_bands_and_the_gaps_where_there_are_some()
    {
        Assert.Equal("whole from 1 V to 5 V", Of([Mode("whole", 1, 5, _ => 0.5)]).ToString());
        Assert.Equal("part from 1 V to 3 V; no mode at 3 V to 5 V", Of([Mode("part", 1, 3, _ => 0.5)]).ToString());
    }

    [Fact]
    public void No_modes_and_no_range_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Of([]));
        Assert.Throws<ArgumentException>(() => ModeSchedule.Of([Mode("whole", 1, 5, _ => 0.5)], default, 1, 0.1, 0, 0));
    }

    private static CurrentMode Mode(string name, double lowestVolts, double highestVolts, Func<double, double> amperesAt) => new(name, lowestVolts, highestVolts, amperesAt);

    private static ModeSchedule Of(RegulatedMode[] modes, double sourceOhms = 0, double marginVolts = 0) => ModeSchedule.Of(modes, s_range, 1, 0.1, sourceOhms, marginVolts);

    private static void Check(ModeSchedule schedule, params (string Name, double LowestVolts, double HighestVolts)[] bands)
    {
        Assert.Equal(bands.Select(b => b.Name), schedule.Bands.Select(b => b.Mode.Name));
        Assert.All(bands.Zip(schedule.Bands), b =>
        {
            Assert.Equal(b.First.LowestVolts, b.Second.LowestVolts, 1e-12);
            Assert.Equal(b.First.HighestVolts, b.Second.HighestVolts, 1e-12);
        });
    }
}
