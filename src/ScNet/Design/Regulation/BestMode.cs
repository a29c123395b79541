namespace ScNet.Design.Regulation;

/// <summary>The mode that takes the least current from a source.</summary>
/// <param name="Mode">Its position.</param>
/// <param name="Point">What it does.</param>
/// <param name="CellAmperes">The current of the source in amperes.</param>
internal readonly record struct BestMode(int Mode, RegulatedPoint Point, double CellAmperes)
{
    /// <summary>Finds it, the first of equals; null where no mode holds the output.</summary>
    /// <param name="modes">The modes.</param>
    /// <param name="openVolts">The open voltage of the source.</param>
    /// <param name="sourceOhms">Its resistance.</param>
    /// <param name="outputVolts">The output voltage to be held.</param>
    /// <param name="loadAmperes">The load current.</param>
    public static BestMode? Of(IReadOnlyList<RegulatedMode> modes, double openVolts, double sourceOhms, double outputVolts, double loadAmperes)
    {
        BestMode? best = null;
        for (int m = 0; m < modes.Count; m++)
        {
            if (SourceLoad.Hold(modes[m], openVolts, sourceOhms, outputVolts, loadAmperes) is { } held && !(held.CellAmperes >= best?.CellAmperes))
            {
                best = new(m, held.Point, held.CellAmperes);
            }
        }

        return best;
    }
}
