using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>
/// Voltages that a duty gives to the last digit: all switches and the winding have 1/16 Ω, so at 4 V and 0.5 A duties of 1/4 and 3/4 give
/// 1 V and 3 V less 0.5 A times 1/8 Ω.
/// </summary>
public sealed class DutyModeEndsTests
{
    private const double Hertz = 1e6;
    private const double LowVolts = 1 - 0.0625;
    private const double HighVolts = 3 - 0.0625;

    [Theory]
    [InlineData(0.25, LowVolts)]
    [InlineData(0.75, HighVolts)]
    public void What_the_lowest_and_the_highest_duty_give_is_held_by_them(double duty, double outputVolts) =>
        Check(RegulatedModes.OfDuty("rising", Stage, new(0.25, 0.75), Hertz), outputVolts, duty);

    [Theory]
    [InlineData(0.25, HighVolts)]
    [InlineData(0.75, LowVolts)]
    public void So_it_is_where_more_duty_gives_less(double duty, double outputVolts) =>
        Check(RegulatedModes.OfDuty("falling", d => Stage(Fraction.One - d), new(0.25, 0.75), Hertz), outputVolts, duty);

    [Fact]
    public void What_is_beyond_by_a_billionth_of_a_volt_is_refused()
    {
        RegulatedMode mode = RegulatedModes.OfDuty("rising", Stage, new(0.25, 0.75), Hertz);
        Assert.Equal(RegulationOutcome.DutyOutOfRange, mode.Hold(4, LowVolts - 1e-9, 0.5).Outcome);
        Assert.Equal(RegulationOutcome.DutyOutOfRange, mode.Hold(4, HighVolts + 1e-9, 0.5).Outcome);
    }

    [Fact]
    public void A_stage_that_gives_the_voltage_at_every_duty_holds_it_at_one()
    {
        RegulatedPoint point = RegulatedModes.OfDuty("flat", _ => Stage(new(1, 2)), new(0.25, 0.75), Hertz).Hold(4, 2 - 0.0625, 0.5);
        Assert.Equal(RegulationOutcome.Held, point.Outcome);
        Assert.InRange(point.Duty, 0.25, 0.75);
    }

    [Fact]
    public void A_voltage_of_a_duty_that_was_sampled_is_found_from_either_side_rising_and_falling()
    {
        Check(DutyPiece.Of(d => ModelOf(InductiveStage.StepUp(d, 2.2e-6, 0.05, 0.03)), 0.9, 0.95, Hertz), 0.2);
        Check(DutyPiece.Of(d => ModelOf(InductiveStage.StepUp(Fraction.One - d, 2.2e-6, 0.05, 0.03)), 0.05, 0.1, Hertz), 0.2);

        static void Check(DutyPiece piece, double loadAmperes)
        {
            for (int k = 1; k + 1 < piece.Places.Length; k++)
            {
                double volts = piece.VoltsAt(k, 3, loadAmperes);
                Assert.Equal(piece.Places[k], piece.DutyBetween(k - 1, 3, volts, loadAmperes), 1e-12);
                Assert.Equal(piece.Places[k], piece.DutyBetween(k, 3, volts, loadAmperes), 1e-12);
            }
        }
    }

    private static void Check(RegulatedMode mode, double outputVolts, double duty)
    {
        RegulatedPoint point = mode.Hold(4, outputVolts, 0.5);
        Assert.Equal(RegulationOutcome.Held, point.Outcome);
        Assert.Equal(duty, point.Duty, 1e-14);
        Assert.Equal(string.Empty, mode.ReasonAt(4, outputVolts, 0.5));
    }

    private static LossModel Stage(Fraction duty) => ModelOf(InductiveStage.StepDown(duty, 1, 1.0 / 16, 1.0 / 16));

    private static LossModel ModelOf(Converter converter) => LossModel.Of(Sized.Of(converter, capacitor: Sized.BareCapacitor), ModeAnalysis.Of(converter));
}
