using System.Numerics;
using ScNet.Exact;
using ScNet.Graphs;

namespace ScNet.Analysis;

/// <summary>
/// Turns loops that contradict each other into a finding. The loops are first reduced to a set of which
/// none can be left out, so that each one named is part of the contradiction and changing any one solves it.
/// </summary>
internal sealed class ConflictReport(Converter converter, PhaseForest[] forests, LoopSet loops)
{
    private readonly SwitchedNetwork _network = converter.Network;
    private readonly LoopDescriptions _descriptions = new(converter, forests, loops);

    /// <summary>
    /// The findings, those of the fewest loops first. One mistake often shows in several contradictions, so
    /// a contradiction that shares a loop with one already told is left for when that one is solved.
    /// </summary>
    /// <param name="conflicts">Combinations of loops whose voltages do not add up.</param>
    public IEnumerable<Diagnostic> Report<T>(List<Rational<T>[]> conflicts)
        where T : struct, IBinaryInteger<T>
    {
        HashSet<int> told = [];
        foreach (int[] members in conflicts.Select(c => Reduce<T>([.. Enumerable.Range(0, loops.Count).Where(l => !c[l].IsZero)])).OrderBy(m => m.Length))
        {
            if (!told.Overlaps(members))
            {
                told.UnionWith(members);
                yield return Describe(members);
            }
        }
    }

    // As long as the members depend on each other in two ways, one that takes part in the second is not
    // needed for the first; with one way left, the loops that take part in it are all needed.
    private int[] Reduce<T>(List<int> members)
        where T : struct, IBinaryInteger<T>
    {
        while (true)
        {
            (Rational<T>[] conflict, Rational<T>[]? dependency) = Dependencies<T>(members);
            if (dependency is null)
            {
                return [.. members.Where((_, k) => !conflict[k].IsZero)];
            }

            members.RemoveAt(Array.FindLastIndex(dependency, weight => !weight.IsZero));
        }
    }

    // A combination of the members that contradicts itself, and one that vanishes where there is one.
    private (Rational<T>[] Conflict, Rational<T>[]? Dependency) Dependencies<T>(List<int> members)
        where T : struct, IBinaryInteger<T>
    {
        SparseRows<T> rows = new(members.Count, 4 * members.Count);
        members.ForEach(l => LoopSolution<T>.AddEquation(rows, loops, l));
        Elimination<T> elimination = Elimination<T>.Run(rows, _network.CapacitorCount, 1);
        int[] dependent = [.. Enumerable.Range(0, rows.Count).Where(r => !elimination.IsPivotRow(r)).OrderByDescending(rows.Length)];
        Rational<T>[] conflict = Combination(dependent[0]);
        if (dependent.Length == 1)
        {
            return (conflict, null);
        }

        Rational<T>[] other = Combination(dependent[1]);
        if (rows.Length(dependent[1]) > 0)
        {
            // both contradict themselves: their difference, so weighted that the input cancels, does not
            T own = rows.Values(dependent[0])[0], others = rows.Values(dependent[1])[0];
            other = [.. other.Select((weight, k) => (weight * own) - (conflict[k] * others))];
        }

        return (conflict, other);

        Rational<T>[] Combination(int row)
        {
            var weights = new Rational<T>[members.Count];
            weights[row] = Rational<T>.One;
            elimination.CarryBack(weights);
            return weights;
        }
    }

    private Diagnostic Describe(int[] members)
    {
        int shorted = Array.FindIndex(members, l => loops.Branches(l).Length == 1);
        if (shorted < 0)
        {
            // never of one phase alone: within a phase every loop has a capacitor of its own
            return new Diagnostic(
                DiagnosticSeverity.Error,
                DiagnosticCodes.VoltageConflict,
                $"No voltages satisfy these loops together: {_descriptions.Demands(members)}. Change the switches of any one of them.",
                _descriptions.Elements(members));
        }

        int loop = members[shorted];
        string name = converter.Capacitors[loops.Branches(loop)[0]].Name;
        string[] switches = _descriptions.Switches(loop);
        int[] others = [.. members.Where(l => l != loop)];
        return new Diagnostic(
            DiagnosticSeverity.Error,
            DiagnosticCodes.CapacitorShorted,
            $"In phase {LoopDescriptions.Label(converter, loops.Phase(loop))} {ModeFindings.ClosedSwitches(switches)} short{(switches.Length == 1 ? "s" : string.Empty)} capacitor '{name}', but other loops require it to hold a voltage: {_descriptions.Demands(others)}. Open {(switches.Length == 1 ? "it" : "one of them")} in that phase.",
            [name, .. switches, .. _descriptions.Elements(others).Where(n => n != name && !switches.Contains(n))],
            loops.Phase(loop) + 1);
    }
}
