using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Modes that are best over less than a billionth of the range, which are no bands, and borders to the last digit.</summary>
public sealed class ModeScheduleSliverTests
{
    private const double Billionth = 1e-9;

    private static readonly Interval<double> s_range = new(1, 5);

    [Fact]
    public void A_billionth_of_the_range_is_a_band()
    {
        // from next to nothing to 1 V: the difference is 1 V to the last digit
        ModeSchedule schedule = Of(new(1e-60, 1), Mode("below", 0, 9, 0.5), Mode("billionth", Billionth, Math.BitDecrement(2 * Billionth), 0.1), Mode("above", 2 * Billionth, 9, 0.3));
        Check(schedule, ("below", 1e-60, Billionth), ("billionth", Billionth, 2 * Billionth), ("above", 2 * Billionth, 1));
    }

    [Fact]
    public void What_comes_after_a_sliver_starts_where_the_sliver_did_and_keeps_its_own_end()
    {
        // all within one step of the grid, 1/64 V; the last one does not hold the output before 2.01 V
        ModeSchedule schedule = Of(s_range, Mode("below", 0, 9, 0.5), Mode("sliver", 2.001, 2.001 + 1e-10, 0.1), Mode("middle", 2.001, 9, 0.3), Mode("above", 2.01, 9, 0.2));
        Check(schedule, ("below", 1, 2.001), ("middle", 2.001, 2.01), ("above", 2.01, 5));
    }

    [Fact]
    public void A_sliver_within_a_mode_leaves_one_band_of_it()
    {
        // 2 V is one of the voltages that are looked at
        Check(Of(s_range, Mode("wide", 0, 9, 0.5), Mode("sliver", 2, 2 + 1e-10, 0.1)), ("wide", 1, 5));
        Check(
            Of(s_range, Mode("wide", 0, 9, 0.5), Mode("sliver", 2, 2 + 1e-10, 0.1), Mode("above", 3, 9, 0.2)),
            ("wide", 1, 3),
            ("above", 3, 5));
    }

    [Fact]
    public void A_sliver_at_the_lowest_voltage_is_no_band_and_no_gap()
    {
        Check(Of(s_range, Mode("sliver", 1, 1 + 1e-10, 0.1), Mode("wide", 0, 9, 0.5)), ("wide", 1, 5));
        Check(Of(s_range, Mode("late", 1 + 1e-10, 9, 0.5)), ("late", 1, 5));
    }

    [Fact]
    public void A_border_far_below_the_range_is_found_to_the_last_digit()
    {
        ModeSchedule schedule = Of(new(1e-60, 5), Mode("below", 0, 9, 0.5), Mode("above", 1e-6, 9, 0.3));
        Assert.Equal(1e-6, schedule.Bands[1].LowestVolts);
    }

    private static CurrentMode Mode(string name, double lowestVolts, double highestVolts, double amperes) => new(name, lowestVolts, highestVolts, _ => amperes);

    private static ModeSchedule Of(Interval<double> range, params RegulatedMode[] modes) => ModeSchedule.Of(modes, range, 1, 0.1, 0, 0);

    private static void Check(ModeSchedule schedule, params (string Name, double LowestVolts, double HighestVolts)[] bands)
    {
        Assert.Equal(bands.Select(b => b.Name), schedule.Bands.Select(b => b.Mode.Name));
        Assert.All(bands.Zip(schedule.Bands), b =>
        {
            Assert.Equal(b.First.LowestVolts, b.Second.LowestVolts, 1e-15);
            Assert.Equal(b.First.HighestVolts, b.Second.HighestVolts, 1e-15);
        });
        Assert.Empty(schedule.Gaps);
    }
}
