using System.Numerics;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>Every way in which a mode can fail to be a converter, said in names.</summary>
internal sealed class ModeFindings(Converter converter, Mode mode, PhaseForest[] forests)
{
    // each takes 16 bytes, so that they are half a gibibyte
    private const long MostOpenEntries = 1 << 25;

    private readonly SwitchedNetwork _network = converter.Network;
    private List<Diagnostic>? _errors;
    private List<Diagnostic>? _warnings;

    /// <summary>Errors first, then warnings.</summary>
    public IReadOnlyList<Diagnostic> All => _errors is null && _warnings is null ? [] : [.. _errors ?? [], .. _warnings ?? []];

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

        return _errors is null;
    }

    /// <summary>A load current or inductor without a path.</summary>
    public bool CheckHeldCurrents(LoopSet loops)
    {
        foreach (IGrouping<int, int> interrupted in loops.Interruptions.GroupBy(i => i.Branch, i => i.Phase))
        {
            int[] phases = [.. interrupted.Distinct().Order()];
            string inPhases = phases.Length == 1 ? $"In phase {Label(phases[0])}" : $"In phases {string.Join(", ", phases.Select(Label))}", them = phases.Length == 1 ? "it" : "them";
            if (interrupted.Key >= _network.FirstInductorBranch)
            {
                Inductor inductor = converter.Inductors[interrupted.Key - _network.FirstInductorBranch];
                Error(
                    DiagnosticCodes.InductorInterrupted,
                    $"{inPhases} the current of inductor {Quoted.Name(inductor.Name)} has no path: no chain of closed switches and capacitors leads from {Quoted.Name(inductor.FirstNode)} to {Quoted.Name(inductor.SecondNode)} in {them}. Close a switch that carries the current on, or let the phase before end when the current is zero (until_zero); operating points also take the body diodes that are stated (diode_volts).",
                    [inductor.Name],
                    phases[0]);
                continue;
            }

            Error(
                DiagnosticCodes.LoadInterrupted,
                $"{inPhases} the load current has no path: no chain of closed switches and capacitors leads from the output {Quoted.Name(converter.OutputNode)} to '{Converter.ReferenceNode}' or to the input. Put a capacitor from the output to '{Converter.ReferenceNode}', or take the load as stiff.",
                [],
                phases[0]);
        }

        return _errors is null;
    }

    /// <summary>More open voltages than there is room to tell how each of them moves the others.</summary>
    /// <param name="free">How many capacitors have an open voltage.</param>
    public bool CheckRoom(int free)
    {
        if ((long)free * _network.BranchCount > MostOpenEntries)
        {
            Error(
                DiagnosticCodes.VoltagesTooOpen,
                FormattableString.Invariant($"Nothing fixes the voltages of {free} of {_network.CapacitorCount} capacitors, more than can be told apart: {MostOpenEntries} pairs of an open voltage and an element at most. Join capacitors that lie in series into one each, or connect the nodes between them."),
                []);
        }

        return _errors is null;
    }

    /// <summary>Loops that contradict each other.</summary>
    public bool CheckConflicts<T>(LoopSolution<T> solution, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        if (solution.HasCirculations && solution.Conflicts().ToArray() is { Length: > 0 } conflicts)
        {
            (_errors ??= []).AddRange(new ConflictReport(converter, forests, loops).Report(conflicts));
        }

        return _errors is null;
    }

    /// <summary>An output that the equations leave open: the input cannot charge it, or only at the cost of some capacitor's balance.</summary>
    /// <param name="solution">The equations of the loops.</param>
    /// <param name="loops">The loops.</param>
    /// <param name="space">What can move.</param>
    /// <param name="free">What of it can move with every inductor's voltage as it is.</param>
    public bool CheckOutput<T>(LoopSolution<T> solution, LoopSet loops, VoltageSpace<T> space, VoltageSpace<T> free)
        where T : struct, IBinaryInteger<T>
    {
        if (!loops.Reach(_network.OutputBranch)[_network.InputBranch])
        {
            ReportNeverCharged(loops.Reach(_network.OutputBranch));
            return false;
        }

        // By Tellegen's theorem charge to the output = - Σ movement · net charge, so it leaves some on a mover.
        Rational<T>[] movement = free.Movements.Find(m => !m[_network.OutputBranch].IsZero) ?? solution.Movement(_network.OutputBranch);
        string[] movers = [.. converter.Capacitors.Where((_, i) => !movement[i].IsZero).Select(c => c.Name)];
        if (!free.Moves(_network.OutputBranch))
        {
            // those that move with the output, and those that move with one of them
            List<Rational<T>[]> with = space.Movements.FindAll(m => !m[_network.OutputBranch].IsZero);
            with = space.Movements.FindAll(m => Enumerable.Range(0, _network.FirstGivenBranch).Any(b => !m[b].IsZero && Moves(with, b)));
            movers = [.. converter.Capacitors.Where((_, i) => Moves(with, i)).Select(c => c.Name)];
            string output = Quoted.Name(converter.OutputNode);
            Warning(
                DiagnosticCodes.LoadMovesVoltages,
                movers.Length == 0
                    ? $"At constant inductor currents no charge reaches the output {output} on average: what some phases bring, others take, so that there is no charge flow and no limit. Ask for the periodic solution at a frequency, or let inductors feed the output for longer than they draw from it."
                    : $"At constant inductor currents no charge reaches the output {output} that leaves every capacitor balanced: some stays on {LoopDescriptions.List(movers)}. The voltages move with the load until ripple makes up for it, so that there is no charge flow and no limit; ask for the periodic solution at a frequency, or change duties so that charge and discharge of each capacitor last equally long.",
                movers);
            return true;
        }

        Error(
            DiagnosticCodes.CapacitorUnbalanced,
            $"No flow delivers charge to the output {Quoted.Name(converter.OutputNode)} and leaves every capacitor balanced over the period: it always leaves a net charge on {(movers.Length == 1 ? string.Empty : "one of the ")}{LoopDescriptions.List(movers)}. Close switches, in this or another phase, that lead this charge back.",
            movers);
        return false;
    }

    /// <summary>Capacitors that loops hold at another voltage than their controllers.</summary>
    public bool CheckControl<T>((int Capacitor, Fraction Voltage)[] controlled, VoltageSpace<T> space, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        (int Capacitor, Fraction Voltage)[][] wrong =
            [.. controlled.Where(c => !space.Moves(c.Capacitor) && !space.Origin[c.Capacitor].Equals(Rational<T>.Of(c.Voltage))).Select(c => new[] { c })];
        if (wrong.Length == 0)
        {
            wrong = space.Where(VoltageSettlement<T>.Control(space, controlled)) is null ? [controlled] : [];
        }

        LoopDescriptions descriptions = new(converter, forests, loops);
        foreach ((int Capacitor, Fraction Voltage)[] set in wrong)
        {
            int[] members = LoopSolution<T>.Contradiction(_network, loops, set);
            string[] names = [.. set.Select(c => converter.Capacitors[c.Capacitor].Name)];
            string[] elements = descriptions.Elements(members);
            string held = string.Join(", ", set.Select(c => $"{Quoted.Name(converter.Capacitors[c.Capacitor].Name)} at {Quantity.Exact(c.Voltage)}"));
            string own = set.Length == 1 ? $", which come to {space.Origin[set[0].Capacitor].ToQuantity()}" : string.Empty;
            Error(
                DiagnosticCodes.ControlledContradiction,
                $"A controller cannot hold {held} of the input against these loops{own}: {descriptions.Demands(members)}. Leave {(set.Length == 1 ? "it" : "one of them")} uncontrolled, or change the switches of one of the loops.",
                [.. names, .. elements.Except(names)]);
        }

        return _errors is null;
    }

    /// <summary>Inductors that rest for a part of the period.</summary>
    public void WarnOfRests()
    {
        if (_network.InductorCount > 0)
        {
            (_warnings ??= []).AddRange(RestFindings.Of(converter, mode, forests));
        }
    }

    /// <summary>An output that is forced to zero.</summary>
    public bool CheckRatio<T>(Rational<T>[] voltages, LoopSolution<T> solution, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        if (voltages[_network.OutputBranch].IsZero)
        {
            ReportZero(solution, loops);
        }

        return _errors is null;
    }

    private void ReportZero<T>(LoopSolution<T> solution, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        Rational<T>[] charges = solution.LoopCharges();
        int[] members = [.. Enumerable.Range(0, loops.Count).Where(l => !charges[l].IsZero)];
        LoopDescriptions descriptions = new(converter, forests, loops);
        string average = _network.Load == LoadKind.Current ? " on average" : string.Empty;
        Error(
            DiagnosticCodes.ZeroRatio,
            $"These loops together hold the output {Quoted.Name(converter.OutputNode)} at zero volts{average}, whatever the input is: {descriptions.Demands(members)}. Change the switches of one of them.",
            descriptions.Elements(members));
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
        (_errors ??= []).Add(new Diagnostic(DiagnosticSeverity.Error, code, message, elements, phase + 1));

    private void Warning(string code, string message, string[] elements) =>
        (_warnings ??= []).Add(new Diagnostic(DiagnosticSeverity.Warning, code, message, elements));
}
