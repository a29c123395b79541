using ScNet.Numerics;

namespace ScNet.Design.Sizing;

/// <summary>
/// Sizes and frequencies as a geometric program: the weighted losses are to be small, while the impedance holds every output and the
/// elements fit into the area.
/// </summary>
/// <remarks>
/// Variables are the capacitances and conductances that carry charge in some mode, one frequency per point, and one impedance per point
/// whose output may follow. The impedance is the root of the sum of squares of its limits, times a monomial that gives it the exact
/// value and slopes at some sizes. Derivation: docs/theory/sizing.md.
/// </remarks>
internal sealed class SizingProgram
{
    private const double LowestShareOfFloor = 1e-9;
    private const double Span = 1e12;

    /// <summary>By which share impedances are held below what is needed, so that no rounding lifts one above it.</summary>
    public const double Margin = 1e-7;

    private readonly SizingTask _task;
    private readonly SizingPoint[] _points;
    private readonly SizedMode[] _modes;
    private readonly int[] _options;
    private readonly int[] _variableOf;
    private readonly int _firstFrequency;
    private readonly int _count;
    private readonly double _weights;

    /// <summary>Prepares a program.</summary>
    /// <param name="task">What is asked.</param>
    /// <param name="points">The points that count.</param>
    /// <param name="modes">The modes of the task at the sizes that the impedance is to be exact at.</param>
    /// <param name="options">The option of each element.</param>
    public SizingProgram(SizingTask task, SizingPoint[] points, SizedMode[] modes, int[] options)
    {
        (_task, _points, _modes, _options) = (task, points, modes, options);
        _variableOf = new int[task.ElementCount];
        int next = 0;
        for (int e = 0; e < _variableOf.Length; e++)
        {
            _variableOf[e] = points.Any(p => task.Uses(task.ModeOf(p), e)) ? next++ : -1;
        }

        _firstFrequency = next;
        _count = next + points.Length + points.Count(p => p.OutputVolts is null);
        _weights = points.Sum(p => p.Weight);
    }

    /// <summary>The number of variables.</summary>
    public int VariableCount => _count;

    /// <summary>The variable of a point's frequency.</summary>
    public int FrequencyOf(int point) => _firstFrequency + point;

    /// <summary>The variable of the impedance of a point whose output may follow.</summary>
    public int ImpedanceOf(int point) => _firstFrequency + _points.Length + _points.Take(point).Count(p => p.OutputVolts is null);

    /// <summary>The values of all elements at some variables; those without a variable have the least size.</summary>
    public double[] ValuesOf(ReadOnlySpan<double> x)
    {
        var values = new double[_variableOf.Length];
        for (int e = 0; e < values.Length; e++)
        {
            values[e] = _variableOf[e] >= 0 ? Math.Exp(x[_variableOf[e]]) : _task.LeastValue(e, _options[e]);
        }

        return values;
    }

    /// <summary>The variables of some values, with room for frequencies and impedances.</summary>
    public double[] VariablesOf(double[] values)
    {
        var x = new double[_count];
        for (int e = 0; e < values.Length; e++)
        {
            if (_variableOf[e] >= 0)
            {
                x[_variableOf[e]] = Math.Log(values[e]);
            }
        }

        return x;
    }

    /// <summary>The weighted loss in watts, per unit of weight.</summary>
    public LogConvexFunction Objective()
    {
        PosynomialBuilder sum = new();
        var steady = new double[_task.ElementCount];
        double always = 0;
        for (int p = 0; p < _points.Length; p++)
        {
            SizingPoint point = _points[p];
            ModeCosts costs = _task.Costs[_task.ModeOf(point)];
            double weight = point.Weight / _weights;
            (double perHertz, double watts) = costs.FixedAt(point.InputVolts);
            for (int e = 0; e < steady.Length; e++)
            {
                ElementCost cost = costs.At(e, _options[e], point.InputVolts);
                perHertz += cost.PerHertzFixed;
                watts += cost.WattsFixed;
                steady[e] += weight * cost.Watts;
                if (_variableOf[e] >= 0)
                {
                    sum.Add(weight * cost.PerHertz, (FrequencyOf(p), 1), (_variableOf[e], 1));
                }
                else
                {
                    perHertz += cost.PerHertz * _task.LeastValue(e, _options[e]);
                }
            }

            sum.Add(weight * perHertz, (FrequencyOf(p), 1));
            always += weight * watts;
            double current2 = weight * point.LoadAmperes * point.LoadAmperes;
            if (point.OutputVolts is null)
            {
                sum.Add(current2, (ImpedanceOf(p), 1));
            }
            else
            {
                always += current2 * _task.NeededOhms(point);
            }
        }

        for (int e = 0; e < steady.Length; e++)
        {
            if (_variableOf[e] >= 0)
            {
                sum.Add(steady[e], (_variableOf[e], 1));
            }
            else
            {
                always += steady[e] * _task.LeastValue(e, _options[e]);
            }
        }

        return sum.Add(always).Build();
    }

