using Fractions;
using ScNet.Analysis;

namespace ScNet.Derivations.Expressions;

/// <summary>
/// The results of a mode as expressions in the names of its elements: ratio, voltages, both limits of
/// the output impedance, and losses. What topology alone fixes has exact coefficients; what component
/// values decide is named as such, never guessed.
/// </summary>
/// <remarks>
/// R_SSL = Σ k / (C·f) with k = Σ a²/2, R_FSL = Σ k·R with k = Σ a²/D, windings of inductors included; see
/// docs/theory/exact-steady-state.md. A series resistance of 0 is left out. Cost: linear in elements
/// and phases, and in nodes and phases for all voltages, which are formed when asked for.
/// </remarks>
public sealed class ClosedForms
{
    private readonly ModeAnalysis _analysis;
    private readonly bool _hasEqualComponents;

    private ClosedForms(ModeAnalysis analysis, bool hasEqualComponents)
    {
        _analysis = analysis;
        _hasEqualComponents = hasEqualComponents;
        Ratio = Constant(new Symbol(SymbolKind.Ratio), analysis.Ratio);
        OutputVoltage = Voltage(new Symbol(SymbolKind.OutputVoltage), analysis.Ratio);
        SlowSwitchingLimit = Collected(Slow(SymbolKind.SlowSwitchingLimit, analysis, analysis.SlowSwitchingLimit.Coefficients));
        ChargeSharing = analysis.ChargeSharing is { } sharing ? Collected(Slow(SymbolKind.ChargeSharing, analysis, sharing.Coefficients)) : null;
        FastSwitchingLimit = Collected(Fast(analysis));
        SlowSwitchingLoss = Loss(SymbolKind.SlowSwitchingLoss, SlowSwitchingLimit);
        ChargeSharingLoss = ChargeSharing is null ? null : Loss(SymbolKind.ChargeSharingLoss, ChargeSharing);
        FastSwitchingLoss = Loss(SymbolKind.FastSwitchingLoss, FastSwitchingLimit);
    }

    /// <summary>The mode that they are of.</summary>
    internal ModeAnalysis Analysis => _analysis;

    /// <summary>The ideal conversion ratio M, a number.</summary>
    public ClosedForm Ratio { get; }

    /// <summary>The output voltage without load: V_out = M·V_in. With a current load it is the average over the period.</summary>
    public ClosedForm OutputVoltage { get; }

    /// <summary>The output impedance at low frequency with all charge taken as impulses, in ohms (Ω).</summary>
    public ClosedForm SlowSwitchingLimit { get; }

    /// <summary>
    /// What is left of <see cref="SlowSwitchingLimit"/> when inductors and a load current carry their share steadily, in
    /// ohms (Ω); null in a mode without either.
    /// </summary>
    public ClosedForm? ChargeSharing { get; }

    /// <summary>The output impedance at high frequency, in ohms (Ω).</summary>
    public ClosedForm FastSwitchingLimit { get; }

    /// <summary>
    /// Power in watts (W) lost where charge is redistributed among capacitors, when that is all that limits
    /// the output: I_out²·R_SSL. Not to be added to <see cref="FastSwitchingLoss"/>: each is a limit of the same loss.
    /// </summary>
    public ClosedForm SlowSwitchingLoss { get; }

    /// <summary>
    /// What is left of <see cref="SlowSwitchingLoss"/> when inductors and a load current carry their share steadily, in
    /// watts (W): I_out²·R_sharing; null in a mode without either.
    /// </summary>
    public ClosedForm? ChargeSharingLoss { get; }

    /// <summary>
    /// Power in watts (W) lost by conduction in switches and series resistances, when that is all that
    /// limits the output: I_out²·R_FSL.
    /// </summary>
    public ClosedForm FastSwitchingLoss { get; }

