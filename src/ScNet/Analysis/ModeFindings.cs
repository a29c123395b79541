using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>Every way in which a mode can fail to be a converter, said in names.</summary>
internal sealed class ModeFindings(Converter converter, Mode mode, PhaseForest[] forests)
{
    private readonly SwitchedNetwork _network = converter.Network;
    private readonly List<Diagnostic> _errors = [];
    private readonly List<Diagnostic> _warnings = [];

    /// <summary>Errors first, then warnings.</summary>
    public IReadOnlyList<Diagnostic> All => _errors.Count + _warnings.Count == 0 ? [] : [.. _errors, .. _warnings];

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

    /// <summary>"the closed switch s1" or "the closed switches s1, s2".</summary>
    public static string ClosedSwitches(IReadOnlyCollection<string> names) =>
        (names.Count == 1 ? "the closed switch " : "the closed switches ") + string.Join(", ", names);

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
        foreach ((int phase, _) in loops.Interruptions)
        {
            Error(
                DiagnosticCodes.LoadInterrupted,
                $"In phase {Label(phase)} the load current has no path: no chain of closed switches and capacitors leads from the output {Quoted.Name(converter.OutputNode)} to '{Converter.ReferenceNode}' or to the input. Put a capacitor from the output to '{Converter.ReferenceNode}', or take the load as stiff.",
                [],
                phase);
        }

        return _errors.Count == 0;
    }

    /// <summary>Loops that contradict each other.</summary>
    public bool CheckConflicts<T>(LoopSolution<T> solution, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        if (solution.HasCirculations && solution.Conflicts().ToArray() is { Length: > 0 } conflicts)
        {
            _errors.AddRange(new ConflictReport(converter, forests, loops).Report(conflicts));
        }

        return _errors.Count == 0;
    }

    /// <summary>An output that the input cannot charge, or only at the cost of some capacitor's balance.</summary>
    public bool CheckOutput<T>(LoopSolution<T> solution, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        if (solution.IsOutputFixed)
        {
            return true;
        }

        if (!loops.Reach(_network.OutputBranch)[_network.InputBranch])
        {
            ReportNeverCharged(loops.Reach(_network.OutputBranch));
            return false;
        }

        // By Tellegen's theorem charge to the output = - Σ movement · net charge, so it leaves some on a mover.
        Rational<T>[] movement = solution.Movement(_network.OutputBranch);
        string[] movers = [.. converter.Capacitors.Where((_, i) => !movement[i].IsZero).Select(c => c.Name)];
        Error(
            DiagnosticCodes.CapacitorUnbalanced,
            $"No flow delivers charge to the output {Quoted.Name(converter.OutputNode)} and leaves every capacitor balanced over the period: it always leaves a net charge on {(movers.Length == 1 ? string.Empty : "one of the ")}{LoopDescriptions.List(movers)}. Close switches, in this or another phase, that lead this charge back.",
            movers);
        return false;
    }

    /// <summary>An output that is forced to zero.</summary>
    public bool CheckRatio<T>(Rational<T>[] voltages, LoopSolution<T> solution, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        if (!voltages[_network.OutputBranch].IsZero)
        {
            return true;
        }

        Rational<T>[] charges = solution.LoopCharges();
        int[] members = [.. Enumerable.Range(0, loops.Count).Where(l => !charges[l].IsZero)];
        LoopDescriptions descriptions = new(converter, forests, loops);
        string average = _network.Load == LoadKind.Current ? " on average" : string.Empty;
        Error(
            DiagnosticCodes.ZeroRatio,
            $"These loops together hold the output {Quoted.Name(converter.OutputNode)} at zero volts{average}, whatever the input is: {descriptions.Demands(members)}. Change the switches of one of them.",
            descriptions.Elements(members));
        return false;
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
                    $"Capacitor {Quoted.Name(name)} is in no loop in any phase: it carries no charge and nothing fixes its voltage. Leave it out, or close switches on both its plates in some phase.",
                    [name]);
            }
            else if (Moves(free, i))
            {
                List<Rational<T>[]> own = free.FindAll(movement => !movement[i].IsZero);
                string[] others = [.. converter.Capacitors.Where((_, k) => k != i && Moves(own, k)).Select(c => c.Name)];
                string together = others.Length > 0 ? $"it can shift together with that of {LoopDescriptions.List(others)}, and every loop still closes" : "every loop closes whatever it is";
                Warning(
                    DiagnosticCodes.CapacitorVoltageUndetermined,
                    $"Nothing fixes the voltage of capacitor {Quoted.Name(name)}: {together}. Put it, in some phase, into a loop of known voltages.",
                    [name, .. others]);
            }
        }
    }

    private void ReportNeverCharged(bool[] reach)
    {
        string[] companions = [.. converter.Capacitors.Where((_, i) => reach[i]).Select(c => c.Name)];
        string reason = companions.Length == 0
            ? "the output is in no loop in any phase"
            : $"in every phase the output is in loops with {LoopDescriptions.List(companions)} only, which the input never charges";
        Error(
            DiagnosticCodes.OutputNeverCharged,
            $"No charge gets from the input {Quoted.Name(converter.InputNode)} to the output {Quoted.Name(converter.OutputNode)}, at once or by way of capacitors: {reason}. Close switches that connect them.",
            companions);
    }

    private void CheckShort(int phase, int node, string code, string port, string name)
    {
        PhaseForest forest = forests[phase];
        if (forest.Group[node] != forest.Group[SwitchedNetwork.Reference])
        {
            return;
        }

        PhaseGraph graph = PhaseGraph.Of(converter, mode, phase + 1, forest);
        graph.TryFindClosedPath(name, Converter.ReferenceNode, out IReadOnlyList<Switch> chain);
        string[] path = [.. chain.Select(s => s.Name)];
        bool isOne = path.Length == 1;
        Error(
            code,
            $"In phase {Label(phase)} {ClosedSwitches(path)} connect{(isOne ? "s" : string.Empty)} the {port} {Quoted.Name(name)} to '{Converter.ReferenceNode}'. Open {(isOne ? "it" : "one of them")} in that phase.",
            path,
            phase);
    }

    private string Label(int phase) => LoopDescriptions.Label(converter, phase);

    private void Error(string code, string message, string[] elements, int? phase = null) =>
        _errors.Add(new Diagnostic(DiagnosticSeverity.Error, code, message, elements, phase + 1));

    private void Warning(string code, string message, string[] elements) =>
        _warnings.Add(new Diagnostic(DiagnosticSeverity.Warning, code, message, elements));
}