    /// <summary>The areas over what they may be, each at most 1; the total first where there is one.</summary>
    public IEnumerable<LogConvexFunction> Areas()
    {
        int capacitors = _task.CapacitorCount, all = _task.ElementCount;
        if (_task.Area.TotalSquareMetres is { } total)
        {
            yield return AreaOver(0, all, total);
        }

        if (_task.Area.CapacitorSquareMetres is { } ofCapacitors && capacitors > 0)
        {
            yield return AreaOver(0, capacitors, ofCapacitors);
        }

        if (_task.Area.SwitchSquareMetres is { } ofSwitches)
        {
            yield return AreaOver(capacitors, all, ofSwitches);
        }
    }

    /// <summary>The impedance of a point over what it needs, at most 1: at its frequency, and below the floor of it.</summary>
    /// <param name="point">The position of the point.</param>
    /// <param name="exactAt">The logarithms of the variables at which value and slopes are to be exact; null for the estimate as it is.</param>
    public IEnumerable<LogConvexFunction> Impedances(int point, double[]? exactAt)
    {
        double needed = _task.NeededOhms(_points[point]);
        double shift = _points[point].OutputVolts is null ? 0 : Margin - Math.Log(needed);
        double floor = _task.FrequencyHz.Minimum!.Value;
        SizedMode mode = _modes[_task.ModeOf(_points[point])];
        yield return Over(OfFrequency(point, null, exactAt is null ? null : Math.Exp(exactAt[FrequencyOf(point)]), exactAt));
        if (_points[point].OutputVolts is not null && !mode.IsTied)
        {
            yield return Over(OfFrequency(point, floor, floor, exactAt));
        }

        LogConvexFunction Over(PosynomialBuilder builder)
        {
            if (_points[point].OutputVolts is null)
            {
                builder.Times(ImpedanceOf(point), -1);
            }

            return builder.TimesExponential(shift).Build(power: 2);
        }
    }

    /// <summary>Everything put together.</summary>
    public GeometricProgram Build(double[]? exactAt) => new(
        Objective(), [.. Areas(), .. Enumerable.Range(0, _points.Length).SelectMany(p => Impedances(p, exactAt))], Bounds().Lower, Bounds().Upper);

    /// <summary>The least impedance of a point at the ceiling of the frequency, while the other points are served.</summary>
    public GeometricProgram LeastImpedance(int point, double[]? exactAt)
    {
        (double[] lower, double[] upper) = Bounds();
        lower[FrequencyOf(point)] = upper[FrequencyOf(point)] - 1e-6;
        IEnumerable<int> others = Enumerable.Range(0, _points.Length).Where(p => p != point);
        return new GeometricProgram(Impedances(point, exactAt).First(), [.. Areas(), .. others.SelectMany(p => Impedances(p, exactAt))], lower, upper);
    }

    /// <summary>The position of the point of each constraint of <see cref="Build"/>; -1 for an area.</summary>
    public int[] PointOfConstraint() =>
    [
        .. Areas().Select(_ => -1),
        .. Enumerable.Range(0, _points.Length).SelectMany(p => Impedances(p, null).Select(_ => p)),
    ];

    private LogConvexFunction AreaOver(int from, int to, double allowed)
    {
        double rest = 0;
        PosynomialBuilder sum = new();
        for (int e = from; e < to; e++)
        {
            AreaLaw law = _task.AreaOf(e, _options[e]);
            if (_variableOf[e] < 0)
            {
                rest += law.At(_task.LeastValue(e, _options[e]));
                continue;
            }

            sum.Add(law.Linear / allowed, (_variableOf[e], 1));
            sum.Add(law.Root / allowed, (_variableOf[e], 0.5));
            rest += law.Constant;
        }

        return sum.Add(rest / allowed).Build();
    }

