using Fractions;

namespace ScNet.Derivations.Tests;

/// <summary>A right derivation with one slip put in, and the kinds of slip by which that may be named.</summary>
internal sealed record Mutation(string Name, SlipKind Kind, Derivation Derivation, IReadOnlyCollection<Statement> Changed);

/// <summary>Slips put into right derivations, each as a person would make it.</summary>
internal static class Mutations
{
    private static readonly (string Name, SlipKind Kind, Func<Random, Derivation, Func<Statement, Fraction>> Make)[] s_all =
    [
        ("one sign", SlipKind.SignFlipped, OneSign),
        ("terminals", SlipKind.TerminalsReversed, (random, d) => OnElement(random, d, s => s.Kind is not (StatementKind.SlowCoefficient or StatementKind.FastCoefficient), Negated)),
        ("all signs", SlipKind.SignsFlipped, (_, d) => Where(d, IsCharge, Negated)),
        ("signs of capacitors", SlipKind.SignsFlipped, (_, d) => Where(d, s => s.Kind == StatementKind.CapacitorCharge, Negated)),
        ("signs dropped", SlipKind.SignsDropped, (_, d) => Where(d, IsCharge, s => Value(s).Abs())),
        ("per input charge", SlipKind.PerInputCharge, (_, d) => PerInput(d)),
        ("per volt of output", SlipKind.PerOutputVoltage, (_, d) => PerOutput(d)),
        ("phases swapped", SlipKind.PhasesSwapped, (_, d) => Where(d, s => s.Phase is not null, s => OtherPhase(d, s))),
        ("phases of one element swapped", SlipKind.PhasesSwapped, (random, d) => OnElement(random, d, s => s.Phase is not null, s => OtherPhase(d, s))),
        ("wrong phase", SlipKind.WrongPhase, WrongPhase),
        ("elements swapped", SlipKind.ElementsSwapped, ElementsSwapped),
        ("factor 1/2 forgotten", SlipKind.Factor, (random, d) => OnElement(random, d, IsCoefficient, s => 2 * Value(s))),
        ("factor 1/2 used twice", SlipKind.Factor, (random, d) => OnElement(random, d, IsCoefficient, s => Value(s) / 2)),
        ("all charges doubled", SlipKind.Factor, (_, d) => Where(d, IsCharge, s => 2 * Value(s))),
        ("not squared", SlipKind.NotSquared, (random, d) => OnElement(random, d, s => s.Kind == StatementKind.SlowCoefficient, s => NotSquared(d, s))),
        ("duty forgotten", SlipKind.DutyForgotten, (_, d) => Where(d, s => s.Kind == StatementKind.FastCoefficient, s => Value(s) / 2)),
        ("ratio inverted", SlipKind.RatioInverted, (_, d) => Where(d, s => s.Kind == StatementKind.Ratio, s => 1 / Value(s))),
    ];

    public static int Count => s_all.Length;

    /// <summary>A mutation of the given number; null where it changes nothing in this derivation.</summary>
    public static Mutation? Of(int number, Random random, Derivation right)
    {
        (string name, SlipKind kind, Func<Random, Derivation, Func<Statement, Fraction>> make) = s_all[number];
        Func<Statement, Fraction> value = make(random, right);
        Derivation changed = Restated.With(right, s => value(s));
        Statement[] wrong = [.. changed.Statements.Where((s, k) => s != right.Statements[k])];
        return wrong.Length == 0 ? null : new Mutation(name, kind, changed, wrong);
    }

    private static Fraction Value(Statement s) => s.Value.Value.ToFraction();

    private static Fraction Negated(Statement s) => -Value(s);

    private static bool IsCharge(Statement s) => s.Kind is StatementKind.InputCharge or StatementKind.OutputCharge
        or StatementKind.CapacitorCharge or StatementKind.SwitchCharge;

    private static bool IsCoefficient(Statement s) => s.Kind is StatementKind.SlowCoefficient or StatementKind.FastCoefficient;

    private static Func<Statement, Fraction> Where(Derivation d, Func<Statement, bool> scope, Func<Statement, Fraction> change)
    {
        HashSet<Statement> touched = [.. d.Statements.Where(scope)];
        return s => touched.Contains(s) ? change(s) : Value(s);
    }

    private static Func<Statement, Fraction> OnElement(Random random, Derivation d, Func<Statement, bool> scope, Func<Statement, Fraction> change)
    {
        string[] names = [.. d.Statements.Where(s => s.Element is not null && scope(s)).Select(s => s.Element!).Distinct()];
        string name = names[random.Next(names.Length)];
        return Where(d, s => s.Element == name && scope(s), change);
    }

    private static Func<Statement, Fraction> OneSign(Random random, Derivation d)
    {
        Statement[] candidates = [.. d.Statements.Where(s => s.Phase is not null && !Value(s).IsZero)];
        Statement one = candidates[random.Next(candidates.Length)];
        return s => s == one ? -Value(s) : Value(s);
    }

    private static Func<Statement, Fraction> WrongPhase(Random random, Derivation d)
    {
        Statement[] candidates = [.. d.Statements.Where(s => s.Phase is not null && OtherPhase(d, s) != Value(s))];
        Statement one = candidates[random.Next(candidates.Length)];
        return s => s == one ? OtherPhase(d, s) : Value(s);
    }

    private static Fraction OtherPhase(Derivation d, Statement s) =>
        Value(d.Statements.First(o => o.Kind == s.Kind && o.Element == s.Element && o.Phase == 3 - s.Phase));

    private static Func<Statement, Fraction> PerInput(Derivation d)
    {
        Fraction input = d.Statements.Where(s => s.Kind == StatementKind.InputCharge).Aggregate(Fraction.Zero, (sum, s) => sum + Value(s));
        return s => IsCharge(s) ? Value(s) / input : IsCoefficient(s) ? Value(s) / (input * input) : Value(s);
    }

    private static Func<Statement, Fraction> PerOutput(Derivation d)
    {
        Fraction ratio = Value(d.Statements.First(s => s.Kind == StatementKind.Ratio));
        return Where(
            d,
            s => s.Kind is StatementKind.CapacitorVoltage or StatementKind.BlockingVoltage or StatementKind.PeakBlockingVoltage,
            s => Value(s) / ratio);
    }

    private static Func<Statement, Fraction> ElementsSwapped(Random random, Derivation d)
    {
        bool capacitors = random.Next(2) == 0;
        string[] names = [.. d.Statements.Where(s => s.Kind == (capacitors ? StatementKind.CapacitorCharge : StatementKind.SwitchCharge)).Select(s => s.Element!).Distinct()];
        string a = names[random.Next(names.Length)], b = names[random.Next(names.Length)];
        return s => s.Element != a && s.Element != b ? Value(s)
            : Value(d.Statements.First(o => o.Kind == s.Kind && o.Phase == s.Phase && o.Element == (s.Element == a ? b : a)));
    }

    private static Fraction NotSquared(Derivation d, Statement s) =>
        d.Statements.Where(o => o.Kind == StatementKind.CapacitorCharge && o.Element == s.Element)
            .Aggregate(Fraction.Zero, (sum, o) => sum + Value(o).Abs()) / 2;
}
