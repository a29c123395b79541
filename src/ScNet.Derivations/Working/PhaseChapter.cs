using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Derivations.Working;

/// <summary>One phase: joined nodes, branches that remain, spanning tree, and the loops with their equations.</summary>
internal static class PhaseChapter
{
    public static IEnumerable<Block> Write(WorkedMode mode, int phase)
    {
        PhaseGraph graph = mode.Graphs[phase];
        yield return new Heading(2, Line.Of($"Network of {mode.PhaseLabel(phase)}, {graph.Phase.Duty} of the period"));
        yield return new Paragraph(Closed(mode, phase));
        HashSet<int> touched = [0, .. graph.Edges.SelectMany(e => new[] { e.Source, e.Target })];
        yield return new Table(
            ["group", "joined nodes", "remark"],
            [.. graph.Groups.Where(g => g.Nodes.Count > 1 || touched.Contains(g.Index)).Select(g => (IReadOnlyList<Line>)
                [Line.Of($"{g.Index}"), Line.Of($"{g.Nodes.Select(n => new Named(n))}"), g.Index == 0 ? "reference" : g.Floats ? "floats" : Line.Empty])]);
        Named[] alone = [.. graph.Groups.Where(g => g.Nodes.Count == 1 && !touched.Contains(g.Index)).Select(g => new Named(g.Nodes[0]))];
        if (alone.Length > 0)
        {
            yield return new Paragraph(Line.Of($"Nodes that no branch and no closed switch touches: {alone}."));
        }

        yield return new Table(["branch", "from group", "to group", "part"], [.. Branches(mode, phase)]);
        Named[] tree = [.. graph.SpanningForest.Select(e => new Named(e.Name))];
        yield return new Paragraph(tree.Length > 0
            ? Line.Of($"Spanning tree, from the root outwards: {tree}. Every other branch closes one loop with it.")
            : "The spanning tree has no branch.");
        if (mode.Loops is not { } loops)
        {
            yield break;
        }

        int[] own = [.. Enumerable.Range(0, loops.Count).Where(l => loops.Phase(l) == phase)];
        if (own.Length > 0)
        {
            LoopDescriptions descriptions = new(mode.Converter, mode.Forests, loops);
            yield return new Paragraph("Kirchhoff's voltage law round the loops:");
            yield return new Equations(
                [.. own.Select(l => new EquationRow(LoopLabel(loops, l), mode.RoundLoop(loops, l), Expressions.Expression.Zero, Through(descriptions.Switches(l))))]);
        }
        else
        {
            yield return new Paragraph("There is no loop, so no charge flows in this phase.");
        }

        foreach (Line remark in SetAside(mode, phase))
        {
            yield return new Paragraph(remark);
        }
    }

    // The loops through a load current make one equation together, which comes later.
    private static string LoopLabel(LoopSet loops, int loop) => loops.IsTied(loop)
        ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"loop {loop + 1}")
        : WorkedMode.Label(loop);

    private static Line Through(string[] switches) => switches.Length > 0
        ? Line.Of($"through {switches.Select(s => new Named(s))}")
        : Line.Empty;

    private static Line Closed(WorkedMode mode, int phase)
    {
        Converter converter = mode.Converter;
        Named[] closed = [.. converter.Switches.Where((_, s) => mode.Mode.ClosedPhases[s].Contains(phase + 1)).Select(s => new Named(s.Name))];
        string loop = mode.Forests[phase].HasSwitchLoop ? " Some of them form a loop." : string.Empty;
        return closed.Length > 0
            ? Line.Of($"Closed switches: {closed}. The nodes that they join count as one group.{loop}")
            : "No switch is closed, so no nodes are joined.";
    }

    private static IEnumerable<IReadOnlyList<Line>> Branches(WorkedMode mode, int phase)
    {
        PhaseGraph graph = mode.Graphs[phase];
        HashSet<PhaseEdge> tree = [.. graph.SpanningForest];
        foreach (PhaseEdge edge in graph.Edges)
        {
            int branch = edge.Kind switch
            {
                PhaseEdgeKind.Capacitor => edge.Index!.Value,
                PhaseEdgeKind.Input => mode.Converter.Network.InputBranch,
                _ => mode.Converter.Network.OutputBranch,
            };
            string part = (tree.Contains(edge) ? "tree" : Chord(mode, phase, branch))
                + (edge.IsShorted ? ", shorted" : string.Empty)
                + (mode.Loops is null || IsInLoop(mode.Loops, phase, branch) || IsInLoop(mode.Loops.Repeats, phase, branch) ? string.Empty : ", in no loop");
            yield return [Line.Of($"{new Named(edge.Name)}"), Line.Of($"{edge.Source}"), Line.Of($"{edge.Target}"), part];
        }

        if (mode.Converter.Load == LoadKind.Current)
        {
            string chord = Chord(mode, phase, mode.Converter.Network.OutputBranch);
            yield return ["load current", Line.Of($"{graph.GroupOf(mode.Converter.OutputNode).Index}"), "0", chord];
        }
    }

    private static bool IsInLoop(LoopSet? loops, int phase, int branch)
    {
        for (int l = 0; l < (loops?.Count ?? 0); l++)
        {
            if (loops!.Phase(l) == phase && loops.Branches(l).Contains(branch))
            {
                return true;
            }
        }

        return false;
    }

    private static string Chord(WorkedMode mode, int phase, int branch)
    {
        if (mode.Loops is { } loops)
        {
            for (int l = 0; l < loops.Count; l++)
            {
                if (loops.Phase(l) == phase && loops.Branches(l)[0] == branch)
                {
                    return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"closes loop {l + 1}");
                }
            }

            return loops.Interruptions.Contains((phase, branch))
                ? "has no path"
                : "closes a loop that is set aside";
        }

        return "closes a loop";
    }

    private static IEnumerable<Line> SetAside(WorkedMode mode, int phase)
    {
        for (int pair = 0; mode.Loops?.Repeats is { } repeats && pair < repeats.Count; pair += 2)
        {
            if (repeats.Phase(pair + 1) == phase)
            {
                yield return Line.Of($"Set aside: {mode.RoundLoop(repeats, pair + 1)} = 0 repeats what {mode.PhaseLabel(repeats.Phase(pair))} says. Capacitor {mode.Name(repeats.Branches(pair)[0])} meets the sources only and always alike, so it carries no charge between equilibria.");
            }
        }
    }
}
