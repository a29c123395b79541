using Fractions;

namespace ScNet.Derivations.Checking;

/// <summary>What a statement would say if one slip had been made.</summary>
internal sealed class SlipValues(Workbench bench)
{
    private readonly Quantity _inputCharge = Enumerable.Range(0, bench.Scope.Converter.Phases.Count)
        .Aggregate(Quantity.Zero, (sum, j) => QuantityArithmetic.Add(sum, bench.TruthOf(bench.Unknowns.Input(j))));

    private readonly NamedList<Phase> _phases = bench.Scope.Converter.Phases;

    /// <summary>What the converter would have with equal capacitors and equal switches; null where topology decides alone.</summary>
    public Func<Statement, Quantity>? WithEqualParts { get; } = EqualParts(bench);

    public static bool IsCharge(Statement s) => s.Kind is StatementKind.CapacitorCharge or StatementKind.SwitchCharge
        or StatementKind.InputCharge or StatementKind.OutputCharge;

    public static bool IsVoltage(Statement s) => s.Kind is StatementKind.CapacitorVoltage or StatementKind.BlockingVoltage
        or StatementKind.PeakBlockingVoltage;

    public static bool IsCoefficient(Statement s) => s.Kind is StatementKind.SlowCoefficient or StatementKind.FastCoefficient;

    public Quantity Right(Statement s) => bench.Truth.Of(s.Subject);

    public Quantity Negated(Statement s) => IsCoefficient(s) ? Right(s) : -Right(s);

    public Quantity Magnitude(Statement s) => QuantityArithmetic.Abs(Right(s));

    public Quantity PerInput(Statement s) => IsCharge(s) ? QuantityArithmetic.Divide(Right(s), _inputCharge)
        : IsCoefficient(s) ? QuantityArithmetic.Divide(QuantityArithmetic.Divide(Right(s), _inputCharge), _inputCharge)
        : Right(s);

    public Quantity NegatedPerInput(Statement s) => IsCharge(s) ? -PerInput(s) : PerInput(s);

    public Quantity PerOutput(Statement s) => IsVoltage(s) ? QuantityArithmetic.Divide(Right(s), bench.Scope.Analysis.Ratio) : Right(s);

    public Quantity Inverted(Statement s) => QuantityArithmetic.Divide(1, Right(s));

    public Func<Statement, Quantity> Times(Fraction factor) => s => QuantityArithmetic.Multiply(Right(s), factor);

    /// <summary>The value of the phase that stands in the place of the statement's own.</summary>
    public Func<Statement, Quantity> OfPhase(Func<int, int> phase) => s => s.Phase is null
        ? Right(s)
        : bench.Truth.Of(s.Subject with { Phase = phase(s.Subject.Phase) });

    /// <summary>A coefficient with the charges themselves in the place of their squares.</summary>
    public Quantity NotSquared(Statement s) => Sum(s, QuantityArithmetic.Abs, Weight);

    public Quantity DutyForgotten(Statement s) => s.Kind == StatementKind.FastCoefficient
        ? Sum(s, q => QuantityArithmetic.Multiply(q, q), (_, _) => Fraction.One)
        : Right(s);

    /// <summary>A coefficient of the fast-switching limit with other duties.</summary>
    public Func<Statement, Quantity> WithDuties(Fraction[] duties) => s => s.Kind == StatementKind.FastCoefficient
        ? Sum(s, q => QuantityArithmetic.Multiply(q, q), (_, j) => Fraction.One / duties[j])
        : Right(s);

    private static Func<Statement, Quantity>? EqualParts(Workbench bench)
    {
        if (bench.Truth.HasExactFlow)
        {
            return null;
        }

        Converter equal = bench.Scope.Converter.WithValues(
            [.. bench.Scope.Converter.Capacitors.Select(_ => 1.0)], [.. bench.Scope.Converter.Switches.Select(_ => 1.0)]);
        Truth truth = new(bench.Scope.Analysis.WithValuesOf(equal));
        return s => truth.Of(s.Subject);
    }

    private Fraction Weight(Statement s, int phase) =>
        s.Kind == StatementKind.SlowCoefficient ? new Fraction(1, 2) : Fraction.One / _phases[phase].Duty;

    private Quantity Sum(Statement s, Func<Quantity, Quantity> term, Func<Statement, int, Fraction> weight) =>
        _phases.Select((_, j) => QuantityArithmetic.Multiply(
                term(bench.TruthOf(s.Subject.IsCapacitor ? bench.Unknowns.Capacitor(s.Subject.Element, j) : bench.Unknowns.Switch(s.Subject.Element, j))),
                weight(s, j)))
            .Aggregate(Quantity.Zero, QuantityArithmetic.Add);
}
