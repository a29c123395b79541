using Fractions;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Duties next to the peak of a step-up stage, losses at a duty that was sampled, and stages without a load.</summary>
public sealed class DutyPieceTests
{
    private const double Hertz = 1e6;
    private const double Ohms = 0.08;

    private readonly DutyPiece _up = DutyPiece.Of(Up, 0.9, 0.95, Hertz);

    /// <summary>V_in/(1 - D) - R I/(1 - D)² is V_in²/(4 R I) at most, where 1 - D = 2 R I/V_in: from there tangents lead far astray.</summary>
    [Fact]
    public void Just_below_the_highest_voltage_the_duty_found_has_the_voltage_and_is_between_the_two_that_were_sampled()
    {
        const double InputVolts = 3;
        int found = 0;
        foreach ((double load, int digits) in Enumerable.Range(0, 60).SelectMany(k => Enumerable.Range(1, 6).Select(d => (1 + (0.01 * k), d))))
        {
            double wanted = (1 - Math.Pow(10, -digits)) * InputVolts * InputVolts / (4 * Ohms * load);
            for (int k = 0; k + 1 < _up.Places.Length; k++)
            {
                if (_up.VoltsAt(k, InputVolts, load) > wanted != _up.VoltsAt(k + 1, InputVolts, load) > wanted)
                {
                    double duty = _up.DutyBetween(k, InputVolts, wanted, load), left = 1 - duty;
                    Assert.InRange(duty, _up.Places[k], _up.Places[k + 1]);
                    Assert.Equal(1, ((InputVolts / left) - (Ohms * load / (left * left))) / wanted, 1e-8);
                    found++;
                }
            }
        }

        Assert.True(found > 0);
    }

    [Fact]
    public void At_a_duty_that_was_sampled_the_losses_are_those_of_its_stage()
    {
        var expected = new double[LossModel.KindCount];
        var watts = new double[LossModel.KindCount];
        _up.First.WattsAt(3, 1, Hertz, _up.OhmsAt(0, _up.Places[0]), expected);
        _up.WattsAt(0, _up.Places[0], 3, 1, Hertz, watts);
        Assert.All(Enum.GetValues<LossKind>(), kind => Assert.Equal(expected[(int)kind], watts[(int)kind], 1e-12 * expected.Sum()));
    }

    /// <summary>Charged in a quarter of the period and discharged in the rest a capacitor carries no load.</summary>
    [Fact]
    public void A_stage_that_carries_no_load_is_refused()
    {
        LossModel idle = ModelOf(InductorFed.Behind(SeriesParallel.StepDown(2)).WithDuties(new(1, 4), new(3, 4)));
        ArgumentException thrown = Assert.Throws<ArgumentException>(() => DutyPiece.Of(_ => idle, 0.2, 0.4, Hertz));
        Assert.Equal("stageAtDuty", thrown.ParamName);
        Assert.StartsWith("Expected a stage that carries a load", thrown.Message, StringComparison.Ordinal);
    }

    // equal switches and the winding in the path of the current throughout
    private static LossModel Up(Fraction duty) => ModelOf(InductiveStage.StepUp(duty, 2.2e-6, 0.05, 0.03));

    private static LossModel ModelOf(Converter converter) => LossModel.Of(Sized.Of(converter, capacitor: Sized.BareCapacitor), ModeAnalysis.Of(converter));
}
