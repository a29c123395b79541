using Fractions;

namespace ScNet.Derivations.Checking;

/// <summary>Slips of one value.</summary>
internal static class SingleSlips
{
    public static IEnumerable<SlipHypothesis> Of(Workbench bench, SlipValues values, IEnumerable<Statement> wrong) =>
        wrong.SelectMany(s => Of(bench, values, s));

    private static IEnumerable<SlipHypothesis> Of(Workbench bench, SlipValues values, Statement statement)
    {
        if (statement.Kind == StatementKind.Ratio)
        {
            yield return One(SlipKind.RatioInverted, 28, "ratio inverted: input per output", values.Inverted);
        }

        if (SlipValues.IsCoefficient(statement) || statement.Kind == StatementKind.PeakBlockingVoltage)
        {
            yield return One(
                SlipKind.FollowsFromWrong,
                29,
                $"follows from the stated {(SlipValues.IsCoefficient(statement) ? "charges" : "blocking voltages")} of {statement.Element}",
                s => LimitCheck.FromStated(bench, s));
            yield return One(SlipKind.DutyForgotten, 32, "not divided by the duties", values.DutyForgotten);
            yield return One(SlipKind.NotSquared, 33, "charges not squared", values.NotSquared);
        }

        yield return One(SlipKind.SignFlipped, 30, "sign flipped", values.Negated);
        if (statement.Phase is not null)
        {
            for (int k = 0; k < bench.Scope.Converter.Phases.Count; k++)
            {
                int phase = k;
                yield return One(SlipKind.WrongPhase, 31, $"value of phase {k + 1}", values.OfPhase(_ => phase));
            }
        }

        yield return One(SlipKind.PerInputCharge, 34, "per unit of input charge instead of output charge", values.PerInput);
        yield return One(SlipKind.PerOutputVoltage, 35, "per volt of output instead of input", values.PerOutput);
        foreach ((Fraction factor, string words) in WideSlips.Factors)
        {
            yield return One(SlipKind.Factor, 36, words, values.Times(factor));
        }

        SlipHypothesis One(SlipKind kind, int rank, string description, Func<Statement, Quantity> value) =>
            new(kind, rank, description, [statement], value);
    }
}
