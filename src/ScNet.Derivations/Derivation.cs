using System.Collections.Immutable;
using ScNet.Analysis;
using ScNet.Derivations.Checking;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations;

/// <summary>
/// What was derived by hand for one mode of a converter, all of it or any part, to be checked against
/// Kirchhoff's laws. Immutable: every method returns a new derivation with one statement more.
/// </summary>
/// <remarks>
/// Charges are per unit of output charge, voltages per volt of input; signs as in <see cref="ChargeFlow"/>,
/// <see cref="IdealPoint"/> and <see cref="BlockingVoltages"/>. A name or a phase that the converter does
/// not have is an <see cref="ArgumentException"/> at once; a wrong value never throws.
/// </remarks>
/// <example><code>
/// DerivationReport report = Derivation.Of(converter)
///     .Ratio("1/2")
///     .Capacitor("fly", "1/2", "-1/2")
///     .CapacitorVoltage("fly", "1/2")
///     .Check();
/// Assert.True(report.IsRight, report.ToString());
/// </code></example>
public sealed class Derivation : IEquatable<Derivation>
{
    /// <summary>The relative tolerance for numbers, where none is given.</summary>
    public const double DefaultTolerance = 1e-6;

    private readonly DerivationScope _scope;
    private readonly ImmutableList<Statement> _statements;

    private readonly ImmutableList<FormStatement> _forms;

    private Derivation(DerivationScope scope, ImmutableList<Statement> statements, ImmutableList<FormStatement> forms, double tolerance)
    {
        _forms = forms;
        _scope = scope;
        _statements = statements;
        Tolerance = tolerance;
    }

    /// <summary>The converter.</summary>
    public Converter Converter => _scope.Converter;

    /// <summary>The mode.</summary>
    public Mode Mode => _scope.Outcome.Mode;

    /// <summary>What is stated, in the order in which it was stated.</summary>
    public IReadOnlyList<Statement> Statements => _statements;

    /// <summary>The closed forms that are stated, in the order in which they were stated.</summary>
    public IReadOnlyList<FormStatement> Forms => _forms;

    /// <summary>The relative tolerance within which numbers are compared. Fractions are compared exactly.</summary>
    public double Tolerance { get; }

    /// <summary>An empty derivation for the only mode of a converter.</summary>
    /// <exception cref="ArgumentException">The converter has several modes.</exception>
    public static Derivation Of(Converter converter)
    {
        ArgumentNullException.ThrowIfNull(converter);
        return Of(ModeAnalysis.Try(converter, converter.OnlyMode(nameof(converter))));
    }

    /// <summary>An empty derivation for a mode of a converter.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">The name of the mode.</param>
    /// <exception cref="ArgumentException">The converter has no such mode.</exception>
    public static Derivation Of(Converter converter, string mode)
    {
        ArgumentNullException.ThrowIfNull(converter);
        return Of(ModeAnalysis.Try(converter, converter.Modes[mode]));
    }

    /// <summary>An empty derivation for a mode that is analysed already.</summary>
    public static Derivation Of(ModeAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return Of(analysis.Outcome);
    }

    /// <summary>An empty derivation for a mode that was analysed already, with or without a result.</summary>
    /// <exception cref="ScNetException">The converter has inductors.</exception>
    public static Derivation Of(ModeOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        InductorSupport.Refuse(outcome.Converter, "Checking a derivation");
        return new Derivation(new DerivationScope(outcome), [], [], DefaultTolerance);
    }

