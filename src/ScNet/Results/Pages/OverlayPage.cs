using System.Globalization;
using ScNet.Analysis;
using ScNet.Reconfiguration;

namespace ScNet.Results.Pages;

/// <summary>One set of switches for several ratios, as a person reads it.</summary>
public static class OverlayPage
{
    /// <summary>The page of an overlay.</summary>
    /// <param name="overlay">The networks laid over one another.</param>
    public static Page Of(Overlay overlay)
    {
        ArgumentNullException.ThrowIfNull(overlay);
        Converter converter = overlay.Converter;
        ModeOutcome[] modes = [.. ConverterAnalysis.Of(converter).Modes];
        return new Page(
            $"{converter.Name}: {UnitText.Count(modes.Length, "network", "networks")} on {UnitText.Count(converter.Capacitors.Count, "capacitor", "capacitors")}",
            [
                new PageRemarks([$"{UnitText.Count(overlay.SwitchCount, "switch", "switches")} instead of {overlay.SeparateSwitchCount.ToString(CultureInfo.InvariantCulture)}: {(overlay.IsProvedLeast ? "proved least" : "the least that was found, not proved least")}"]),
                new PageTable(
                    "Networks, which are modes of the converter",
                    [new("mode", IsFigure: false, "mode"), new("ratio", IsFigure: true, "ratio"), new("switches", IsFigure: true, "closedSwitchCount", "Switches that close in some phase")],
                    modes.Select(m => (IEnumerable<PageCell>)
                    [
                        m.Mode.Name,
                        new(m.Analysis?.Ratio.ToString() ?? "?", m.Analysis?.Ratio.ToDouble()),
                        new(m.Mode.ClosedPhases.Count(p => p.Count > 0).ToString(CultureInfo.InvariantCulture), m.Mode.ClosedPhases.Count(p => p.Count > 0)),
                    ])),
                new PageTable(
                    "Switches: their nodes, and the phases in which each is closed",
                    [new("switch", IsFigure: false, "on"), new("first", IsFigure: false), new("second", IsFigure: false), .. modes.Select(m => new PageColumn(m.Mode.Name, IsFigure: false))],
                    converter.Switches.Select((s, i) => (IEnumerable<PageCell>)
                        [s.Name, s.FirstNode, s.SecondNode, .. modes.Select(m => (PageCell)(m.Mode.ClosedPhases[i].Count > 0 ? string.Join(", ", m.Mode.ClosedPhases[i]) : "-"))])),
            ]);
    }
}
