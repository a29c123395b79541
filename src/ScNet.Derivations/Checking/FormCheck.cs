using Fractions;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Checking;

/// <summary>Compares stated closed forms with those of the analysis, term by term, and recognises slips.</summary>
/// <remarks>
/// A form for equal components is right as well as one by element. The term of a series resistance of 0 may be
/// stated or left out. Cost: linear in the elements, for each form and slip.
/// </remarks>
internal sealed class FormCheck(DerivationScope scope, Workbench bench)
{
    private const int MaximumSlips = 3;

    private readonly SlipValues _values = new(bench);
    private readonly ClosedForms _forms = ClosedForms.Of(scope.Analysis);

    public FormFinding Find(FormStatement statement)
    {
        ClosedForm derived = Offered(statement.Kind);
        if (derived.Expression is null)
        {
            return new FormFinding(statement, Verdict.Undetermined, derived, [], []);
        }

        Shape[] shapes = Shapes(statement.Expression);
        Expression[] right = [.. shapes.Select(s => Form(statement.Kind, _values.Right, s)).OfType<Expression>()];
        int match = Array.IndexOf(right, statement.Expression);
        if (match >= 0)
        {
            return new FormFinding(statement, Verdict.Right, ClosedForm.Of(derived.Symbol, right[match]), [], []);
        }

        // the first shape is the one that is closest to the statement
        return new FormFinding(
            statement,
            Verdict.Wrong,
            ClosedForm.Of(derived.Symbol, right[0]),
            FormDifference.Between(statement.Expression, right[0]),
            [.. Slips(statement.Kind, right[0], shapes[0]).Where(s => statement.Expression.Equals(s.Expression)).Select(s => s.Slip).DistinctBy(s => s.Kind).Take(MaximumSlips)]);
    }

    private ClosedForm Offered(FormKind kind) => kind switch
    {
        FormKind.OutputVoltage => _forms.OutputVoltage,
        FormKind.SlowSwitchingLimit => _forms.SlowSwitchingLimit,
        FormKind.FastSwitchingLimit => _forms.FastSwitchingLimit,
        FormKind.SlowSwitchingLoss => _forms.SlowSwitchingLoss,
        _ => _forms.FastSwitchingLoss,
    };

    // By element or for equal components, and with the series resistances of 0 that the statement mentions.
    private Shape[] Shapes(Expression stated)
    {
        HashSet<Symbol> symbols = [.. stated.Symbols];
        bool hasEqual = symbols.Overlaps([Symbol.EqualCapacitance, Symbol.EqualOnResistance, Symbol.EqualSeriesResistance]);
        Shape byElement = new(c => c.EsrOhms > 0 || symbols.Contains(Symbol.SeriesResistance(c.Name)), false);
        Shape equal = new(c => c.EsrOhms > 0, true), equalWithAll = new(_ => true, true);
        return !hasEqual ? [byElement]
            : !symbols.Contains(Symbol.EqualSeriesResistance) ? [equal]
            : scope.Converter.Capacitors.Any(c => c.EsrOhms > 0) ? [equal, equalWithAll] : [equalWithAll];
    }

