using Fractions;
using ScNet.Analysis;

namespace ScNet.Derivations.Expressions;

/// <summary>
/// Ratio, capacitor voltages and inductor currents of a mode as exact functions of the duties, as far as averages over the
/// period fix them: for regulation, where the duty is the handle.
/// </summary>
/// <remarks>
/// Loops of held voltages hold without durations and are eliminated first; one equation per held current is left, with
/// polynomials of the durations. Equations: docs/theory/functions-of-duties.md. Cost: the elimination of a mode, and products of
/// polynomials in proportion to the cube of the number of held currents.
/// </remarks>
public sealed class DutyForms
{
    private readonly ModeAnalysis _analysis;
    private readonly Polynomials _polynomials = new();
    private readonly bool _isFree;
    private readonly DutyEquations? _flow;
    private readonly DutyEquations? _held;
    private readonly PolynomialEquations? _voltages;
    private readonly PolynomialEquations? _currents;

    private DutyForms(ModeAnalysis analysis, Expression[] durations, bool isFree)
    {
        (_analysis, Durations, _isFree) = (analysis, durations, isFree);
        try
        {
            _flow = new DutyEquations(analysis, durations, [], _polynomials);
            (int Capacitor, Fraction Voltage)[] controlled = ControlledCapacitors.Of(analysis.Converter);
            _held = controlled.Length == 0 ? _flow : new DutyEquations(analysis, durations, controlled, _polynomials);
            (_voltages, _currents) = (_held.Voltages(), _flow.Currents());
        }
        catch (PolynomialLimitException)
        {
            (_voltages, _currents) = (null, null);
        }

        Ratio = Voltage(new Symbol(SymbolKind.Ratio), analysis.Converter.Network.OutputBranch, Expression.Of(Fraction.One));
    }

    /// <summary>The mode that they are of.</summary>
    internal ModeAnalysis Analysis => _analysis;

    /// <summary>The duration of each phase as a share of the period.</summary>
    public IReadOnlyList<Expression> Durations { get; }

    /// <summary>The ideal conversion ratio M.</summary>
    public DutyForm Ratio { get; }

    /// <summary>Functions of the duties of all phases, D1, D2, …, each free but for their sum, which is 1.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <remarks>Of the ways to write a function that the sum allows, a short one is taken: 1/D2, not 1/(1 - D1).</remarks>
    public static DutyForms Of(ModeAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return new DutyForms(analysis, FreeDuties.Of(analysis.Converter.Phases.Count), isFree: true);
    }

    /// <summary>Functions of one duty D, that of a phase; the others share the rest of the period in the proportion that they have.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="phaseNumber">The number of the phase, from 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The converter has no such phase.</exception>
    public static DutyForms Of(ModeAnalysis analysis, int phaseNumber)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        Fraction[] duties = analysis.Converter.Network.Duties;
        ArgumentOutOfRangeException.ThrowIfLessThan(phaseNumber, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(phaseNumber, duties.Length);
        Expression own = Expression.Of(Symbol.Duty), rest = Expression.Of(Fraction.One) - own;
        return new DutyForms(
            analysis,
            [.. duties.Select((d, j) => j == phaseNumber - 1 ? own : rest * Expression.Of(d / (Fraction.One - duties[phaseNumber - 1])))],
            isFree: false);
    }

    /// <summary>Functions of duties by which the durations of all phases are given.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="durations">The duration of each phase, such as "D" and "1 - D": sums of products of <see cref="Symbol.Duty"/> and <see cref="Symbol.DutyOf"/>.</param>
    /// <exception cref="ArgumentException">There is not one duration per phase, their sum is not 1, or one has another symbol or divides by one.</exception>
    public static DutyForms Of(ModeAnalysis analysis, params IReadOnlyList<Expression> durations)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(durations);
        int phases = analysis.Converter.Phases.Count;
        if (durations.Count != phases || !Expression.Sum(durations).Equals(Expression.Of(Fraction.One))
            || durations.Any(d => d.Terms.Any(t => t.Factors.Any(f => f.Power < 0 || f.Symbol.Kind != SymbolKind.Duty))))
        {
            throw new ArgumentException(
                $"Expected the durations of {phases} phases as sums of products of duties (D, D1, D2, …) that together make 1, but got {string.Join(", ", durations)}.", nameof(durations));
        }

        return new DutyForms(analysis, [.. durations], isFree: false);
    }

    /// <summary>The voltage of a capacitor without load, positive plate minus bottom plate.</summary>
    /// <param name="capacitor">The name of the capacitor.</param>
    /// <exception cref="ArgumentException">The converter has no such capacitor.</exception>
    public DutyForm CapacitorVoltage(string capacitor) => Voltage(
        new Symbol(SymbolKind.ElementVoltage, capacitor), _analysis.Converter.Capacitors.PositionOf(capacitor), Expression.Of(Symbol.InputVoltage));

    /// <summary>The average current of an inductor, first terminal to second, with a load current and nothing else.</summary>
    /// <param name="inductor">The name of the inductor.</param>
    /// <exception cref="ArgumentException">The converter has no such inductor.</exception>
    public DutyForm InductorCurrent(string inductor)
    {
        Symbol symbol = new(SymbolKind.InductorCurrent, inductor);
        int branch = _analysis.Converter.Network.FirstInductorBranch + _analysis.Converter.Inductors.PositionOf(inductor);
        if (_flow is null || _currents is null)
        {
            return new DutyForm(symbol, DutyFormOutcome.TooLong, null);
        }

        // the meshes through an inductor may be open one by one where their sum is not
        Expression[] weights = [.. Enumerable.Repeat(Expression.Zero, _flow.MeshCount)];
        foreach ((int mesh, int amount, Expression share) in _flow.Passes(branch))
        {
            weights[mesh] = share * Expression.Of(new Fraction(amount));
        }

        return Guarded(symbol, _currents, Expression.Of(Symbol.LoadCurrent), () => _currents.Sum(Fraction.Zero, weights));
    }

    /// <summary>The ratio.</summary>
    public override string ToString() => Ratio.ToString();

    private DutyForm Voltage(Symbol symbol, int branch, Expression unit)
    {
        if (_held is null || _voltages is null)
        {
            return new DutyForm(symbol, DutyFormOutcome.TooLong, null);
        }

        (Fraction constant, Expression[] weights) = _held.Voltage(branch);
        return Guarded(symbol, _voltages, unit, () => _voltages.Sum(constant, weights));
    }

    private DutyForm Guarded(Symbol symbol, PolynomialEquations equations, Expression unit, Func<Expression?> numerator)
    {
        if (equations.IsContradictory)
        {
            return new DutyForm(symbol, DutyFormOutcome.NeedsTiedDuties, null);
        }

        try
        {
            return numerator() is { } above
                ? new DutyForm(symbol, DutyFormOutcome.Exact, Quotient(above, equations.Pivot, unit))
                : new DutyForm(symbol, DutyFormOutcome.Undetermined, null);
        }
        catch (PolynomialLimitException)
        {
            return new DutyForm(symbol, DutyFormOutcome.TooLong, null);
        }
    }

    private RationalExpression Quotient(Expression numerator, Expression denominator, Expression unit)
    {
        (Expression above, Expression below) = _polynomials.Reduced(numerator, denominator);
        if (_isFree)
        {
            int phases = Durations.Count;
            (above, below) = Polynomials.Whole(
                FreeDuties.Shortest(_polynomials, above, phases), FreeDuties.Shortest(_polynomials, below, phases));
        }

        return new RationalExpression(above * unit, below);
    }
}
