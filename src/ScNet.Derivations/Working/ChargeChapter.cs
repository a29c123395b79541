using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Kernel;

namespace ScNet.Derivations.Working;

/// <summary>Loop charges, balance, the charge of every branch and switch, and the current law at every cut.</summary>
internal static class ChargeChapter
{
    public static IEnumerable<Block> Write(WorkedMode mode)
    {
        if (!mode.Outcome.HasResult)
        {
            return [];
        }

        Converter converter = mode.Converter;
        LoopSet loops = mode.Loops!;
        ExactCharges charges = new(mode);
        Rational<BigInteger>[] loopCharges = mode.Solution!.LoopCharges();
        (int row, int column) = mode.Solution.Pivots[^1];
        List<Block> blocks =
        [
            new Heading(2, "Charges"),
            new Paragraph("With charges round the loops as unknowns, Kirchhoff's current law holds by itself. Every charge is a sum of loop charges:"),
            new Equations([.. BranchRows(mode)]),
            new Paragraph("Every capacitor gives back in the period what it takes, and one unit of charge reaches the load:"),
            new Equations([.. BalanceRows(mode)]),
            new Paragraph(Line.Of($"These equations are the voltage equations read by columns. The combination {mode.Combination(row)} that led to the row for {mode.Voltage(column)}, divided by its factor {TermParts.Digits(mode.Entry(row, column))}, solves them{(loops.Count > loops.VoltageLoopCount ? $", a loop through the load with its weight times the factor of {WorkedMode.Label(loops.EquationCount - 1)}" : string.Empty)}:")),
            new Equations([.. loopCharges.Select((c, l) => new EquationRow(
                string.Empty, Loop(l), Expression.Of(WorkedMode.Exact(c)), loops.IsTied(l) ? Line.Of($"share of {mode.PhaseLabel(loops.Phase(l))}") : Line.Empty))]),
            new Paragraph(mode.Analysis.Topology.Directions.Count == 0
                ? "Hence the charges (capacitors and switches from the first terminal to the second, the input out of the source, the output into the load):"
                : "Hence one flow that obeys all these laws, which is not the only one (capacitors and switches from the first terminal to the second, the input out of the source, the output into the load):"),
            charges.Table(mode.Analysis.Topology.Branches, mode.Analysis.Topology.Switches, isWhole: true),
        ];
        EquationRow[] cuts = [.. converter.Phases.SelectMany(p => CutRows(mode, p.Number - 1, charges))];
        if (cuts.Length > 0)
        {
            blocks.Add(new Paragraph("Kirchhoff's current law at the cut of every branch of the spanning trees, with these charges:"));
            blocks.Add(new Equations(cuts));
        }

        EquationRow[] switches = [.. converter.Phases.SelectMany(p => SwitchRows(mode, p.Number - 1, charges))];
        if (switches.Length > 0)
        {
            blocks.Add(new Paragraph("A closed switch carries what the branches beyond it take. Within each group, from the leaves of the tree of closed switches:"));
            blocks.Add(new Equations(switches));
        }

        return blocks;
    }

    private static Expression Loop(int loop) => Expression.Of(new Symbol(SymbolKind.LoopCharge, TermParts.Digits(loop + 1)));

    private static IEnumerable<EquationRow> BranchRows(WorkedMode mode)
    {
        SwitchedNetwork network = mode.Converter.Network;
        for (int branch = 0; branch < network.BranchCount; branch++)
        {
            int sign = branch == network.InputBranch ? -1 : 1;
            for (int phase = 0; phase < network.PhaseCount; phase++)
            {
                Expression sum = InLoops(mode, branch, phase);
                if (!sum.IsZero)
                {
                    yield return sign > 0
                        ? new EquationRow(string.Empty, mode.Charge(branch, phase), sum, Line.Empty)
                        : new EquationRow(string.Empty, -mode.Charge(branch, phase), -sum, Line.Empty);
                }
            }
        }
    }

