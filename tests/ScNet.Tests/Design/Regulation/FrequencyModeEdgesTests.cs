using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>A halving mode at the edges of what its frequency holds: of four times a voltage a half less the voltage is the voltage, at 1 A as many ohms, to the last digit.</summary>
public sealed class FrequencyModeEdgesTests
{
    private readonly LossModel _model = ModelOf(SeriesParallel.StepDown(2, 2e-9, 3), 0);

    private readonly Interval<double> _hertz = new(1e5, 1e8);

    [Fact]
    public void The_least_impedance_of_all_frequencies_is_held()
    {
        double least = FrequencyOfImpedance.Of(_model.Impedance, _hertz).LeastOhms;
        Assert.Equal(RegulationOutcome.Held, Hold(4 * least, least).Outcome);
        Assert.Equal(RegulationOutcome.ImpedanceTooHigh, Hold(4 * least, least * (1 + 1e-12)).Outcome);
    }

    [Fact]
    public void The_impedance_at_the_floor_is_held_without_leaving_cycles_out()
    {
        double most = FrequencyOfImpedance.Of(_model.Impedance, _hertz).OhmsAtFloor;
        RegulatedPoint point = Hold(4 * most, most);
        Assert.Equal((RegulationOutcome.Held, 1), (point.Outcome, point.RunningShare));
        Assert.Equal(RegulationOutcome.HeldBySkipping, Hold(4 * most, most * (1 - 1e-12)).Outcome);
    }

    [Fact]
    public void What_is_not_held_runs_at_the_ceiling_where_a_frequency_lacks_and_at_none_where_the_ratio_does()
    {
        Assert.Equal((RegulationOutcome.RatioTooLow, 0), Told(Hold(2, 1.1)));
        Assert.Equal((RegulationOutcome.ImpedanceTooHigh, 1e8), Told(Hold(2, 0.999)));

        static (RegulationOutcome Outcome, double Hertz) Told(RegulatedPoint point) => (point.Outcome, point.FrequencyHz);
    }

    [Fact]
    public void The_mode_is_named_where_the_converter_has_several()
    {
        Assert.Equal(_model.Sized.Converter.Name, RegulatedModes.OfFrequency(_model, _hertz).Name);
        Converter several = RecursiveCascade.Reconfigurable(2);
        Assert.Equal($"{several.Name}, {several.Modes[1].Name}", RegulatedModes.OfFrequency(ModelOf(several, 1), _hertz).Name);
    }

    private RegulatedPoint Hold(double inputVolts, double outputVolts) => RegulatedModes.OfFrequency(_model, _hertz).Hold(inputVolts, outputVolts, 1);

    private static LossModel ModelOf(Converter converter, int mode) => LossModel.Of(Sized.Of(converter), ConverterAnalysis.Of(converter).Modes[converter.Modes[mode].Name].Require());
}
