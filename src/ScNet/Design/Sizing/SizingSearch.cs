using ScNet.Numerics;

namespace ScNet.Design.Sizing;

/// <summary>Looks for the sizes: convex programs, each with the impedance that is exact at the sizes of the one before.</summary>
/// <remarks>Derivation: docs/theory/sizing.md, "The exact impedance" and "Kinds of devices".</remarks>
internal sealed class SizingSearch
{
    private const int RoundLimit = 25;
    private const double GapOfProgram = 1e-9;
    private const double GapOfLeast = 1e-6;
    private const int MostRoundsOfLeast = 10;
    private const double Enough = 3e-7;
    private const double LargestExcess = 8e-8;
    private const double WorthChanging = 1e-3;

    private readonly SizingTask _task;
    private readonly List<UnreachablePoint> _unreachable = [];
    private readonly List<SizingPoint> _leftOut = [];
    private readonly HashSet<string> _choicesTried = [];
    private SizingPoint[] _points;
    private int[] _options;

    // kinds with which sizes served all points that are left, and those sizes
    private (int[] Options, double[] Values)? _served;
    private double[] _values;
    private int _rounds;
    private int _steps;

    public SizingSearch(SizingTask task)
    {
        _task = task;
        _points = [.. task.Points.Where(p => task.NeededOhms(p) > 0)];
        _unreachable.AddRange(task.Points.Where(p => !(task.NeededOhms(p) > 0)).Select(p => new UnreachablePoint(p, task.NeededOhms(p), null, isAlone: true)));
        _options = [.. Enumerable.Range(0, task.ElementCount).Select(e => FirstOption(e, task.Criterion))];
        _values = StartValues();
        _choicesTried.Add(string.Join(',', _options));
    }

    /// <summary>The points that no sizes reach, in the order in which that was found.</summary>
    public IReadOnlyList<UnreachablePoint> Unreachable => _unreachable;

    /// <summary>Finds the sizes; null where no point can be reached.</summary>
    public SizingSolution? Run()
    {
        DropWhatNoModeReaches();
        Candidate? best = null, certified = null;
        double[]? exactAt = null;
        SizedMode[] modes = ModesAt(_values);
        FixedPoint sizes = new();
        bool areKindsSettled = false;
        while (_points.Length > 0 && _rounds < RoundLimit)
        {
            SizingProgram program = new(_task, _points, modes, _options);
            GeometricOptimum optimum = program.Build(exactAt).Minimize(exactAt ?? Start(program), GapOfProgram);
            _rounds++;
            _steps += optimum.Steps;
            if (!optimum.IsFeasible)
            {
                // what the estimate forbids the exact impedance may allow
                best = certified = null;
                if (exactAt is not null && OtherKinds() is { } values)
                {
                    // and the area may suffice for other kinds of devices
                    (_values, exactAt, areKindsSettled) = (values, null, _served is not null);
                    modes = ModesAt(_values);
                    continue;
                }

                if (exactAt is not null)
                {
                    Drop(program, optimum);
                }

                _values = program.ValuesOf(optimum.Logarithms);
                (exactAt, modes) = exactAt is null ? TangentAt(program, held: false) : (null, ModesAt(_values));
                continue;
            }

            if (best is { } candidate)
            {
                candidate.Bound = optimum.LogValue - optimum.Gap;
                candidate.OfMargin = SizingProgram.Margin * optimum.Multipliers.Sum();
                if (candidate.Excess <= LargestExcess && !(candidate.Gap >= certified?.Gap))
                {
                    certified = candidate;
                }
            }

            double[] optimal = program.ValuesOf(optimum.Logarithms);
            _served = (_options, optimal);
            bool isEnough = certified?.Gap <= Enough;
            areKindsSettled &= !isEnough;
            if (!areKindsSettled && ChangeDevices(program, optimum, optimal, modes))
            {
                sizes = new();
                certified = null;
                _values = optimal;
                program = new(_task, _points, modes, _options);
            }
            else if (isEnough)
            {
                break;
            }
            else
            {
                areKindsSettled = true;

                // the way is not to lead below one step
                _values = [.. sizes.Next(exactAt is null ? null : _values, optimal).Select((v, e) => Math.Max(v, _task.LeastValue(e, _options[e])))];
            }

            (exactAt, modes) = TangentAt(program, held: true, optimum.Logarithms);
            best = new Candidate(_values, exactAt, program.Objective().Value(exactAt), Excess(program, exactAt, modes), modes);
        }

        best = certified ?? best;
        NameLeftOut(best?.Values);
        return best is null ? null : new SizingSolution(
            _points, _options, best.Values, [.. _points.Select((_, p) => Math.Exp(best.Point[new SizingProgram(_task, _points, best.Modes, _options).FrequencyOf(p)]))],
            best.Modes, Math.Exp(best.LogWatts) * _points.Sum(p => p.Weight), best.Gap + best.OfMargin, _rounds, _steps);
    }