    /// <summary>The same derivation with another relative tolerance for numbers.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not from 0 to below 1.</exception>
    public Derivation WithTolerance(double tolerance) => tolerance is >= 0 and < 1
        ? new Derivation(_scope, _statements, _forms, tolerance)
        : throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "Expected a relative tolerance from 0 to below 1.");

    /// <summary>States the ideal conversion ratio.</summary>
    public Derivation Ratio(StatedValue ratio) => Add([_scope.Whole(StatementKind.Ratio, null, ratio)]);

    /// <summary>States the charge that leaves the input source, phase 1 first.</summary>
    /// <exception cref="ArgumentException">There is not one value for each phase.</exception>
    public Derivation Input(params StatedValue[] charges) => Add(_scope.Phases(StatementKind.InputCharge, null, charges));

    /// <summary>States the charge that leaves the input source in one phase, numbered from 1.</summary>
    /// <exception cref="ArgumentException">The converter has no such phase.</exception>
    public Derivation InputInPhase(int phase, StatedValue charge) => Add([_scope.Phase(StatementKind.InputCharge, null, phase, charge)]);

    /// <summary>States the charge that enters the load, phase 1 first.</summary>
    /// <exception cref="ArgumentException">There is not one value for each phase.</exception>
    public Derivation Output(params StatedValue[] charges) => Add(_scope.Phases(StatementKind.OutputCharge, null, charges));

    /// <summary>States the charge that enters the load in one phase, numbered from 1.</summary>
    /// <exception cref="ArgumentException">The converter has no such phase.</exception>
    public Derivation OutputInPhase(int phase, StatedValue charge) => Add([_scope.Phase(StatementKind.OutputCharge, null, phase, charge)]);

    /// <summary>States the charge multipliers of a capacitor, phase 1 first.</summary>
    /// <param name="name">The capacitor.</param>
    /// <param name="charges">Charge into its first terminal, one value for each phase.</param>
    /// <exception cref="ArgumentException">There is no such capacitor, or not one value for each phase.</exception>
    public Derivation Capacitor(string name, params StatedValue[] charges) => Add(_scope.Phases(StatementKind.CapacitorCharge, name, charges));

    /// <summary>States the charge multiplier of a capacitor in one phase.</summary>
    /// <param name="name">The capacitor.</param>
    /// <param name="phase">The phase number, from 1.</param>
    /// <param name="charge">Charge into its first terminal.</param>
    /// <exception cref="ArgumentException">There is no such capacitor or phase.</exception>
    public Derivation CapacitorInPhase(string name, int phase, StatedValue charge) => Add([_scope.Phase(StatementKind.CapacitorCharge, name, phase, charge)]);

    /// <summary>States the charge multipliers of a switch, phase 1 first.</summary>
    /// <param name="name">The switch.</param>
    /// <param name="charges">Charge from its first terminal to its second, one value for each phase.</param>
    /// <exception cref="ArgumentException">There is no such switch, or not one value for each phase.</exception>
    public Derivation Switch(string name, params StatedValue[] charges) => Add(_scope.Phases(StatementKind.SwitchCharge, name, charges));

    /// <summary>States the charge multiplier of a switch in one phase.</summary>
    /// <param name="name">The switch.</param>
    /// <param name="phase">The phase number, from 1.</param>
    /// <param name="charge">Charge from its first terminal to its second.</param>
    /// <exception cref="ArgumentException">There is no such switch or phase.</exception>
    public Derivation SwitchInPhase(string name, int phase, StatedValue charge) => Add([_scope.Phase(StatementKind.SwitchCharge, name, phase, charge)]);

    /// <summary>States the voltage of a capacitor, positive plate minus bottom plate.</summary>
    /// <exception cref="ArgumentException">There is no such capacitor.</exception>
    public Derivation CapacitorVoltage(string name, StatedValue voltage) => Add([_scope.Whole(StatementKind.CapacitorVoltage, name, voltage)]);

    /// <summary>States the voltage across a switch, first terminal minus second, phase 1 first; 0 where it is closed.</summary>
    /// <exception cref="ArgumentException">There is no such switch, or not one value for each phase.</exception>
    public Derivation Blocking(string name, params StatedValue[] voltages) => Add(_scope.Phases(StatementKind.BlockingVoltage, name, voltages));

    /// <summary>States the voltage across a switch in one phase, numbered from 1.</summary>
    /// <exception cref="ArgumentException">There is no such switch or phase.</exception>
    public Derivation BlockingInPhase(string name, int phase, StatedValue voltage) => Add([_scope.Phase(StatementKind.BlockingVoltage, name, phase, voltage)]);

    /// <summary>States the blocking voltage of the largest magnitude of a switch, with its sign.</summary>
    /// <exception cref="ArgumentException">There is no such switch.</exception>
    public Derivation PeakBlocking(string name, StatedValue voltage) => Add([_scope.Whole(StatementKind.PeakBlockingVoltage, name, voltage)]);

    /// <summary>States the coefficient of a capacitor in the slow-switching limit.</summary>
    /// <exception cref="ArgumentException">There is no such capacitor.</exception>
    public Derivation SlowCoefficient(string name, StatedValue coefficient) => Add([_scope.Whole(StatementKind.SlowCoefficient, name, coefficient)]);

    /// <summary>States the coefficient of a switch, or of a capacitor's series resistance, in the fast-switching limit.</summary>
    /// <exception cref="ArgumentException">There is no such element.</exception>
    public Derivation FastCoefficient(string name, StatedValue coefficient) => Add([_scope.Whole(StatementKind.FastCoefficient, name, coefficient)]);

    /// <summary>States the output voltage without load as a closed form.</summary>
    /// <param name="expression">Text as <see cref="Expression.Parse"/> reads it: "1/3*V_in".</param>
    /// <exception cref="FormatException">The text is no expression.</exception>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation OutputVoltage(string expression) => OutputVoltage(Expression.Parse(expression));

    /// <summary>States the output voltage without load as a closed form.</summary>
    /// <param name="expression">The expression.</param>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation OutputVoltage(Expression expression) => Add(FormKind.OutputVoltage, expression);

    /// <summary>States the slow-switching limit of the output impedance as a closed form.</summary>
    /// <param name="expression">Text as <see cref="Expression.Parse"/> reads it: "1/(9*C_fly1*f) + 1/(9*C_fly2*f)", or "2/(9*C*f)" for equal components.</param>
    /// <exception cref="FormatException">The text is no expression.</exception>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation SlowSwitchingLimit(string expression) => SlowSwitchingLimit(Expression.Parse(expression));

    /// <summary>States the slow-switching limit of the output impedance as a closed form.</summary>
    /// <param name="expression">The expression.</param>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation SlowSwitchingLimit(Expression expression) => Add(FormKind.SlowSwitchingLimit, expression);

    /// <summary>States the fast-switching limit of the output impedance as a closed form.</summary>
    /// <param name="expression">Text as <see cref="Expression.Parse"/> reads it: "2/9*R_s1 + 2/9*R_s2", or "14/9*R" for equal components.</param>
    /// <exception cref="FormatException">The text is no expression.</exception>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation FastSwitchingLimit(string expression) => FastSwitchingLimit(Expression.Parse(expression));

    /// <summary>States the fast-switching limit of the output impedance as a closed form.</summary>
    /// <param name="expression">The expression.</param>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation FastSwitchingLimit(Expression expression) => Add(FormKind.FastSwitchingLimit, expression);

    /// <summary>States the power lost in the slow-switching limit as a closed form.</summary>
    /// <param name="expression">Text as <see cref="Expression.Parse"/> reads it: "I_out^2*2/(9*C*f)".</param>
    /// <exception cref="FormatException">The text is no expression.</exception>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation SlowSwitchingLoss(string expression) => SlowSwitchingLoss(Expression.Parse(expression));

    /// <summary>States the power lost in the slow-switching limit as a closed form.</summary>
    /// <param name="expression">The expression.</param>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation SlowSwitchingLoss(Expression expression) => Add(FormKind.SlowSwitchingLoss, expression);

    /// <summary>States the power lost in the fast-switching limit as a closed form.</summary>
    /// <param name="expression">Text as <see cref="Expression.Parse"/> reads it: "14/9*I_out^2*R".</param>
    /// <exception cref="FormatException">The text is no expression.</exception>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation FastSwitchingLoss(string expression) => FastSwitchingLoss(Expression.Parse(expression));

    /// <summary>States the power lost in the fast-switching limit as a closed form.</summary>
    /// <param name="expression">The expression.</param>
    /// <exception cref="ArgumentException">A symbol is none of the converter's components, f, V_in or I_out.</exception>
    public Derivation FastSwitchingLoss(Expression expression) => Add(FormKind.FastSwitchingLoss, expression);

    /// <summary>
    /// Compares every statement with the analysis. Never throws for a wrong derivation. Cost: linear in the
    /// size of the converter and in the number of statements; a finding that is asked for its broken equation or
    /// conflict costs what the laws near it do, that of a node with many elements all of these.
    /// </summary>
    public DerivationReport Check() => DerivationCheck.Run(Statements, Forms, Tolerance, _scope);

    /// <summary>Whether both are about the same converter and mode and state the same in the same order.</summary>
    public bool Equals(Derivation? other) => other is not null && ReferenceEquals(Converter, other.Converter)
        && ReferenceEquals(Mode, other.Mode) && Tolerance.Equals(other.Tolerance)
        && _statements.SequenceEqual(other._statements) && _forms.SequenceEqual(other._forms);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Derivation);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Mode.Name, _statements.Count, _forms.Count, _statements.IsEmpty ? null : _statements[0]);

    /// <summary>The converter and every statement, one on a line.</summary>
    public override string ToString() =>
        string.Join('\n', [$"{_scope.Title}, {_statements.Count + _forms.Count} statements", .. _statements.Select(s => $"  {s}"), .. _forms.Select(f => $"  {f}")]);

    private Derivation Add(IEnumerable<Statement> statements) => new(_scope, _statements.AddRange(statements), _forms, Tolerance);

    private Derivation Add(FormKind kind, Expression expression) => new(_scope, _statements, _forms.Add(_scope.Form(kind, expression)), Tolerance);
}
