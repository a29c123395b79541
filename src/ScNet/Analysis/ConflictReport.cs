using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// Turns loops that contradict each other into a finding. Elimination combines a row only with pivot rows,
/// which are independent, so none of the loops in a contradiction can be left out: each one named is part of
/// it, and changing any one solves it.
/// </summary>
internal sealed class ConflictReport(Converter converter, PhaseForest[] forests, LoopSet loops)
{
    private readonly LoopDescriptions _descriptions = new(converter, forests, loops);

    /// <summary>
    /// The findings, those of the fewest loops first. One mistake often shows in several contradictions, so
    /// a contradiction that shares a loop with one already told is left for when that one is solved.
    /// </summary>
    /// <param name="conflicts">The loops of each combination whose voltages do not add up.</param>
    public IEnumerable<Diagnostic> Report(int[][] conflicts)
    {
        HashSet<int> told = [];
        foreach (int[] members in conflicts.OrderBy(m => m.Length))
        {
            if (!told.Overlaps(members))
            {
                told.UnionWith(members);
                yield return Describe(members);
            }
        }
    }

    private Diagnostic Describe(int[] members)
    {
        int shorted = Array.FindIndex(members, l => loops.Branches(l).Length == 1 && !loops.IsTied(l));
        if (shorted < 0)
        {
            // never of one phase alone: within a phase every loop has a capacitor of its own
            return new Diagnostic(
                DiagnosticSeverity.Error,
                DiagnosticCodes.VoltageConflict,
                $"No voltages satisfy these loops together{(members.Any(loops.IsTied) ? ", with no voltage across an inductor on average" : string.Empty)}: {_descriptions.Demands(members)}. Change the switches of any one of them.",
                _descriptions.Elements(members));
        }

        int loop = members[shorted];
        string name = converter.Capacitors[loops.Branches(loop)[0]].Name;
        string[] switches = _descriptions.Switches(loop);
        int[] others = [.. members.Where(l => l != loop)];
        return new Diagnostic(
            DiagnosticSeverity.Error,
            DiagnosticCodes.CapacitorShorted,
            $"In phase {LoopDescriptions.Label(converter, loops.Phase(loop))} {ModeFindings.ClosedSwitches(switches)} short{(switches.Length == 1 ? "s" : string.Empty)} capacitor {Quoted.Name(name)}, but other loops require it to hold a voltage: {_descriptions.Demands(others)}. Open {(switches.Length == 1 ? "it" : "one of them")} in that phase.",
            [name, .. switches, .. _descriptions.Elements(others).Where(n => n != name && !switches.Contains(n))],
            loops.Phase(loop) + 1);
    }
}
