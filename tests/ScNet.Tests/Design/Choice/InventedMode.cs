using ScNet.Design.Losses;
using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Choice;

/// <summary>A mode whose points and network are told.</summary>
internal sealed class InventedMode(string name, Func<double, RegulatedPoint> pointOf, Converter? network = null, Func<double, double>? lackOf = null, Quantity? ratio = null)
    : RegulatedMode(name)
{
    public override Quantity? Ratio => ratio;

    /// <summary>What holds a load current without any loss.</summary>
    public static RegulatedPoint Held(double hertz, double share, double outputWatts, double duty = double.NaN) => new(
        share < 1 ? RegulationOutcome.HeldBySkipping : RegulationOutcome.Held, hertz, duty, outputWatts, new double[LossModel.KindCount], share);

    public static RegulatedPoint Lost => new(RegulationOutcome.ImpedanceTooHigh, 1e6, double.NaN, 1, new double[LossModel.KindCount]);

    public override RegulatedPoint Hold(double inputVolts, double outputVolts, double loadAmperes) => pointOf(loadAmperes);

    public override string ReasonAt(double inputVolts, double outputVolts, double loadAmperes) => $"{Name} is too weak";

    internal override double LackAt(double inputVolts, double outputVolts, double loadAmperes) => lackOf?.Invoke(loadAmperes) ?? base.LackAt(inputVolts, outputVolts, loadAmperes);

    internal override (Converter Converter, Mode Mode)? NetworkAt(double duty) => network is null ? null : (network, network.Modes[0]);
}
