using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Derivations.Working;

/// <summary>The directions in which charge can circulate besides, the conditions that settle them, and the flow they give.</summary>
internal static class DirectionChapter
{
    public static IEnumerable<Block> Write(WorkedMode mode)
    {
        if (!mode.Outcome.HasResult || mode.Analysis.Topology.Directions.Count == 0)
        {
            return [];
        }

        TopologySolution exact = mode.Analysis.Topology;
        SwitchedNetwork network = mode.Converter.Network;
        ExactCharges charges = new(mode);
        (Quantity[] Branches, Quantity[] Switches)[] directions = Exact(mode);
        List<Block> blocks =
        [
            new Heading(2, "What component values decide"),
            new Paragraph("Charge can circulate in the following directions besides, without leaving a capacitor unbalanced or reaching the load on the whole. Component values decide how much takes each."),
        ];
        for (int k = 0; k < directions.Length; k++)
        {
            blocks.Add(new Paragraph(Line.Of($"Direction {k + 1}:")));
            blocks.Add(charges.Table(directions[k].Branches, directions[k].Switches, isWhole: false));
        }

        int[] moving = [.. Enumerable.Range(0, directions.Length).Where(k => DirectionAmounts.IsMoving(network, exact.Directions[k]))];
        if (moving.Length > 0)
        {
            blocks.Add(new Paragraph("Slow limit: at the end of every phase the voltages round every loop sum to zero. Tested with the directions that move capacitors:"));
            blocks.Add(new Equations([.. moving.Select(k => new EquationRow(string.Empty, Slow(mode, directions[k].Branches), Expression.Zero, Line.Of($"direction {k + 1}")))]));
            blocks.Add(Amounts("slow", moving, DirectionAmounts.Slow(mode.Converter, exact)));
        }

        blocks.Add(new Paragraph("Fast limit: the currents are those of least dissipation, so no direction can lower it. Where no resistance sees a direction, the voltage law at the ends of the phases settles it as in the slow limit."));
        blocks.Add(new Equations([.. directions.Select((d, k) => new EquationRow(string.Empty, Fast(mode, d), Expression.Zero, Line.Of($"direction {k + 1}")))]));
        blocks.Add(Amounts("fast", [.. Enumerable.Range(0, directions.Length)], DirectionAmounts.Fast(mode.Converter, exact)));
        blocks.Add(new Paragraph("With these amounts added to the flow above, the charges are, of capacitors in the slow limit, of input, output and switches in the fast limit:"));
        ChargeFlow flow = mode.Analysis.ChargeFlow;
        blocks.Add(charges.Table(
            [.. flow.Capacitors.SelectMany(c => c), .. flow.Output, .. flow.Input.Select(q => -q)], [.. flow.Switches.SelectMany(s => s)], isWhole: true));
        return blocks;
    }

    private static Paragraph Amounts(string limit, int[] directions, double[] amounts) => new(Line.Of(
        $"Amounts in the {limit} limit: {string.Join(", ", directions.Select(k => $"{Shown.Value(amounts[k])} of direction {TermParts.Digits(k + 1)}"))}."));

    // The circulations come first and are known exactly; the others are made of whole numbers.
    private static (Quantity[] Branches, Quantity[] Switches)[] Exact(WorkedMode mode)
    {
        List<Rational<BigInteger>[]> circulations = mode.Solution!.Circulations();
        return [.. mode.Analysis.Topology.Directions.Select((d, k) =>
        {
            if (k >= circulations.Count)
            {
                return (Whole(d.Branches, mode.Converter.Network.BranchCount), Whole(d.Switches, mode.Converter.Network.SwitchCount));
            }

            BranchFlow<BigInteger> flow = BranchFlow<BigInteger>.Of(mode.Converter.Network, mode.Forests, mode.Loops!, circulations[k]);
            return (flow.Branches.Select(q => q.ToQuantity()).ToArray(), flow.Switches.Select(q => q.ToQuantity()).ToArray());
        })];

        Quantity[] Whole(SparseVector values, int elements) =>
            [.. values.ToArray(elements * mode.Converter.Phases.Count).Select(v => Quantity.Exact((long)v))];
    }

    // Σ z · (running sum of a) / C over capacitors and phases
    private static Expression Slow(WorkedMode mode, Quantity[] direction)
    {
        int phases = mode.Converter.Phases.Count;
        List<Expression> terms = [];
        for (int c = 0; c < mode.Converter.Capacitors.Count; c++)
        {
            Expression elastance = Expression.Of(Symbol.Capacitance(mode.Converter.Capacitors[c].Name), -1);
            Fraction later = Fraction.Zero;
            for (int j = phases - 1; j >= 0; j--)
            {
                later += direction[(c * phases) + j].ToFraction();
                terms.Add(Expression.Of(later) * mode.Charge(c, j) * elastance);
            }
        }

        return Expression.Sum(terms);
    }

    // Σ R · z · a / D over resistances and phases
    private static Expression Fast(WorkedMode mode, (Quantity[] Branches, Quantity[] Switches) direction)
    {
        Converter converter = mode.Converter;
        int phases = converter.Phases.Count;
        List<Expression> terms = [];
        for (int j = 0; j < phases; j++)
        {
            Expression inverseDuty = Expression.Of(Fraction.One / converter.Phases[j].Duty);
            for (int s = 0; s < converter.Switches.Count; s++)
            {
                string name = converter.Switches[s].Name;
                Expression charge = Expression.Of(new Symbol(SymbolKind.ElementCharge, name, j + 1));
                terms.Add(Expression.Of(direction.Switches[(s * phases) + j].ToFraction()) * inverseDuty * charge * Expression.Of(Symbol.OnResistance(name)));
            }

            for (int c = 0; c < converter.Capacitors.Count; c++)
            {
                Expression resistance = converter.Capacitors[c].EsrOhms > 0 ? Expression.Of(Symbol.SeriesResistance(converter.Capacitors[c].Name)) : Expression.Zero;
                terms.Add(Expression.Of(direction.Branches[(c * phases) + j].ToFraction()) * inverseDuty * mode.Charge(c, j) * resistance);
            }
        }

        return Expression.Sum(terms);
    }
}
