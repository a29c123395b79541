using ScNet.Analysis;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Working;

/// <summary>Both limits of the output impedance: coefficients, closed forms, and values.</summary>
internal static class LimitChapter
{
    public static IEnumerable<Block> Write(WorkedMode mode)
    {
        if (!mode.Outcome.HasResult)
        {
            return [];
        }

        ModeAnalysis analysis = mode.Analysis;
        Converter converter = mode.Converter;
        ClosedForms forms = ClosedForms.Of(analysis);
        List<Block> blocks =
        [
            new Heading(2, "Slow-switching limit"),
            new Paragraph("A capacitor's coefficient is half the sum of the squares of its charges; the limit is the sum of coefficient / (capacitance · frequency)."),
        ];
        if (converter.Capacitors.Count > 0)
        {
            blocks.Add(new Table(
                ["capacitor", "half the sum of squares", "coefficient"],
                [.. converter.Capacitors.Select((c, i) => Row(
                    c.Name, Squares(analysis.ChargeFlow.Capacitors[i], null), analysis.SlowSwitchingLimit.Coefficients[i]))]));
        }

        blocks.AddRange(Forms(forms.SlowSwitchingLimit));
        blocks.Add(new Paragraph(Line.Of($"With the netlist's values, at 1 Hz: {Quantity.Numeric(analysis.SlowSwitchingLimit.OhmsAtOneHertz)} Ω.")));
        blocks.Add(new Heading(2, "Fast-switching limit"));
        blocks.Add(new Paragraph("A resistance's coefficient is the sum over the phases of charge squared over the phase's share of the period; the limit is the sum of coefficient · resistance."));
        Quantity[] duties = [.. converter.Phases.Select(p => Quantity.Exact(p.Duty))];
        IReadOnlyList<Line>[] rows =
        [
            .. converter.Switches.Select((s, i) => Row(
                s.Name, Squares(analysis.ChargeFlow.Switches[i], duties), analysis.FastSwitchingLimit.SwitchCoefficients[i])),
            .. converter.Capacitors.Select((c, i) => (c, i)).Where(e => e.c.EsrOhms > 0).Select(e => Row(
                e.c.Name, Series(analysis, e.i, duties), analysis.FastSwitchingLimit.CapacitorCoefficients[e.i])),
        ];
        if (rows.Length > 0)
        {
            blocks.Add(new Table(["resistance of", "squares over shares", "coefficient"], rows));
        }

        blocks.AddRange(Forms(forms.FastSwitchingLimit));
        blocks.Add(new Paragraph(Line.Of($"With the netlist's values: {Quantity.Numeric(analysis.FastSwitchingLimit.Ohms)} Ω.")));
        return blocks;
    }

    private static IEnumerable<Block> Forms(ClosedForm form)
    {
        if (!form.IsExact)
        {
            yield return new Paragraph(form.Reason);
            yield break;
        }

        yield return new Equations([new EquationRow(string.Empty, Expression.Of(form.Symbol), form.Require(), Line.Empty)]);
        ClosedForm equal = form.WithEqualComponents();
        if (!equal.Equals(form))
        {
            yield return new Paragraph("With equal components:");
            yield return new Equations([new EquationRow(string.Empty, Expression.Of(form.Symbol), equal.Require(), Line.Empty)]);
        }
    }

    private static IReadOnlyList<Line> Row(string name, string squares, Quantity coefficient) =>
        [Line.Of($"{new Named(name)}"), squares, Line.Of($"{Shown.Value(coefficient)}")];

    // Where values decide, the capacitors' charges in the table of charges are those of the slow limit.
    private static string Series(ModeAnalysis analysis, int capacitor, Quantity[] duties) =>
        analysis.ChargeFlow.DeterminedBy == FlowDetermination.Topology
            ? Squares(analysis.ChargeFlow.Capacitors[capacitor], duties)
            : "charges of the fast limit";

    private static string Squares(PhaseValues charges, Quantity[]? duties)
    {
        List<string> squares = [];
        for (int number = 1; number <= charges.PhaseCount; number++)
        {
            if (charges[number].Sign != 0)
            {
                squares.Add($"({Shown.Value(charges[number])})²" + (duties is null ? string.Empty : $"/({duties[number - 1]})"));
            }
        }

        return squares.Count == 0 ? "0" : duties is null ? $"({string.Join(" + ", squares)})/2" : string.Join(" + ", squares);
    }
}
