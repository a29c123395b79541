using System.Numerics;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Kernel;

namespace ScNet.Derivations.Working;

/// <summary>The voltage equations of all phases together, eliminated, and the voltages that come of them.</summary>
internal static class VoltageChapter
{
    public static IEnumerable<Block> Write(WorkedMode mode)
    {
        if (mode.Solution is not { } solution || mode.Loops is not { Count: > 0 } loops)
        {
            return [];
        }

        List<Block> blocks =
        [
            new Heading(2, "Voltages without load"),
            new Paragraph("Without load no charge flows, so every capacitor has one voltage in all phases, and the equations of all loops hold at once."),
        ];
        if (loops.Count > loops.VoltageLoopCount)
        {
            blocks.Add(new Paragraph(Line.Of(
                $"The loops through the load current carry charge in the proportion of the phases, {string.Join(" : ", mode.Converter.Network.PhaseWeights.Select(TermParts.Digits))}, and count as one equation, their sum with these weights; in it stands the average output voltage:")));
            blocks.Add(new Equations([new EquationRow(WorkedMode.Label(loops.EquationCount - 1), mode.LoadEquation(), Expression.Zero, Line.Empty)]));
        }

        blocks.AddRange(Eliminated(mode, solution, loops.EquationCount));
        blocks.AddRange(mode.Outcome.HasResult ? Results(mode) : []);
        return blocks;
    }

    private static IEnumerable<Block> Eliminated(WorkedMode mode, ILoopSolution solution, int equations)
    {
        Converter converter = mode.Converter;
        if (solution.Pivots.Count > 0)
        {
            yield return new Paragraph("Elimination, one unknown after the other, leaves these rows, each a combination of the equations above:");
            yield return new Equations([.. solution.Pivots.Select(p => new EquationRow(
                string.Empty, mode.ReducedRow(p.Row), Expression.Zero, Line.Of($"= {mode.Combination(p.Row)}, for {mode.Voltage(p.Column)}")))]);
        }

        int[] others = [.. Enumerable.Range(0, equations).Except(solution.Pivots.Select(p => p.Row))];
        int[] empty = [.. others.Where(r => solution.ReducedRow(r).Length == 0)];
        int[] contradictory = [.. others.Where(r => solution.ReducedRow(r).Length > 0)];
        if (empty.Length > 0)
        {
            yield return new Paragraph("These combinations of equations say nothing new, so charge can circulate round their loops besides:");
            yield return new Equations([.. empty.Select(r => new EquationRow(string.Empty, Expression.Zero, Expression.Zero, Line.Of($"= {mode.Combination(r)}")))]);
        }

        if (contradictory.Length > 0)
        {
            yield return new Paragraph(Line.Of($"These combinations say that {Symbol.InputVoltage} is zero, which it is not: their loops demand different voltages."));
            yield return new Equations([.. contradictory.Select(r => new EquationRow(string.Empty, mode.ReducedRow(r), Expression.Zero, Line.Of($"= {mode.Combination(r)}")))]);
            yield break;
        }

        if (solution.Pivots.Count > 0)
        {
            yield return new Paragraph("Solved from the last row to the first:");
            yield return new Equations([.. solution.Pivots.Reverse().Select(p => new EquationRow(
                string.Empty, mode.Voltage(p.Column), Solved(mode, p.Row, p.Column), Line.Empty))]);
        }

        if (!mode.Solution!.IsOutputFixed)
        {
            yield return new Paragraph(Free(mode));
        }

        int[] free = [.. Enumerable.Range(0, converter.Capacitors.Count).Except(solution.Pivots.Select(p => p.Column))];
        if (free.Length > 0)
        {
            yield return new Paragraph(Line.Of($"No row is left for the voltages of {free.Select(mode.Name)}."));
        }
    }

    private static Expression Solved(WorkedMode mode, int row, int column)
    {
        Expression pivot = Expression.Of(new Fractions.Fraction(mode.Entry(row, column)));
        Expression rest = (pivot * mode.Voltage(column)) - mode.ReducedRow(row);
        return Expression.Of(new Fractions.Fraction(BigInteger.One, mode.Entry(row, column), true)) * rest;
    }

    // Where the output is not fixed, everything that moves with it by the equations.
    private static Line Free(WorkedMode mode)
    {
        int output = mode.Converter.Network.OutputBranch;
        Rational<BigInteger>[] movement = mode.Solution!.Movement(output);
        List<Line> moved = [];
        for (int c = 0; c < mode.Converter.Capacitors.Count; c++)
        {
            if (!movement[c].IsZero)
            {
                moved.Add(Line.Of($"{mode.Voltage(c)} by {WorkedMode.Exact(movement[c])}"));
            }
        }

        Line together = moved.Count == 0
            ? "while nothing else does"
            : Line.Of($"together with {moved.Skip(1).Aggregate(moved[0], (all, one) => Line.Of($"{all}, {one}"))}");
        return Line.Of($"No row is left for {mode.Voltage(output)}: it can move by 1 {together}, and every equation still holds.");
    }

    private static IEnumerable<Block> Results(WorkedMode mode)
    {
        Converter converter = mode.Converter;
        IdealPoint ideal = mode.Analysis.IdealPoint;
        List<EquationRow> rows = [Row(mode.Voltage(converter.Network.OutputBranch), ideal.Ratio, "the ideal ratio")];
        List<Named> open = [];
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            if (ideal.CapacitorVoltages[c].IsExact)
            {
                rows.Add(Row(mode.Voltage(c), ideal.CapacitorVoltages[c], Line.Empty));
            }
            else
            {
                open.Add(mode.Name(c));
            }
        }

        yield return new Paragraph("Hence:");
        yield return new Equations(rows);
        if (open.Count > 0)
        {
            yield return new Paragraph(Line.Of($"Nothing fixes the voltages of {open}."));
        }

        string[] phases = [.. converter.Phases.Select(p => $"phase {TermParts.Digits(p.Number)}")];
        yield return new Paragraph(Line.Of($"Node potentials, walking the spanning tree from the reference, as multiples of {Symbol.InputVoltage} (? where a node floats or nothing fixes it):"));
        yield return new Table(
            ["node", .. phases],
            [.. converter.Nodes.Select((n, i) => (IReadOnlyList<Line>)[Line.Of($"{new Named(n)}"), .. ideal.NodePotentials[i].Select(v => Line.Of($"{v}"))])]);
        if (converter.Switches.Count > 0)
        {
            BlockingVoltages blocking = mode.Analysis.BlockingVoltages;
            yield return new Paragraph(Line.Of($"Voltages across the switches, first terminal minus second, as multiples of {Symbol.InputVoltage}:"));
            yield return new Table(
                ["switch", .. phases, "peak"],
                [.. converter.Switches.Select((s, i) => (IReadOnlyList<Line>)
                    [Line.Of($"{new Named(s.Name)}"), .. blocking.Switches[i].Select(v => Line.Of($"{v}")), Line.Of($"{blocking.Peaks[i]}")])]);
        }
    }

    private static EquationRow Row(Expression left, Quantity perVolt, Line remark) =>
        new(string.Empty, left, Expression.Of(perVolt.ToFraction()) * Expression.Of(Symbol.InputVoltage), remark);
}
