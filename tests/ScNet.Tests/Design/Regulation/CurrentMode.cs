using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Holds every output between two input voltages and draws the current it is told to draw.</summary>
internal sealed class CurrentMode(string name, double lowestVolts, double highestVolts, Func<double, double> amperesAt) : RegulatedMode(name)
{
    public override RegulatedPoint Hold(double inputVolts, double outputVolts, double loadAmperes)
    {
        double outputWatts = outputVolts * loadAmperes;
        return inputVolts >= lowestVolts && inputVolts <= highestVolts
            ? new(RegulationOutcome.Held, 1e6, double.NaN, outputWatts, [(amperesAt(inputVolts) * inputVolts) - outputWatts])
            : new(RegulationOutcome.RatioTooLow, 0, double.NaN, outputWatts, []);
    }

    public override string ReasonAt(double inputVolts, double outputVolts, double loadAmperes) => string.Empty;
}
