using ScNet.Analysis;
using ScNet.Derivations;
using ScNet.Results;

namespace ScNet.Fuzzing.Targets;

/// <summary>Netlist documents of small converters, analysed: there is an outcome for each mode, whose document reads as the same snapshot.</summary>
internal static class AnalysisTarget
{
    private const int MaximumElements = 14, MaximumPhases = 4, MaximumModes = 3;

    private static readonly double[] s_frequenciesHz = [1e3];

    public static void Try(byte[] bytes)
    {
        string text = TextInput.Of(bytes);
        if (NetlistTarget.Read(text) is not { } converter || !IsSmall(converter))
        {
            return;
        }

        ConverterAnalysis analysis = ConverterAnalysis.Of(converter);
        foreach (ModeOutcome mode in analysis.Modes)
        {
            Property.Holds(mode.HasResult || mode.Diagnostics.Any(d => d.Severity == DiagnosticSeverity.Error), $"a result or an error of mode {mode.Mode.Name}");
        }

        AnalysisSnapshot taken = AnalysisSnapshot.Of(analysis);
        AnalysisSnapshot read = AnalysisSnapshot.Parse(taken.ToJson());
        Property.Same(taken.ToString(), read.ToString(), "the snapshot that was taken and the one that was read");
        Property.Holds(taken.Equals(read), "equal snapshots, taken and read");
        _ = AnalysisSnapshot.Parse(AnalysisDocument.Of(analysis).WithOutputImpedance(s_frequenciesHz).ToJson());
    }

    private static bool IsSmall(Converter converter) =>
        converter.Capacitors.Count + converter.Switches.Count + converter.Inductors.Count + converter.Parasitics.Count + converter.FurtherOutputs.Count <= MaximumElements
        && converter.Phases.Count <= MaximumPhases && converter.Modes.Count <= MaximumModes;
}
