namespace ScNet.Design.Regulation;

/// <summary>A mode behind a source with a resistance.</summary>
/// <remarks>V = V_oc − R P_in(V)/V, repeated; see docs/theory/regulation.md.</remarks>
internal static class SourceLoad
{
    private const int StepLimit = 1000;
    private const double Settled = 1e-13;

    /// <summary>The point and the current of the source in amperes; null where the output is not held.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="openVolts">The open voltage of the source.</param>
    /// <param name="sourceOhms">Its resistance.</param>
    /// <param name="outputVolts">The output voltage to be held.</param>
    /// <param name="loadAmperes">The load current.</param>
    public static (RegulatedPoint Point, double CellAmperes)? Hold(RegulatedMode mode, double openVolts, double sourceOhms, double outputVolts, double loadAmperes)
    {
        double volts = openVolts;
        for (int step = 0; step < StepLimit; step++)
        {
            RegulatedPoint point = mode.Hold(volts, outputVolts, loadAmperes);
            if (!point.IsHeld)
            {
                return null;
            }

            double amperes = point.InputWatts / volts, next = openVolts - (sourceOhms * amperes);
            if (!(next > 0))
            {
                return null;
            }

            if (Math.Abs(next - volts) <= Settled * openVolts)
            {
                return (point, amperes);
            }

            volts = next;
        }

        return null;
    }
}
