using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// Looks for the largest or smallest impedance within tolerances: at all corners of few values, else from the
/// corner that is usually the worst; then along the slopes, to other corners or to points inside, until no step
/// leads further, but no more than six steps.
/// </summary>
/// <remarks>
/// The impedance need not be monotone in a value, and its extremes can lie inside, so what is found is an
/// extreme of those near it, not for certain of all. Cost: 2ⁿ impedances for up to <see cref="LargestExhaustedCount"/>
/// values, and a few sensitivities.
/// </remarks>
internal sealed class WorstCaseSearch
{
    /// <summary>Up to so many values with a tolerance, all corners are tried.</summary>
    public const int LargestExhaustedCount = 10;

    private const int LargestStepCount = 6;
    private const int HalvingCount = 4;

    // What a step must gain, and what a value must promise to be moved, as a fraction of the impedance.
    private const double Gain = 1e-6;
    private const double Promise = 1e-8;

    private readonly ModeAnalysis _analysis;
    private readonly ComponentTolerances _tolerances;
    private readonly double _period;
    private readonly int _direction;
    private readonly int[] _free;
    private readonly int _deviationCount;

    private WorstCaseSearch(ModeAnalysis analysis, double frequencyHz, ComponentTolerances tolerances, int direction)
    {
        _analysis = analysis;
        _tolerances = tolerances;
        _period = 1 / frequencyHz;
        _direction = direction;
        Converter nominal = analysis.Converter;
        int capacitors = nominal.Capacitors.Count, switches = nominal.Switches.Count;
        _deviationCount = (2 * capacitors) + switches;
        _free = [
            .. Enumerable.Range(0, capacitors).Where(_ => tolerances.Capacitance > 0),
            .. Enumerable.Range(capacitors, switches).Where(s => tolerances.OnResistance > 0 && analysis.Mode.ClosedPhases[s - capacitors].Count > 0),
            .. Enumerable.Range(capacitors + switches, capacitors).Where(i => tolerances.Esr > 0 && nominal.Capacitors[i - capacitors - switches].EsrOhms > 0),
        ];
    }

    /// <summary>The largest impedance found in ohms, or the smallest.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <param name="tolerances">The tolerances.</param>
    /// <param name="direction">1 for the largest, -1 for the smallest.</param>
    public static double Ohms(ModeAnalysis analysis, double frequencyHz, ComponentTolerances tolerances, int direction) =>
        new WorstCaseSearch(analysis, frequencyHz, tolerances, direction).Search();

    private double Search()
    {
        double[] at = _free.Length <= LargestExhaustedCount ? WorstCorner() : UsualCorner();
        double ohms = Ohms(at);
        for (int step = 0; step < LargestStepCount && Further(ref at, ref ohms); step++)
        {
        }

        return ohms;
    }

    // Small capacitances and large resistances make a large impedance, mostly.
    private double[] UsualCorner()
    {
        var corner = new double[_deviationCount];
        foreach (int k in _free)
        {
            corner[k] = k < _analysis.Converter.Capacitors.Count ? -_direction : _direction;
        }

        return corner;
    }

    private double[] WorstCorner()
    {
        double[] worst = UsualCorner();
        double worstOhms = Ohms(worst);
        for (int signs = 0; signs < 1 << _free.Length; signs++)
        {
            var corner = new double[_deviationCount];
            for (int k = 0; k < _free.Length; k++)
            {
                corner[_free[k]] = ((signs >> k) & 1) == 0 ? -1 : 1;
            }

            double ohms = Ohms(corner);
            if (_direction * (ohms - worstOhms) > 0)
            {
                (worst, worstOhms) = (corner, ohms);
            }
        }

        return worst;
    }

    // Towards the corner that the slopes point to, whole, half, a quarter of the way …, as far as it leads further.
    private bool Further(ref double[] at, ref double ohms)
    {
        double[] slopes = Slopes(at, ohms);
        for (int halving = 0; halving < HalvingCount; halving++)
        {
            double[] next = [.. at];
            foreach (int k in _free)
            {
                next[k] += Math.ScaleB((_direction * Math.Sign(slopes[k])) - at[k], -halving) * (slopes[k] == 0 ? 0 : 1);
            }

            if (next.AsSpan().SequenceEqual(at))
            {
                return false;
            }

            double found = Ohms(next);
            if (_direction * (found - ohms) > Gain * ohms)
            {
                (at, ohms) = (next, found);
                return true;
            }
        }

        return false;
    }

    private double Ohms(double[] deviations) => Prepare(deviations).Prepared.Ohms(_period);

    // Per value the impedance's change with its deviation, zero where that is too small to matter.
    private double[] Slopes(double[] deviations, double ohms)
    {
        (Converter converter, PreparedMode prepared) = Prepare(deviations);
        SensitivitySolution solution = new(prepared, _period);
        int capacitors = converter.Capacitors.Count, switches = converter.Switches.Count;
        var slopes = new double[_deviationCount];
        foreach (int k in _free)
        {
            double slope = k < capacitors ? solution.ByCapacitance(k) * _tolerances.Capacitance * converter.Capacitors[k].Farads
                : k < capacitors + switches ? solution.ByOnResistance(k - capacitors) * _tolerances.OnResistance * converter.Switches[k - capacitors].Ohms
                : solution.ByEsr(k - capacitors - switches) * _tolerances.Esr * converter.Capacitors[k - capacitors - switches].EsrOhms;
            slopes[k] = Math.Abs(slope) > Promise * ohms ? slope : 0;
        }

        return slopes;
    }

    private (Converter Converter, PreparedMode Prepared) Prepare(double[] deviations)
    {
        Converter converter = _tolerances.Apply(_analysis.Converter, deviations);
        return (converter, PreparedMode.Of(converter, _analysis.Topology));
    }
}