    private static IEnumerable<EquationRow> BalanceRows(WorkedMode mode)
    {
        SwitchedNetwork network = mode.Converter.Network;
        for (int branch = 0; branch <= network.OutputBranch; branch++)
        {
            Expression sum = Expression.Sum(Enumerable.Range(0, network.PhaseCount).Select(phase => InLoops(mode, branch, phase)));
            if (branch == network.OutputBranch)
            {
                yield return new EquationRow(string.Empty, sum, Expression.Of(Fraction.One), "load");
            }
            else if (!sum.IsZero)
            {
                yield return new EquationRow(string.Empty, sum, Expression.Zero, Line.Of($"balance of {mode.Name(branch)}"));
            }
        }
    }

    private static Expression InLoops(WorkedMode mode, int branch, int phase)
    {
        LoopSet loops = mode.Loops!;
        List<Expression> terms = [];
        for (int l = 0; l < loops.Count; l++)
        {
            int position = loops.Phase(l) == phase ? loops.Branches(l).IndexOf(branch) : -1;
            if (position >= 0)
            {
                terms.Add(loops.Signs(l)[position] > 0 ? Loop(l) : -Loop(l));
            }
        }

        return Expression.Sum(terms);
    }

    private static IEnumerable<EquationRow> CutRows(WorkedMode mode, int phase, ExactCharges charges)
    {
        PhaseGraph graph = mode.Graphs[phase];
        SwitchedNetwork network = mode.Converter.Network;
        foreach (FundamentalCut cut in graph.Cuts)
        {
            List<Expression> terms = [.. cut.Edges.Select(e =>
            {
                Expression charge = mode.Charge(BranchOf(e.Edge, network), phase);
                return e.Sign > 0 ? charge : -charge;
            })];
            if (mode.Converter.Load == LoadKind.Current && cut.Groups.Contains(graph.GroupOf(mode.Converter.OutputNode).Index))
            {
                Expression load = mode.Charge(network.OutputBranch, phase);
                terms.Add(cut.Groups.Contains(cut.TreeEdge.Source) ? load : -load);
            }

            Expression sum = Expression.Sum(terms);
            yield return new EquationRow(
                string.Empty, sum, Expression.Zero, Line.Of($"{charges.InNumbers(sum)} = 0, cut of {new Named(cut.TreeEdge.Name)} in {mode.PhaseLabel(phase)}"));
        }
    }

    private static int BranchOf(PhaseEdge edge, SwitchedNetwork network) => edge.Kind switch
    {
        PhaseEdgeKind.Capacitor => edge.Index!.Value,
        PhaseEdgeKind.Input => network.InputBranch,
        _ => network.OutputBranch,
    };

    private static IEnumerable<EquationRow> SwitchRows(WorkedMode mode, int phase, ExactCharges charges)
    {
        SwitchedNetwork network = mode.Converter.Network;
        PhaseForest forest = mode.Forests[phase];
        var beyond = new Expression[network.NodeCount];
        beyond.AsSpan().Fill(Expression.Zero);
        for (int branch = 0; branch < network.BranchCount; branch++)
        {
            Expression charge = mode.Charge(branch, phase);
            beyond[network.BranchFirst[branch]] += charge;
            beyond[network.BranchSecond[branch]] -= charge;
        }

        for (int k = network.NodeCount - 1; k >= 0; k--)
        {
            int node = forest.NodeOrder[k];
            int via = forest.ParentSwitch[node];
            if (via >= 0)
            {
                beyond[forest.ParentNode[node]] += beyond[node];
                Expression sum = network.SwitchSecond[via] == node ? beyond[node] : -beyond[node];
                Symbol symbol = new(SymbolKind.ElementCharge, mode.Converter.Switches[via].Name, phase + 1);
                yield return new EquationRow(string.Empty, Expression.Of(symbol), sum, Line.Of($"= {charges.Value(sum)}"));
            }
        }
    }
}