    private IEnumerable<(Slip Slip, Expression? Expression)> Slips(FormKind kind, Expression right, Shape shape)
    {
        if (kind == FormKind.OutputVoltage)
        {
            Fraction ratio = right.IsZero ? Fraction.Zero : right.Terms[0].Coefficient;
            yield return (Slipped(SlipKind.RatioInverted, "ratio inverted: input per output"), ratio.IsZero ? null : Expression.Of(Fraction.One / ratio) * Expression.Of(Symbol.InputVoltage));
            yield return (Slipped(SlipKind.SymbolForgotten, "V_in left out"), right * Expression.Of(Symbol.InputVoltage, -1));
        }
        else
        {
            FormKind other = kind switch
            {
                FormKind.SlowSwitchingLimit => FormKind.FastSwitchingLimit,
                FormKind.FastSwitchingLimit => FormKind.SlowSwitchingLimit,
                FormKind.SlowSwitchingLoss => FormKind.FastSwitchingLoss,
                _ => FormKind.SlowSwitchingLoss,
            };
            yield return (Slipped(SlipKind.LimitsExchanged, "slow- and fast-switching limit exchanged"), Form(other, _values.Right, shape));
            yield return (Slipped(SlipKind.DutyForgotten, "not divided by the duties"), IsSlow(kind) ? null : Form(kind, _values.DutyForgotten, shape));
            foreach ((Slip slip, Fraction[] duties) in IsSlow(kind) ? [] : OtherDuties())
            {
                yield return (slip, Form(kind, _values.WithDuties(duties), shape));
            }

            yield return (Slipped(SlipKind.NotSquared, "charges not squared"), Form(kind, _values.NotSquared, shape));
            yield return (Slipped(SlipKind.PerInputCharge, "per unit of input charge instead of output charge"), Form(kind, _values.PerInput, shape));
            yield return (Slipped(SlipKind.SymbolForgotten, "frequency left out"), IsSlow(kind) ? right * Expression.Of(Symbol.Frequency) : null);
            if (kind is FormKind.SlowSwitchingLoss or FormKind.FastSwitchingLoss)
            {
                yield return (Slipped(SlipKind.SymbolForgotten, "current not squared"), right * Expression.Of(Symbol.LoadCurrent, -1));
                yield return (Slipped(SlipKind.SymbolForgotten, "current left out: the impedance, not the loss"), right * Expression.Of(Symbol.LoadCurrent, -2));
            }
        }

        yield return (Slipped(SlipKind.SignFlipped, "sign flipped"), -right);
        foreach ((Fraction factor, string words) in WideSlips.Factors)
        {
            string cause = !IsSlow(kind) ? string.Empty
                : factor == 2 ? ": the half of a²/2 left out, or half a period taken for the period"
                : factor == new Fraction(1, 2) ? ": the half of a²/2 taken twice, or the period for half of it"
                : string.Empty;
            yield return (Slipped(SlipKind.Factor, words + cause), Expression.Of(factor) * right);
        }
    }

    private static Slip Slipped(SlipKind kind, string description) => new(kind, description, []);

    private IEnumerable<(Slip Slip, Fraction[] Duties)> OtherDuties()
    {
        Fraction[] duties = [.. scope.Converter.Phases.Select(p => p.Duty)];
        foreach ((int i, int k) in WideSlips.PhasePairs(duties.Length))
        {
            Fraction[] swapped = [.. duties];
            (swapped[i], swapped[k]) = (duties[k], duties[i]);
            yield return (Slipped(SlipKind.WrongDuties, $"duties of phases {i + 1} and {k + 1} exchanged"), swapped);
        }

        yield return (Slipped(SlipKind.WrongDuties, "as if all phases lasted equally long"), [.. duties.Select(_ => new Fraction(1, duties.Length))]);
    }

    private static bool IsSlow(FormKind kind) => kind is FormKind.SlowSwitchingLimit or FormKind.SlowSwitchingLoss;

    // Null where a coefficient is no fraction.
    private Expression? Form(FormKind kind, Func<Statement, Quantity> coefficient, Shape shape)
    {
        if (kind == FormKind.OutputVoltage)
        {
            return _forms.OutputVoltage.Expression;
        }

        StatementKind part = IsSlow(kind) ? StatementKind.SlowCoefficient : StatementKind.FastCoefficient;
        Expression perFrequency = Expression.Of(Symbol.Frequency, -1);
        IEnumerable<(string Name, Expression Factor)> elements = IsSlow(kind)
            ? scope.Converter.Capacitors.Select(c => (c.Name, Expression.Of(Symbol.Capacitance(c.Name), -1) * perFrequency))
            : scope.Converter.Switches.Select(s => (s.Name, Expression.Of(Symbol.OnResistance(s.Name))))
                .Concat(scope.Converter.Capacitors.Where(shape.HasSeriesResistance).Select(c => (c.Name, Expression.Of(Symbol.SeriesResistance(c.Name)))));
        List<Expression> terms = [];
        foreach ((string name, Expression factor) in elements)
        {
            if (!coefficient(scope.Whole(part, name, 0)).TryGetFraction(out Fraction exact))
            {
                return null;
            }

            terms.Add(Expression.Of(exact) * factor);
        }

        Expression sum = Expression.Sum(terms);
        sum = shape.IsEqual ? sum.WithEqualComponents() : sum;
        return kind is FormKind.SlowSwitchingLoss or FormKind.FastSwitchingLoss ? Expression.Of(Symbol.LoadCurrent, 2) * sum : sum;
    }

    private sealed record Shape(Func<Capacitor, bool> HasSeriesResistance, bool IsEqual);
}
