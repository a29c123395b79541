using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>Why further outputs can carry no current in the averages of a mode, said in names.</summary>
internal sealed class OutputFindings(ModeAnalysis analysis)
{
    private readonly Converter _converter = analysis.Converter;
    private readonly List<Diagnostic> _warnings = [];

    public IReadOnlyList<Diagnostic> Diagnostics => [.. _warnings];

    /// <summary>Finds outputs without a flow, and warns of them.</summary>
    /// <param name="equations">The equations with the outputs as ports.</param>
    /// <param name="without">Their positions.</param>
    /// <returns>Whether there are some.</returns>
    public bool Check<T>(OutputEquations<T> equations, out int[] without)
        where T : struct, IBinaryInteger<T>
    {
        // what carries the main output's current needs none of the further ones, so that no other branch is interrupted
        without = [.. equations.Loops.Interruptions.Select(i =>
        {
            int output = equations.Outputs[i.Branch - equations.Branch(1)];
            WarnOfInterruption(output, i.Phase);
            return output;
        }).Distinct()];
        if (without.Length > 0)
        {
            return true;
        }

        without = [.. equations.Outputs.Where((_, k) => !equations.Solution.IsFixed(equations.Branch(k + 1)))];
        foreach (int output in without)
        {
            WarnOfImbalance(output, equations.Solution.Movement(equations.Branch(equations.Outputs.IndexOf(output) + 1)));
        }

        if (without.Length == 0 && analysis.CarriesLoad && !equations.Solution.IsOutputFixed)
        {
            // where inductors alone reach an output it ties their currents, and so what the main output may draw: the first that does, with those before it
            without = [equations.Outputs.Where((_, k) => !new OutputEquations<T>(analysis, equations.Outputs[..(k + 1)]).Solution.IsOutputFixed).First()];
            Array.ForEach(without, output => WarnOfInterruption(output, null));
        }

        return without.Length > 0;
    }

    private void WarnOfInterruption(int output, int? phase)
    {
        FurtherOutput own = _converter.FurtherOutputs[output];
        string where = phase is { } p ? $"In phase {LoopDescriptions.Label(_converter, p)} the" : "The";
        Warn(
            DiagnosticCodes.LoadInterrupted,
            $"{where} current of the further output {Quoted.Name(own.Name)} has no path: no chain of closed switches and capacitors leads from {Quoted.Name(own.Node)} to {Quoted.Name(own.ReturnNode)}. Its ratio and limits are left out; put a capacitor across it.",
            [own.Name],
            phase);
    }

    private void WarnOfImbalance<T>(int output, Rational<T>[] movement)
        where T : struct, IBinaryInteger<T>
    {
        FurtherOutput own = _converter.FurtherOutputs[output];
        string[] movers = [.. _converter.Capacitors.Where((_, i) => !movement[i].IsZero).Select(c => c.Name)];
        string left = movers.Length == 0 ? "the input" : $"{LoopDescriptions.List(movers)} as they were";
        Warn(
            DiagnosticCodes.CapacitorUnbalanced,
            movers.Length == 0
                ? $"No charge reaches the further output {Quoted.Name(own.Name)} over a period. Its ratio and limits are left out; connect it to {left}."
                : $"No flow delivers charge to the further output {Quoted.Name(own.Name)} and leaves {left} over the period. Its ratio and limits are left out; close switches that lead the charge back.",
            [own.Name, .. movers],
            null);
    }

    private void Warn(string code, string message, string[] elements, int? phase) =>
        _warnings.Add(new Diagnostic(DiagnosticSeverity.Warning, code, message, elements, phase + 1));
}
