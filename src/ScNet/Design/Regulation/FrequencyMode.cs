using ScNet.Design.Losses;

namespace ScNet.Design.Regulation;

/// <summary>A mode of a switched-capacitor converter whose frequency regulates.</summary>
/// <remarks>Derivation: docs/theory/regulation.md.</remarks>
internal sealed class FrequencyMode : RegulatedMode
{
    private readonly FrequencyOfImpedance _frequency;
    private readonly double _ratio;
    private readonly double _fastOhms;
    private readonly bool _isFixed;

    public FrequencyMode(LossModel model, Interval<double> frequencyHz)
        : base(NameOf(model))
    {
        Model = model;
        _ratio = Math.Abs(model.Analysis.Ratio.ToDouble());
        _fastOhms = model.Analysis.FastSwitchingLimit.Ohms;
        _isFixed = model.Analysis.SlowSwitchingLimit.OhmsAtOneHertz == 0;
        _frequency = FrequencyOfImpedance.Of(model.Impedance, frequencyHz);
    }

    public override LossModel Model { get; }

    /// <inheritdoc/>
    public override RegulatedPoint Hold(double inputVolts, double outputVolts, double loadAmperes)
    {
        Require(inputVolts, outputVolts, loadAmperes);
        double outputWatts = outputVolts * loadAmperes, ohms = Needed(inputVolts, outputVolts, loadAmperes);
        RegulationOutcome outcome = OutcomeOf(ohms);
        if (outcome is RegulationOutcome.RatioTooLow or RegulationOutcome.ImpedanceTooHigh)
        {
            return new(outcome, outcome == RegulationOutcome.RatioTooLow ? 0 : _frequency.CeilingHz, double.NaN, outputWatts, []);
        }

        Span<double> watts = stackalloc double[LossModel.KindCount];
        double skipped = outcome == RegulationOutcome.HeldBySkipping ? ohms / _frequency.OhmsAtFloor : 1;
        double hertz = outcome == RegulationOutcome.Held ? _frequency.HertzAt(ohms) : _frequency.FloorHz / skipped;

        Model.WattsAt(inputVolts, loadAmperes, hertz, ohms, watts);
        double more = (skipped - 1) * _fastOhms * loadAmperes * loadAmperes; // the current of a cycle that is not left out is larger than the average
        watts[(int)LossKind.Conduction] += more;
        watts[(int)LossKind.ChargeSharing] -= more;
        return new(outcome, hertz, double.NaN, outputWatts, watts, 1 / skipped);
    }

    /// <inheritdoc/>
    public override string ReasonAt(double inputVolts, double outputVolts, double loadAmperes)
    {
        Require(inputVolts, outputVolts, loadAmperes);
        return OutcomeAt(inputVolts, outputVolts, loadAmperes) switch
        {
            RegulationOutcome.RatioTooLow =>
                $"a ratio of {Model.Analysis.Ratio} gives at most {EngineeringNumber.Of(_ratio * inputVolts, "V")} without load, and {EngineeringNumber.Of(outputVolts, "V")} is wanted",
            RegulationOutcome.ImpedanceTooHigh when Needed(inputVolts, outputVolts, loadAmperes) is var ohms =>
                $"needs an output impedance of at most {EngineeringNumber.Of(ohms, "Ω")}, "
                + (_fastOhms >= ohms
                    ? $"the fast limit is {EngineeringNumber.Of(_fastOhms, "Ω")}"
                    : $"at the ceiling of {EngineeringNumber.Of(_frequency.CeilingHz, "Hz")} it is {EngineeringNumber.Of(_frequency.LeastOhms, "Ω")}"),
            _ => string.Empty,
        };
    }

    /// <inheritdoc/>
    internal override (Converter Converter, Mode Mode)? NetworkAt(double duty) => (Model.Sized.Converter, Model.Analysis.Mode);

    /// <inheritdoc/>
    internal override RegulationOutcome OutcomeAt(double inputVolts, double outputVolts, double loadAmperes) => OutcomeOf(Needed(inputVolts, outputVolts, loadAmperes));

    /// <inheritdoc/>
    internal override double LackAt(double inputVolts, double outputVolts, double loadAmperes) =>
        Needed(inputVolts, outputVolts, loadAmperes) is > 0 and var ohms ? _frequency.LeastOhms / ohms : double.PositiveInfinity;

    /// <inheritdoc/>
    internal override double LeastInputWatts(double inputVolts, double outputVolts, double loadAmperes) => _ratio * inputVolts * loadAmperes;

    private RegulationOutcome OutcomeOf(double ohms) =>
        ohms <= 0 ? RegulationOutcome.RatioTooLow
        : ohms < _frequency.LeastOhms ? RegulationOutcome.ImpedanceTooHigh
        : ohms <= _frequency.OhmsAtFloor ? RegulationOutcome.Held
        : _isFixed ? RegulationOutcome.HeldByDropping
        : RegulationOutcome.HeldBySkipping;

    private double Needed(double inputVolts, double outputVolts, double loadAmperes) => ((_ratio * inputVolts) - outputVolts) / loadAmperes;

    private static string NameOf(LossModel model) => model.Analysis.Converter.Modes.Count > 1
        ? $"{model.Analysis.Converter.Name}, {model.Analysis.Mode.Name}" : model.Analysis.Converter.Name;
}
