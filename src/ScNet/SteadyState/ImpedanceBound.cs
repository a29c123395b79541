using ScNet.Analysis;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// A range that no values within the tolerances leave: from what the limits bound, taken at the best and at the
/// worst values, and from how fast the impedance can change with values.
/// </summary>
/// <remarks>
/// Derivation: docs/theory/tolerances.md. Cost: two analyses of limits, two preparations, and one least-squares
/// problem of one row per element and phase with the free directions as unknowns.
/// </remarks>
internal sealed class ImpedanceBound
{
    // How much of the impedance all capacitances together can move, per unit of their logarithms, at most.
    private const double CapacitanceShare = 17.0 / 8;

    // What rounding may do to a bound, far above what it does.
    private const double Rounding = 1e-11;

    private readonly ModeAnalysis _analysis;
    private readonly ComponentTolerances _tolerances;
    private readonly double _frequencyHz;

    private ImpedanceBound(ModeAnalysis analysis, ComponentTolerances tolerances, double frequencyHz)
    {
        _analysis = analysis;
        _tolerances = tolerances;
        _frequencyHz = frequencyHz;
    }

    private bool IsStiff => _analysis.Converter.Load == LoadKind.Stiff;

    // Whether the flow is the one of least dissipation at every frequency, or the only one.
    private bool IsLeastDissipation => _analysis.Converter.Phases.Count == 2 || FullTopology.Of(_analysis.Converter, _analysis.Topology).Directions.Count == 0;

    private bool HasParasitics => _analysis.Converter.ParasiticBranches.Count > 0;

    public static Interval<double> Of(ModeAnalysis analysis, double frequencyHz, ComponentTolerances tolerances)
    {
        ImpedanceBound bound = new(analysis, tolerances, frequencyHz);
        (double below, double above) = bound.ByElasticity();
        above = Math.Min(above, bound.AboveByOneFlow()) * (1 + Rounding);
        return double.IsFinite(above) ? new Interval<double>(Math.Max(below, bound.BelowByLimits()) * (1 - Rounding), above) : default;
    }

    // Both limits at their smallest; with more phases and free directions only the fast one bounds. The limits know nothing of
    // parasitic capacitances, through which charge finds further ways.
    private double BelowByLimits()
    {
        if (HasParasitics)
        {
            return 0;
        }

        ModeAnalysis best = _analysis.WithValuesOf(_tolerances.Apply(_analysis.Converter, capacitance: 1, onResistance: -1, esr: -1));
        double fast = best.FastSwitchingLimit.Ohms;
        return IsStiff && IsLeastDissipation
            ? ImpedancePoint.SinglePair(best.SlowSwitchingLimit.Ohms(_frequencyHz), fast)
            : fast;
    }

    // x coth x <= 1 + L(X) x for all x up to X, the largest of all values within the tolerances; so one flow at the worst values.
    private double AboveByOneFlow()
    {
        if (!IsLeastDissipation)
        {
            return double.PositiveInfinity;
        }

        Converter nominal = _analysis.Converter, fastest = _tolerances.Apply(nominal, capacitance: -1, onResistance: -1, esr: -1);
        double largest = PreparedMode.Of(fastest, _analysis.Topology).LargestExponent(1 / _frequencyHz);
        double share = largest < 0.01 ? largest / 3 : Math.Min(1, (1 / Math.Tanh(largest)) - (1 / largest));
        return LeastOfBothForms(_tolerances.Apply(nominal, capacitance: -1, onResistance: 1, esr: 1), share);
    }

    // The least over all flows of constant currents' dissipation plus a share of impulses' dissipation.
    private double LeastOfBothForms(Converter converter, double share)
    {
        TopologySolution topology = _analysis.Topology;
        int phases = converter.Phases.Count, capacitorEntries = converter.Capacitors.Count * phases;
        int switchEntries = converter.Switches.Count * phases, branchEntries = topology.Branches.Length;
        double[] inverseDuty = [.. converter.Phases.Select(p => 1 / p.Duty.ToDouble())];
        SparseVector Weighted(FlowDirection way) => way.Switches
            .Weighted(e => Math.Sqrt(converter.Switches[e / phases].Ohms * inverseDuty[e % phases]))
            .Followed(way.Branches.Weighted(e => e < capacitorEntries ? Math.Sqrt(converter.Capacitors[e / phases].EsrOhms * inverseDuty[e % phases]) : 0), switchEntries)
            .Followed(
                way.Branches.Weighted(e => e < capacitorEntries ? Math.Sqrt(share * converter.Capacitors[e / phases].ElastancePerFarad / (2 * _frequencyHz)) : 0),
                switchEntries + branchEntries);

        bool isFree = topology.Directions.Count > 0;
        FlowDirection[] ways = isFree ? DirectionAmounts.Ways(topology) : [OnlyFlow(topology)];
        SparseVector[] columns = Array.ConvertAll(ways, Weighted);
        double[] amounts = isFree ? LeastDissipation.Of(columns).Amounts(DirectionAmounts.Delivered(topology)) : [1];
        var mixture = new double[switchEntries + (2 * branchEntries)];
        for (int k = 0; k < columns.Length; k++)
        {
            for (int e = 0; e < columns[k].Count; e++)
            {
                mixture[columns[k].Indices[e]] += amounts[k] * columns[k].Values[e];
            }
        }

        return mixture.Sum(m => m * m) is var ohms && double.IsFinite(ohms) ? ohms : double.PositiveInfinity;
    }

    private static FlowDirection OnlyFlow(TopologySolution topology) => new(
        SparseVector.OfDense(Array.ConvertAll(topology.Branches, q => q.ToDouble())),
        SparseVector.OfDense(Array.ConvertAll(topology.Switches, q => q.ToDouble())));

    // Around the middle of the tolerances by ratio: resistances move the impedance by no more than their own
    // ratio, capacitances with a stiff load by no more than a power of theirs.
    private (double Below, double Above) ByElasticity()
    {
        if (!IsStiff && _tolerances.Capacitance > 0 && _analysis.Converter.Capacitors.Count > 0)
        {
            return (0, double.PositiveInfinity);
        }

        int phases = _analysis.Converter.Phases.Count;
        double share = CapacitanceShare + (IsLeastDissipation ? 0 : 1 / Math.Tan(Math.PI / phases));
        double exponent = Math.Atanh(Math.Max(_tolerances.OnResistance, _tolerances.Esr)) + (share * Math.Atanh(_tolerances.Capacitance));
        Converter middle = _tolerances.Apply(
            _analysis.Converter, Middle(_tolerances.Capacitance), Middle(_tolerances.OnResistance), Middle(_tolerances.Esr));
        double ohms = PreparedMode.Of(middle, _analysis.Topology).Ohms(1 / _frequencyHz);
        return (ohms * Math.Exp(-exponent), ohms * Math.Exp(exponent));
    }

    // The deviation, as a fraction of the tolerance t, at which a value is √((1 - t)(1 + t)) of its nominal one.
    private static double Middle(double tolerance) => tolerance == 0 ? 0 : (Math.Sqrt((1 - tolerance) * (1 + tolerance)) - 1) / tolerance;
}
