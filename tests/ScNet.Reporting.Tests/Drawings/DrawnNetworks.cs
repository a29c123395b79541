using ScNet.Analysis;
using ScNet.Reporting.Drawings;

namespace ScNet.Reporting.Tests.Drawings;

/// <summary>Every drawing of a converter as geometry.</summary>
internal static class DrawnNetworks
{
    /// <summary>Of a converter with more modes than this, every few are drawn.</summary>
    public const int ManyModes = 16;

    /// <summary>The whole converter, then every phase of its modes, with the timing of each mode beside the converter where they are few.</summary>
    public static IEnumerable<(string Name, Sheet Sheet)> Of(Converter converter) => Of(converter, ManyModes);

    /// <summary>The faults of every drawing of a converter, by its name; of every few modes where they are more than some.</summary>
    public static IReadOnlyList<string> Faults(Converter converter, int manyModes = ManyModes) =>
        [.. Of(converter, manyModes).SelectMany(d => SheetFaults.Of(d.Sheet).Select(f => $"{d.Name}: {f}"))];

    private static IEnumerable<(string Name, Sheet Sheet)> Of(Converter converter, int manyModes)
    {
        bool isMany = converter.Modes.Count > manyModes;
        foreach (Mode mode in converter.Modes.Where(m => m.Index % (1 + (converter.Modes.Count / manyModes)) == 0))
        {
            if (!isMany || mode.Index == 0)
            {
                yield return ($"{converter.Name}, mode {mode}", NetworkDrawing.SheetOf(converter, mode, ConverterCircuit.Of(converter, mode)));
            }

            if (ModeAnalysis.Try(converter, mode).Analysis is { } analysis)
            {
                foreach (Phase phase in converter.Phases)
                {
                    PhaseGraph graph = PhaseGraph.Of(analysis, phase.Number);
                    yield return ($"{converter.Name}, mode {mode}, phase {phase}", NetworkDrawing.OfPhase(analysis, graph, PhaseCircuit.Of(analysis, graph)));
                }
            }
        }
    }
}