    // the sizes as variables, with the frequencies that hold the outputs exactly, or the ceiling
    private (double[] Point, SizedMode[] Modes) TangentAt(SizingProgram program, bool held, double[]? logarithms = null)
    {
        double[] point = program.VariablesOf(_values);
        SizedMode[] modes = ModesAt(_values);
        for (int p = 0; p < _points.Length; p++)
        {
            SizedMode mode = modes[_task.ModeOf(_points[p])];
            int frequency = program.FrequencyOf(p);
            if (_points[p].OutputVolts is null)
            {
                point[frequency] = logarithms is null ? Math.Log(_task.FrequencyHz.Maximum!.Value) : logarithms[frequency];
                point[program.ImpedanceOf(p)] = Math.Log(mode.Ohms(Math.Exp(point[frequency])));
            }
            else
            {
                point[frequency] = Math.Log(held ? mode.FrequencyOf(_task.NeededOhms(_points[p]) * (1 - SizingProgram.Margin)) : _task.FrequencyHz.Maximum!.Value);
            }
        }

        return (point, modes);
    }

    // by how much the worst impedance is above what its point needs, or an area above what is allowed; an output that may follow needs none
    private double Excess(SizingProgram program, double[] point, SizedMode[] modes) => _points
        .Select((sized, p) => Math.Log(modes[_task.ModeOf(sized)].Ohms(Math.Exp(point[program.FrequencyOf(p)])) / _task.NeededOhms(sized)) + SizingProgram.Margin)
        .Concat(program.Areas().Select(a => a.Value(point)))
        .Max();

    private SizedMode[] ModesAt(double[] values)
    {
        Converter converter = Plain(_task.Build(_options, values).Converter);
        return [.. _task.Modes.Select(m => SizedMode.Of(m, converter, _task.FrequencyHz, _task.Process.WiringOhms))];
    }

    private Converter Plain(Converter sized) => _task.Converter.WithValues(
        [.. sized.Capacitors.Select(c => c.Farads)], [.. sized.Switches.Select(s => s.Ohms)], [.. sized.Capacitors.Select(c => c.EsrOhms)]);

    private void DropWhatNoModeReaches()
    {
        UnreachablePoint[] beyond = BeyondReach();
        if (beyond.Length > 0 && OtherKinds() is { } values)
        {
            _values = values;
            beyond = BeyondReach();
        }

        _unreachable.AddRange(beyond);
        _points = [.. _points.Except(beyond.Select(u => u.Point))];
    }

    // a mode at the ceiling has one least impedance, whatever the point
    private UnreachablePoint[] BeyondReach()
    {
        SizedMode[] modes = ModesAt(_values);
        List<UnreachablePoint> beyond = [];
        for (int m = 0; m < modes.Length; m++)
        {
            SizingPoint[] own = [.. _points.Where(p => _task.ModeOf(p) == m && p.OutputVolts is not null)];
            if (own.Length > 0 && own.Min(_task.NeededOhms) <= modes[m].Ohms(_task.FrequencyHz.Maximum!.Value))
            {
                double least = LeastOhms(own[0], modes, []);
                beyond.AddRange(own.Where(p => _task.NeededOhms(p) < least).Select(p => new UnreachablePoint(p, _task.NeededOhms(p), least, isAlone: true)));
            }
        }

        return [.. beyond];
    }

    // with sizes that serve the points beside it; first by the estimate, then by the exact impedance where that led to
    private double LeastOhms(SizingPoint point, SizedMode[] modes, SizingPoint[] beside)
    {
        int m = _task.ModeOf(point);
        double ceiling = _task.FrequencyHz.Maximum!.Value, least = double.PositiveInfinity;
        double[]? exactAt = null;
        for (int round = 0; round < MostRoundsOfLeast; round++)
        {
            SizingProgram program = new(_task, [point, .. beside], modes, _options);
            double[] start = program.VariablesOf(_values);
            start[program.FrequencyOf(0)] = Math.Log(ceiling);
            GeometricOptimum optimum = program.LeastImpedance(0, exactAt).Minimize(start, GapOfLeast);
            _steps += optimum.Steps;
            modes = ModesAt(program.ValuesOf(optimum.Logarithms));
            double before = least;

            // what the estimate gives need not serve the points beside it
            least = beside.Length > 0 ? modes[m].Ohms(ceiling) : Math.Min(least, modes[m].Ohms(ceiling));
            if (least > before * (1 - GapOfLeast))
            {
                break;
            }

            exactAt = optimum.Logarithms;
            exactAt[program.FrequencyOf(0)] = Math.Log(ceiling);
        }

        return least;
    }