    /// <summary>The closed forms of a mode.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    public static ClosedForms Of(ModeAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return new ClosedForms(analysis, hasEqualComponents: false);
    }

    /// <summary>The closed forms for equal components: one C, one R, one ESR, and like terms collected.</summary>
    public ClosedForms WithEqualComponents() => new(_analysis, hasEqualComponents: true);

    /// <summary>The voltage of a capacitor without load, positive plate minus bottom plate.</summary>
    /// <param name="capacitor">The name of the capacitor.</param>
    /// <exception cref="ArgumentException">The converter has no such capacitor.</exception>
    public ClosedForm CapacitorVoltage(string capacitor) => Voltage(
        new Symbol(SymbolKind.ElementVoltage, capacitor),
        _analysis.IdealPoint.CapacitorVoltages[_analysis.Converter.Capacitors.PositionOf(capacitor)]);

    /// <summary>The potential of a node against the reference in a phase, without load.</summary>
    /// <param name="node">The name of the node.</param>
    /// <param name="phaseNumber">The phase number, from 1.</param>
    /// <exception cref="ArgumentException">The converter has no such node.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The converter has no such phase.</exception>
    public ClosedForm NodePotential(string node, int phaseNumber)
    {
        int position = _analysis.Converter.Nodes.PositionOf(node);
        return Voltage(new Symbol(SymbolKind.NodePotential, node, phaseNumber), _analysis.IdealPoint.NodePotentials[position][phaseNumber]);
    }

    /// <summary>The voltage that a switch blocks in a phase, first terminal minus second; zero where it is closed.</summary>
    /// <param name="name">The name of the switch.</param>
    /// <param name="phaseNumber">The phase number, from 1.</param>
    /// <exception cref="ArgumentException">The converter has no such switch.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The converter has no such phase.</exception>
    public ClosedForm BlockingVoltage(string name, int phaseNumber) => Voltage(
        new Symbol(SymbolKind.ElementVoltage, name, phaseNumber),
        _analysis.BlockingVoltages.Switches[_analysis.Converter.Switches.PositionOf(name)][phaseNumber]);

    /// <summary>The blocked voltage of the largest magnitude over all phases, the positive one on a tie.</summary>
    /// <param name="name">The name of the switch.</param>
    /// <exception cref="ArgumentException">The converter has no such switch.</exception>
    public ClosedForm PeakBlockingVoltage(string name) => Voltage(
        new Symbol(SymbolKind.ElementVoltage, name), _analysis.BlockingVoltages.Peaks[_analysis.Converter.Switches.PositionOf(name)]);

    /// <summary>
    /// The component values of the converter by the names of their symbols, in SI units, as
    /// <see cref="Expression.Evaluate(IReadOnlyDictionary{string, double})"/> takes them: a new dictionary at each
    /// call, to which frequency ("f"), input voltage ("V_in") and load current ("I_out") can be added.
    /// </summary>
    public Dictionary<string, double> ComponentValues()
    {
        Dictionary<string, double> values = new(StringComparer.Ordinal);
        foreach (Capacitor capacitor in _analysis.Converter.Capacitors)
        {
            values[Symbol.Capacitance(capacitor.Name).Name] = capacitor.Farads;
            values[Symbol.SeriesResistance(capacitor.Name).Name] = capacitor.EsrOhms;
        }

        foreach (Switch @switch in _analysis.Converter.Switches)
        {
            values[Symbol.OnResistance(@switch.Name).Name] = @switch.Ohms;
        }

        foreach (Inductor inductor in _analysis.Converter.Inductors)
        {
            values[Symbol.OnResistance(inductor.Name).Name] = inductor.Ohms;
        }

        return values;
    }

    /// <summary>Ratio and both limits, one equation per line; charge sharing in the place of the slow limit where there is any.</summary>
    public override string ToString() => $"{Ratio}\n{ChargeSharing ?? SlowSwitchingLimit}\n{FastSwitchingLimit}";

    private static ClosedForm Slow(SymbolKind kind, ModeAnalysis analysis, NamedList<Quantity> coefficients) => Weighted(
        kind,
        coefficients.Zip(analysis.Converter.Capacitors, (k, c) => (c.Name, k, Expression.Of(Symbol.Capacitance(c.Name), -1) * Expression.Of(Symbol.Frequency, -1))));

    private static ClosedForm Fast(ModeAnalysis analysis)
    {
        FastSwitchingLimit limit = analysis.FastSwitchingLimit;
        return Weighted(
            SymbolKind.FastSwitchingLimit,
            limit.SwitchCoefficients.Zip(analysis.Converter.Switches, (k, s) => (s.Name, k, Expression.Of(Symbol.OnResistance(s.Name))))
                .Concat(limit.CapacitorCoefficients.Zip(analysis.Converter.Capacitors)
                    .Where(e => e.Second.EsrOhms > 0)
                    .Select(e => (e.Second.Name, e.First, Expression.Of(Symbol.SeriesResistance(e.Second.Name)))))
                .Concat(limit.InductorCoefficients.Zip(analysis.Converter.Inductors)
                    .Where(e => e.Second.Ohms > 0)
                    .Select(e => (e.Second.Name, e.First, Expression.Of(Symbol.OnResistance(e.Second.Name))))));
    }

    private static ClosedForm Weighted(SymbolKind kind, IEnumerable<(string Name, Quantity Coefficient, Expression Part)> parts)
    {
        List<Expression> terms = [];
        List<string> decided = [];
        foreach ((string name, Quantity coefficient, Expression part) in parts)
        {
            if (!coefficient.IsDetermined)
            {
                return ClosedForm.Undetermined(new Symbol(kind));
            }

            if (coefficient.TryGetFraction(out Fraction exact))
            {
                terms.Add(Expression.Of(exact) * part);
            }
            else
            {
                decided.Add(name);
            }
        }

        Symbol symbol = new(kind);
        return decided.Count > 0
            ? ClosedForm.DecidedByComponentValues(symbol, decided.Distinct())
            : ClosedForm.Of(symbol, Expression.Sum(terms));
    }

    private static ClosedForm Loss(SymbolKind kind, ClosedForm limit)
    {
        Symbol symbol = new(kind);
        return limit.Expression is { } expression
            ? ClosedForm.Of(symbol, Expression.Of(Symbol.LoadCurrent, 2) * expression)
            : limit.Elements.Count > 0 ? ClosedForm.DecidedByComponentValues(symbol, limit.Elements) : ClosedForm.Undetermined(symbol);
    }

    // What the ideal point fixes, it fixes exactly: component values have no part in it.
    private static ClosedForm Constant(Symbol symbol, Quantity value) => value.TryGetFraction(out Fraction exact)
        ? ClosedForm.Of(symbol, Expression.Of(exact))
        : ClosedForm.Undetermined(symbol);

    private static ClosedForm Voltage(Symbol symbol, Quantity perVolt) => perVolt.TryGetFraction(out Fraction exact)
        ? ClosedForm.Of(symbol, Expression.Of(exact) * Expression.Of(Symbol.InputVoltage))
        : ClosedForm.Undetermined(symbol);

    private ClosedForm Collected(ClosedForm form) => _hasEqualComponents ? form.WithEqualComponents() : form;
}
