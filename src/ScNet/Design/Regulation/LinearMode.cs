using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Design.Regulation;

/// <summary>A linear regulator: what is left of the voltage is dropped.</summary>
internal sealed class LinearMode(ControlOverhead control) : RegulatedMode("linear regulator")
{
    /// <inheritdoc/>
    public override Quantity? Ratio => Quantity.Exact(Fractions.Fraction.One);

    /// <inheritdoc/>
    public override RegulatedPoint Hold(double inputVolts, double outputVolts, double loadAmperes)
    {
        Require(inputVolts, outputVolts, loadAmperes);
        double outputWatts = outputVolts * loadAmperes;
        if (inputVolts < outputVolts)
        {
            return new(RegulationOutcome.RatioTooLow, 0, double.NaN, outputWatts, []);
        }

        Span<double> watts = stackalloc double[LossModel.KindCount];
        watts.Clear();
        watts[(int)LossKind.LinearDrop] = (inputVolts - outputVolts) * loadAmperes;
        watts[(int)LossKind.Control] = control.FixedWatts;
        return new(RegulationOutcome.HeldByDropping, 0, double.NaN, outputWatts, watts);
    }

    /// <inheritdoc/>
    internal override double LeastInputWatts(double inputVolts, double outputVolts, double loadAmperes) => inputVolts * loadAmperes;

    /// <inheritdoc/>
    public override string ReasonAt(double inputVolts, double outputVolts, double loadAmperes) =>
        Hold(inputVolts, outputVolts, loadAmperes).IsHeld ? string.Empty
            : $"the input of {EngineeringNumber.Of(inputVolts, "V")} is below the {EngineeringNumber.Of(outputVolts, "V")} that is wanted";
}