    // the kinds that served all points before, else those that take the least area; null where they are what was tried
    private double[]? OtherKinds()
    {
        if (_served is var (options, values) && !options.SequenceEqual(_options))
        {
            _options = options;
            return values;
        }

        int[] smallest = [.. Enumerable.Range(0, _task.ElementCount).Select(e => FirstOption(e, DeviceCriterion.LeastArea))];
        if (_served is not null || !_choicesTried.Add(string.Join(',', smallest)))
        {
            return null;
        }

        _options = smallest;
        return StartValues();
    }

    // the one that the others stand against most
    private void Drop(SizingProgram program, GeometricOptimum least)
    {
        int[] pointOf = program.PointOfConstraint();
        var weight = new double[_points.Length];
        for (int k = 0; k < pointOf.Length; k++)
        {
            if (pointOf[k] >= 0)
            {
                weight[pointOf[k]] += least.Multipliers[k];
            }
        }

        int worst = Array.IndexOf(weight, weight.Max());
        _leftOut.Add(_points[worst]);
        _points = [.. _points.Where((_, p) => p != worst)];
        _served = null;
    }

    // what sizes within the area allow each, that serve the points that are left
    private void NameLeftOut(double[]? values)
    {
        _values = values ?? StartValues();
        _unreachable.AddRange(_leftOut.Select(p => new UnreachablePoint(p, _task.NeededOhms(p), LeastOhms(p, ModesAt(_values), _points), isAlone: false)));
    }

    // at the prices of area, resistance and frequency that a solution has, each element by itself may have a better kind
    private bool ChangeDevices(SizingProgram program, GeometricOptimum optimum, double[] values, SizedMode[] modes)
    {
        if (_task.Criterion == DeviceCriterion.LeastArea)
        {
            return false;
        }

        int[] changed = new DevicePrices(_task, _points, program, optimum, modes).BestOptions(_options, values, WorthChanging);
        if (!_choicesTried.Add(string.Join(',', changed)))
        {
            return false;
        }

        _options = changed;
        return true;
    }

    private int FirstOption(int element, DeviceCriterion criterion) => Enumerable.Range(0, _task.OptionCount(element)).MinBy(o =>
    {
        double value = 1, area = _task.AreaOf(element, o).Linear * value;
        double loss = _task.Points.Sum(p => p.Weight * _task.Costs[_task.ModeOf(p)].At(element, o, p.InputVolts).PerHertz);
        return criterion == DeviceCriterion.LeastArea || loss == 0 ? (area, loss) : (area * loss, area);
    });

    // an equal share of three quarters of the area for each
    private double[] StartValues() => [.. Enumerable.Range(0, _task.ElementCount).Select(e =>
    {
        bool isCapacitor = e < _task.CapacitorCount;
        double share = (isCapacitor ? _task.Area.CapacitorSquareMetres : _task.Area.SwitchSquareMetres) ?? _task.Area.TotalSquareMetres!.Value;
        double area = Math.Min(share, _task.Area.TotalSquareMetres ?? share) * 0.75 / _task.ElementCount;
        return Math.Max(_task.LeastValue(e, _options[e]), area / _task.AreaOf(e, _options[e]).Linear);
    })];

    private double[] Start(SizingProgram program)
    {
        double[] x = program.VariablesOf(_values);
        for (int p = 0; p < _points.Length; p++)
        {
            x[program.FrequencyOf(p)] = Math.Log(_task.FrequencyHz.Maximum!.Value);
            if (_points[p].OutputVolts is null)
            {
                x[program.ImpedanceOf(p)] = Math.Log(_points[p].InputVolts / _points[p].LoadAmperes);
            }
        }

        return x;
    }

    private sealed class Candidate(double[] values, double[] point, double logWatts, double excess, SizedMode[] modes)
    {
        public double[] Values => values;

        public double[] Point => point;

        public double LogWatts => logWatts;

        public double Excess => excess;

        public SizedMode[] Modes => modes;

        public double Bound { get; set; } = double.NegativeInfinity;

        // what impedances being held a little below what is needed adds to the gap
        public double OfMargin { get; set; }

        public double Gap => logWatts - Bound;
    }
}
