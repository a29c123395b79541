using Fractions;

namespace ScNet.Derivations.Checking;

/// <summary>Values that follow from others by a formula instead of a linear equation: coefficients of the limits, and peaks.</summary>
internal static class LimitCheck
{
    public static Explanation Explain(Workbench bench, Statement statement)
    {
        Quantity derived = bench.Truth.Of(statement.Subject);
        if (!derived.IsDetermined || !bench.AreEqual(derived, Formula(bench, statement, Parts(bench, statement, useStated: false))))
        {
            // not determined, or of the flow of the other limit
            return new Explanation(null, derived, null);
        }

        (int Unknown, Quantity Value, bool IsStated)[] parts = Parts(bench, statement, useStated: true);
        Quantity follows = Formula(bench, statement, parts);
        if (bench.AreEqual(follows, statement.Value.Value))
        {
            // the formula is used well, on wrong values
            parts = Parts(bench, statement, useStated: false);
            follows = Formula(bench, statement, parts);
        }

        bool isAllStated = parts.All(p => p.IsStated);
        Conflict conflict = new(
            [statement, .. parts.Where(p => isAllStated).Select(p => bench.StatedOf(p.Unknown)!)], [Name(statement)]);
        return new Explanation($"{Name(statement)}: {Numbers(bench, statement, parts)} = {follows}", isAllStated ? follows : derived, conflict);
    }

    /// <summary>What the formula gives with the stated charges or voltages of the element, derived ones where none are stated.</summary>
    public static Quantity FromStated(Workbench bench, Statement statement) => Formula(bench, statement, Parts(bench, statement, useStated: true));

    private static (int Unknown, Quantity Value, bool IsStated)[] Parts(Workbench bench, Statement statement, bool useStated)
    {
        Subject subject = statement.Subject;
        return [.. Enumerable.Range(0, bench.Scope.Converter.Phases.Count).Select(j =>
        {
            int unknown = subject.Kind == StatementKind.PeakBlockingVoltage ? bench.Unknowns.Blocking(subject.Element, j)
                : subject.IsCapacitor ? bench.Unknowns.Capacitor(subject.Element, j)
                : bench.Unknowns.Switch(subject.Element, j);
            return useStated && bench.StatedOf(unknown) is { } stated
                ? (unknown, stated.Value.Value, true)
                : (unknown, bench.TruthOf(unknown), false);
        })];
    }

    private static Quantity Formula(Workbench bench, Statement statement, (int Unknown, Quantity Value, bool IsStated)[] parts)
    {
        if (statement.Kind == StatementKind.PeakBlockingVoltage)
        {
            return QuantityMagnitude.Peak([.. parts.Select(p => p.Value)]);
        }

        IEnumerable<Quantity> terms = parts.Select((p, j) => QuantityArithmetic.Multiply(
            QuantityArithmetic.Multiply(p.Value, p.Value), Weight(bench, statement, j)));
        return terms.Aggregate(Quantity.Zero, QuantityArithmetic.Add);
    }

    private static Fraction Weight(Workbench bench, Statement statement, int phase) => statement.Kind == StatementKind.SlowCoefficient
        ? new Fraction(1, 2)
        : Fraction.One / bench.Scope.Converter.Phases[phase].Duty;

    private static string Name(Statement statement) => statement.Kind switch
    {
        StatementKind.PeakBlockingVoltage => $"largest blocking voltage of {statement.Element}",
        StatementKind.SlowCoefficient => $"sum of a²/2 of {statement.Element}",
        _ => $"sum of a²/D of {statement.Element}",
    };

    private static string Numbers(Workbench bench, Statement statement, (int Unknown, Quantity Value, bool IsStated)[] parts)
    {
        string[] values = [.. parts.Select(p => p.IsStated ? $"({p.Value})" : $"[{p.Value}]")];
        return statement.Kind switch
        {
            StatementKind.PeakBlockingVoltage => $"of {string.Join(", ", parts.Select(p => p.IsStated ? $"{p.Value}" : $"[{p.Value}]"))}",
            StatementKind.SlowCoefficient => string.Join(" + ", values.Select(v => $"{v}²/2")),
            _ => string.Join(" + ", values.Select((v, j) => $"{v}²/({bench.Scope.Converter.Phases[j].Duty})")),
        };
    }
}