    // the estimate at a point's frequency, or at a fixed one from which cycles are left out, times a monomial that makes it exact
    private PosynomialBuilder OfFrequency(int point, double? floor, double? exactHz, double[]? exactAt)
    {
        SizedMode mode = _modes[_task.ModeOf(_points[point])];
        PosynomialBuilder estimate = Estimate(point, mode, floor);
        if (exactAt is null)
        {
            return estimate;
        }

        LogConvexFunction plain = Estimate(point, mode, floor).Build(power: 2);
        var slopes = new double[plain.Support.Length];
        double value = plain.Evaluate(exactAt, slopes, new double[plain.WorkLength]);
        (double exact, double[] byElement, double byFrequency) = mode.ElasticityAt(exactHz!.Value);
        if (floor is { } lowest)
        {
            exact += Math.Log(lowest) - exactAt[FrequencyOf(point)];
            byFrequency = -1;
        }

        double shift = exact - value;
        for (int e = 0; e < _variableOf.Length; e++)
        {
            Tilt(_variableOf[e], byElement[e]);
        }

        Tilt(FrequencyOf(point), byFrequency);
        return estimate.TimesExponential(shift);

        void Tilt(int variable, double slope)
        {
            if (variable >= 0)
            {
                int place = Array.BinarySearch(plain.Support, variable);
                double difference = slope - (place >= 0 ? slopes[place] : 0);
                estimate.Times(variable, difference);
                shift -= difference * exactAt[variable];
            }
        }
    }

    private PosynomialBuilder Estimate(int point, SizedMode mode, double? floor)
    {
        PosynomialBuilder limits = new();
        double constant = 0;
        for (int e = 0; e < _variableOf.Length; e++)
        {
            // what is not at zero of an element without use is rounding
            if (_variableOf[e] >= 0 && e < mode.Slow.Length && mode.Slow[e] > 0)
            {
                _ = floor is { } lowest
                    ? limits.Add(mode.Slow[e] / lowest, (_variableOf[e], -1))
                    : limits.Add(mode.Slow[e], (_variableOf[e], -1), (FrequencyOf(point), -1));
            }
        }

        limits.NextGroup();
        for (int e = 0; e < _variableOf.Length; e++)
        {
            double fast = e < mode.Slow.Length ? mode.FastOfCapacitors[e] * _task.EsrSeconds(e, _options[e]) : mode.FastOfSwitches[e - mode.Slow.Length];
            if (_variableOf[e] >= 0 && fast > 0)
            {
                limits.Add(fast, (_variableOf[e], -1));
                constant += e < mode.Slow.Length ? 0 : fast * _task.Process.WiringOhms;
            }
        }

        limits.Add(constant);
        if (floor is { } skipped)
        {
            limits.Times(FrequencyOf(point), -1).TimesExponential(Math.Log(skipped));
        }

        return limits;
    }

    private (double[] Lower, double[] Upper) Bounds()
    {
        var lower = new double[_count];
        var upper = new double[_count];
        for (int e = 0; e < _variableOf.Length; e++)
        {
            if (_variableOf[e] >= 0)
            {
                // what alone would fill the area, and more
                double least = _task.LeastValue(e, _options[e]);
                double area = Math.Min(
                    _task.Area.TotalSquareMetres ?? double.PositiveInfinity,
                    (e < _task.CapacitorCount ? _task.Area.CapacitorSquareMetres : _task.Area.SwitchSquareMetres) ?? double.PositiveInfinity);
                lower[_variableOf[e]] = Math.Log(least);
                upper[_variableOf[e]] = Math.Log(Math.Max(2 * least, area / _task.AreaOf(e, _options[e]).Linear));
            }
        }

        (double floor, double ceiling) = (_task.FrequencyHz.Minimum!.Value, _task.FrequencyHz.Maximum!.Value);
        for (int p = 0; p < _points.Length; p++)
        {
            bool isHeld = _points[p].OutputVolts is not null && !_modes[_task.ModeOf(_points[p])].IsTied;
            upper[FrequencyOf(p)] = Math.Log(ceiling) + (floor < ceiling ? 0 : 1e-9);
            lower[FrequencyOf(p)] = Math.Log(isHeld ? floor * LowestShareOfFloor : floor);
            if (_points[p].OutputVolts is null)
            {
                double scale = _points[p].InputVolts / _points[p].LoadAmperes;
                (lower[ImpedanceOf(p)], upper[ImpedanceOf(p)]) = (Math.Log(scale / Span), Math.Log(scale * Span));
            }
        }

        return (lower, upper);
    }
}
