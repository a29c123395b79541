using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Schedules of modes whose borders are known, run against a source with a resistance and noise.</summary>
public sealed class ModeScheduleTests
{
    private const double OutputVolts = 0.8;
    private const double LoadAmperes = 0.1;

    private static readonly RegulatedMode s_quarter = new IdealMode("1/4", 0.25), s_third = new IdealMode("1/3", 1.0 / 3), s_half = new IdealMode("1/2", 0.5);
    private static readonly RegulatedMode[] s_modes = [s_quarter, s_third, s_half];

    [Fact]
    public void Each_mode_serves_where_it_is_the_lowest_that_holds()
    {
        ModeSchedule schedule = ModeSchedule.Of(s_modes, new Interval<double>(2, 4.2), OutputVolts, LoadAmperes, 0, 0);
        Assert.Equal(["1/2", "1/3", "1/4"], schedule.Bands.Select(b => b.Mode.Name));
        Assert.Equal(2.4, schedule.Bands[1].LowestVolts, 1e-9);
        Assert.Equal(3.2, schedule.Bands[2].LowestVolts, 1e-9);
        Assert.Empty(schedule.Gaps);
        Assert.Empty(schedule.Warnings);
    }

    [Fact]
    public void Where_no_mode_holds_is_a_gap()
    {
        ModeSchedule schedule = ModeSchedule.Of([s_quarter], new Interval<double>(2, 4.2), OutputVolts, LoadAmperes, 0, 0);
        Interval<double> gap = Assert.Single(schedule.Gaps);
        Assert.Equal(2, gap.Minimum!.Value);
        Assert.Equal(3.2, gap.Maximum!.Value, 1e-9);
    }

    /// <summary>A cell that falls and rises slowly behind a resistance, with noise: every border is crossed once each way.</summary>
    [Theory]
    [InlineData(0.5, 0.02)]
    [InlineData(2, 0.05)]
    public void With_its_hysteresis_it_does_not_chatter(double sourceOhms, double noiseVolts)
    {
        ModeSchedule schedule = ModeSchedule.Of(s_modes, new Interval<double>(2, 4.2), OutputVolts, LoadAmperes, sourceOhms, noiseVolts);
        Assert.Equal(4, Changes(schedule, sourceOhms, noiseVolts));
    }

    [Fact]
    public void Without_it_the_same_cell_makes_it_chatter()
    {
        ModeSchedule schedule = ModeSchedule.Of(s_modes, new Interval<double>(2, 4.2), OutputVolts, LoadAmperes, 0, 0);
        Assert.True(Changes(schedule, 0.5, 0.02) > 4);
    }

    private static int Changes(ModeSchedule schedule, double sourceOhms, double noiseVolts)
    {
        Random noise = new(4711);
        int band = schedule.Bands.Count - 1, changes = 0;
        const int Steps = 40_000;
        for (int k = 0; k < 2 * Steps; k++)
        {
            double cell = k < Steps ? 4.2 - (1.9 * k / Steps) : 2.3 + (1.9 * (k - Steps) / Steps);
            double volts = Terminal(schedule.Bands[band].Mode, cell, sourceOhms) + (0.49 * noiseVolts * ((2 * noise.NextDouble()) - 1));
            int next = schedule.Next(band, volts);
            changes += Math.Abs(next - band);
            band = next;
        }

        return changes;
    }

    private static double Terminal(RegulatedMode mode, double cell, double sourceOhms) => cell - (sourceOhms * ((IdealMode)mode).VoltsPerVolt * LoadAmperes);

    /// <summary>Lossless but for what its ratio leaves over, as every ideal switched-capacitor mode.</summary>
    private sealed class IdealMode(string name, double ratio) : RegulatedMode(name)
    {
        public double VoltsPerVolt => ratio;

        public override RegulatedPoint Hold(double inputVolts, double outputVolts, double loadAmperes) => new(
            ratio * inputVolts >= outputVolts ? RegulationOutcome.Held : RegulationOutcome.RatioTooLow,
            1e6, double.NaN, outputVolts * loadAmperes, [((ratio * inputVolts) - outputVolts) * loadAmperes]);

        public override string ReasonAt(double inputVolts, double outputVolts, double loadAmperes) => string.Empty;
    }
}
