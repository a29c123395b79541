using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// A divider by two with a stiff load, by hand: half of the charge passes the capacitor in either phase, so that with the loop of R and the
/// lengths d of the phases R_out = (coth(d1/(2RC)) + coth(d2/(2RC)))/(8fC).
/// </summary>
public sealed class StiffLoadSlopesTests
{
    private const double Farads = 2e-9;
    private const double LoopOhms = 6;
    private const double FrequencyHz = 2e7;

    private static readonly Converter s_half = OperatedConverters.Half(farads: Farads, ohms: LoopOhms / 2).Build();

    // d/dD of coth(DT/(2RC))/(8fC) is -T/(2RC)/sinh² of that, over 8fC
    private static double ByDuty
    {
        get
        {
            double x = 1 / (4 * FrequencyHz * LoopOhms * Farads);
            return -2 * x / (8 * FrequencyHz * Farads * Math.Sinh(x) * Math.Sinh(x));
        }
    }

    [Fact]
    public void The_impedance_changes_with_duties_as_its_modes_say_and_no_state_equation_is_asked()
    {
        ImpedanceSensitivity slopes = new(new SensitivitySolution(Prepared(), 1 / FrequencyHz), s_half, () => throw new InvalidOperationException());
        Assert.Equal([ByDuty, ByDuty], slopes.ByDutyOhms, Closeness.Within(1e-12 * -ByDuty));
        Assert.Equal(FrequencyHz, slopes.FrequencyHz, 1e-12 * FrequencyHz);
    }

    [Fact]
    public void The_two_port_changes_with_duties_as_its_modes_say_and_no_state_equation_is_asked()
    {
        TwoPortSensitivity slopes = new(Prepared(), s_half, 1 / FrequencyHz, () => throw new InvalidOperationException());
        Assert.All(slopes.ByDuty, slope =>
        {
            Assert.Equal(ByDuty, slope.Ohms, 1e-12 * -ByDuty);
            Assert.Equal((0, 0, 0), (slope.Ratio, slope.CurrentRatio, slope.InputSiemens));
        });
    }

    private static PreparedMode Prepared() => SteadyStateModel.Of(ModeAnalysis.Of(s_half, s_half.Modes[0])).Prepared;
}
