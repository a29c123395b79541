using System.Numerics;
using ScNet.Exact;
using ScNet.Graphs;

namespace ScNet.Analysis;

/// <summary>Every way in which a mode can fail to be a converter, said in names.</summary>
internal sealed class ModeFindings(Converter converter, PhaseForest[] forests)
{
    private readonly SwitchedNetwork _network = converter.Network;
    private readonly List<Diagnostic> _errors = [];
    private readonly List<Diagnostic> _warnings = [];

    /// <summary>Errors first, then warnings.</summary>
    public IReadOnlyList<Diagnostic> All => _warnings.Count == 0 ? _errors : [.. _errors, .. _warnings];

    /// <summary>Whether a branch moves in some of the given movements.</summary>
    public static bool Moves<T>(List<Rational<T>[]> movements, int branch)
        where T : struct, IBinaryInteger<T>
    {
        foreach (Rational<T>[] movement in movements)
        {
            if (!movement[branch].IsZero)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Input, or a stiff output, tied to the reference by closed switches.</summary>
    public bool CheckShorts()
    {
        for (int phase = 0; phase < forests.Length; phase++)
        {
            CheckShort(phase, _network.Input, DiagnosticCodes.InputShorted, "input", converter.InputNode);
            if (_network.Load == LoadKind.Stiff)
            {
                CheckShort(phase, _network.Output, DiagnosticCodes.OutputShorted, "output", converter.OutputNode);
            }
        }

        return _errors.Count == 0;
    }

    /// <summary>A load current without a path.</summary>
    public bool CheckLoad(LoopSet loops)
    {
        foreach (int phase in loops.InterruptedPhases)
        {
            Error(
                DiagnosticCodes.LoadInterrupted,
                $"In phase {Label(phase)} nothing connects the output '{converter.OutputNode}' to the rest, so its load current has no path. Put a capacitor on the output, or take the load as stiff.",
                [],
                phase);
        }

        return _errors.Count == 0;
    }

    /// <summary>Loops that demand different voltages.</summary>
    public bool CheckConflicts<T>(LoopSolution<T> solution, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        foreach (Rational<T>[] conflict in solution.Conflicts())
        {
            ReportConflict(loops, [.. Enumerable.Range(0, loops.Count).Where(l => !conflict[l].IsZero)]);
        }

        return _errors.Count == 0;
    }

    /// <summary>An output that nothing charges, or that is charged through capacitors in one direction only.</summary>
    public bool CheckOutput<T>(LoopSolution<T> solution)
        where T : struct, IBinaryInteger<T>
    {
        if (solution.IsOutputFixed)
        {
            return true;
        }

        Rational<T>[] movement = solution.Movement(_network.OutputBranch);
        string[] movers = [.. converter.Capacitors.Where((_, i) => !movement[i].IsZero).Select(c => c.Name)];
        if (movers.Length == 0)
        {
            Error(
                DiagnosticCodes.OutputNeverCharged,
                $"The output '{converter.OutputNode}' never receives charge: in no phase is it part of a loop with the input or a capacitor. Close switches that connect it.",
                []);
        }
        else
        {
            Error(
                DiagnosticCodes.CapacitorUnbalanced,
                $"Charge to the output '{converter.OutputNode}' would pass {List(movers)} in one direction only, so {(movers.Length == 1 ? "it never reaches" : "they never reach")} balance. Add a phase in which that charge is replaced.",
                movers);
        }

        return false;
    }

    /// <summary>An output that is forced to zero.</summary>
    public bool CheckRatio(bool isZero)
    {
        if (isZero)
        {
            Error(
                DiagnosticCodes.ZeroRatio,
                $"The network holds the output '{converter.OutputNode}' at zero volts whatever the input is. Connect a capacitor that the input charges.",
                []);
        }

        return !isZero;
    }

    /// <summary>Capacitors that do nothing, or whose voltage nothing fixes.</summary>
    public void CheckCapacitors<T>(bool[] unconnected, List<Rational<T>[]> free)
        where T : struct, IBinaryInteger<T>
    {
        for (int i = 0; i < unconnected.Length; i++)
        {
            string name = converter.Capacitors[i].Name;
            if (unconnected[i])
            {
                Warning(
                    DiagnosticCodes.CapacitorUnconnected,
                    $"Capacitor '{name}' is in no loop in any phase: it carries no charge and nothing fixes its voltage. Leave it so, or close switches on both its plates.",
                    [name]);
            }
            else if (Moves(free, i))
            {
                Warning(
                    DiagnosticCodes.CapacitorVoltageUndetermined,
                    $"Nothing fixes the voltage of capacitor '{name}': it shares a voltage with others in every phase. Tie one of its plates to a known node in some phase.",
                    [name]);
            }
        }
    }

    private void CheckShort(int phase, int node, string code, string port, string name)
    {
        PhaseForest forest = forests[phase];
        if (forest.Group[node] != forest.Group[SwitchedNetwork.Reference])
        {
            return;
        }

        List<string> path = [];
        for (int at = node; forest.ParentSwitch[at] is var via and >= 0; at = forest.ParentNode[at])
        {
            path.Add(converter.Switches[via].Name);
        }

        Error(code, $"In phase {Label(phase)} the closed switches {string.Join(" – ", path)} connect the {port} '{name}' to '{Converter.ReferenceNode}'. Open one of them.", [.. path], phase);
    }

    private void ReportConflict(LoopSet loops, int[] members)
    {
        int shorted = Array.FindIndex(members, l => loops.Branches(l).Length == 1 && loops.Branches(l)[0] < _network.CapacitorCount);
        string demands = string.Join("; ", members.Select(l => $"phase {Label(loops.Phase(l))}: {Describe(loops, l)}"));
        string[] capacitors = [.. members.SelectMany(l => loops.Branches(l).ToArray()).Where(b => b < _network.CapacitorCount)
            .Distinct().Order().Select(b => converter.Capacitors[b].Name)];
        if (shorted >= 0)
        {
            int loop = members[shorted];
            string name = converter.Capacitors[loops.Branches(loop)[0]].Name;
            Error(
                DiagnosticCodes.CapacitorShorted,
                $"In phase {Label(loops.Phase(loop))} closed switches short capacitor '{name}', but other loops require it to hold a voltage ({demands}). Open a switch across it.",
                [name, .. capacitors.Where(c => c != name)],
                loops.Phase(loop));
        }
        else
        {
            int[] phases = [.. members.Select(loops.Phase).Distinct()];
            Error(
                DiagnosticCodes.VoltageConflict,
                $"These loops demand different voltages{(capacitors.Length > 0 ? " of " + List(capacitors) : string.Empty)}: {demands}. Change the switches of one of them.",
                capacitors,
                phases.Length == 1 ? phases[0] : null);
        }
    }

    // "vin – fly – vout": the sources by their node, the capacitors by name, in the order of the loop.
    private string Describe(LoopSet loops, int loop)
    {
        List<string> names = [];
        foreach (int branch in loops.Branches(loop))
        {
            names.Add(branch == _network.InputBranch ? converter.InputNode
                : branch == _network.OutputBranch ? converter.OutputNode
                : converter.Capacitors[branch].Name);
        }

        return "loop " + string.Join(" – ", names);
    }

    private string Label(int phase) => converter.Phases[phase].Name == $"{phase + 1}"
        ? $"{phase + 1}"
        : $"{phase + 1} ({converter.Phases[phase].Name})";

    private static string List(string[] names) => names.Length == 1
        ? $"capacitor '{names[0]}'"
        : "capacitors " + string.Join(", ", names.Select(n => $"'{n}'"));

    private void Error(string code, string message, string[] elements, int? phase = null) =>
        _errors.Add(new Diagnostic(DiagnosticSeverity.Error, code, message, elements, phase + 1));

    private void Warning(string code, string message, string[] elements) =>
        _warnings.Add(new Diagnostic(DiagnosticSeverity.Warning, code, message, elements));
}
