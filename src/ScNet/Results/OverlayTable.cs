using ScNet.Analysis;
using ScNet.Reconfiguration;

namespace ScNet.Results;

/// <summary>Networks laid over one another as a document for other programs: a row per network, which is a mode.</summary>
internal static class OverlayTable
{
    private static readonly Figure<ModeOutcome>[] s_figures =
    [
        new("converter", m => m.Converter.Name),
        new("mode", m => m.Mode.Name),
        new("status", m => m.HasResult ? "ok" : "error"),
        new("ratio", m => m.Analysis?.Ratio),
        new("closedSwitchCount", m => m.Mode.ClosedPhases.Count(p => p.Count > 0)),
        new("on", m => m.Mode.ClosedPhases.Select((phases, s) => new KeyValuePair<string, object?>(m.Converter.Switches[s].Name, phases)).ToArray(), HasColumn: false),
    ];

    /// <summary>The table.</summary>
    public static ResultTable Of(Overlay overlay)
    {
        ArgumentNullException.ThrowIfNull(overlay);
        return ResultTable.OfAny(
            [new("switchCount", overlay.SwitchCount), new("separateSwitchCount", overlay.SeparateSwitchCount), new("capacitorCount", overlay.Converter.Capacitors.Count)],
            s_figures,
            ConverterAnalysis.Of(overlay.Converter).Modes);
    }
}
