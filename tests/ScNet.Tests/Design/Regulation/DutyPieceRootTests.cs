using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Duties of a step-up stage of 0.08 Ω, whose output is V_in/(1 - D) - R I/(1 - D)².</summary>
public sealed class DutyPieceRootTests
{
    private const double Ohms = 0.08;

    private readonly DutyPiece _up = DutyPiece.Of(Up, 0.9, 0.95, 1e6);

    [Theory]
    [InlineData(3, 0.2)]
    [InlineData(3, 0.001)]
    [InlineData(300, 20)]
    [InlineData(1e4, 1)]
    public void Between_any_two_that_were_sampled_the_duty_is_that_of_the_closed_form(double inputVolts, double loadAmperes)
    {
        for (int k = 0; k + 1 < _up.Places.Length; k++)
        {
            double low = _up.VoltsAt(k, inputVolts, loadAmperes), high = _up.VoltsAt(k + 1, inputVolts, loadAmperes);
            for (int part = 1; part < 16 && low != high; part++)
            {
                // the larger root of V (1 - D)² - V_in (1 - D) + R I = 0
                double wanted = low + (part / 16.0 * (high - low));
                double left = (inputVolts + Math.Sqrt((inputVolts * inputVolts) - (4 * Ohms * loadAmperes * wanted))) / (2 * wanted);
                Assert.Equal(1 - left, _up.DutyBetween(k, inputVolts, wanted, loadAmperes), 1e-12);
            }
        }
    }

    [Fact]
    public void Billionths_of_all_voltages_and_currents_have_the_same_duties()
    {
        // a power of two, so that no digit changes
        const double Part = 1.0 / (1L << 30);
        for (int k = 0; k + 1 < _up.Places.Length; k++)
        {
            double wanted = 0.5 * (_up.VoltsAt(k, 3, 0.2) + _up.VoltsAt(k + 1, 3, 0.2));
            Assert.Equal(_up.DutyBetween(k, 3, wanted, 0.2), _up.DutyBetween(k, 3 * Part, wanted * Part, 0.2 * Part));
        }
    }

    private static LossModel Up(Fraction duty)
    {
        Converter converter = InductiveStage.StepUp(duty, 2.2e-6, 0.05, 0.03);
        return LossModel.Of(Sized.Of(converter, capacitor: Sized.BareCapacitor), ModeAnalysis.Of(converter));
    }
}
