using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Numerics;

namespace ScNet.Design.Choice;

/// <summary>Sizes and frequencies of a stage with inductors as a geometric program, for given kinds of devices.</summary>
/// <remarks>
/// Variables, in logarithms: the value of every element, and per point the frequency f and the current J of the cycles that are not left
/// out, at least the load I. A share I/J of the cycles runs, so the loss is I/J times that at J: with conduction (k J² + n V²/f²)/G of an
/// element and the rest f·g·G, all terms are monomials. Flying capacitors swing by no more than a share of what they hold, inductors carry no
/// more than they can, and areas add up to the budget: posynomials. What ripple and load conduct together is left out here, as
/// it adds nothing where an element's ripple averages to zero in a phase. Derivation: docs/theory/sizing.md, "Stages with inductors".
/// </remarks>
internal sealed class StageProgram
{
    /// <summary>The share of its voltage by which a flying capacitor may swing, a tenth either way. Common practice, no source.</summary>
    public const double CapacitorSwing = 0.2;

    private const double LeastFarads = 1e-13, MostFarads = 1e-3, LeastSiemens = 1e-5, MostSiemens = 1e4;
    private const double MostCurrentFactor = 1e7;

    private readonly IReadOnlyList<StagePoint> _points;
    private readonly ElementOptions _options;
    private readonly IReadOnlyList<InductorDevice> _inductors;
    private readonly AreaBudget _area;
    private readonly Interval<double> _frequencyHz;
    private readonly int _capacitors;
    private readonly int _elements;

    public StageProgram(IReadOnlyList<StagePoint> points, ElementOptions options, IReadOnlyList<InductorDevice> inductors, AreaBudget area, Interval<double> frequencyHz)
    {
        (_points, _options, _inductors, _area, _frequencyHz) = (points, options, inductors, area, frequencyHz);
        _capacitors = options.Capacitors.Length;
        _elements = _capacitors + options.Switches.Length;
    }

    private int VariableCount => _elements + (2 * _points.Count);

    /// <summary>The variable of a point's frequency.</summary>
    public int FrequencyOf(int point) => _elements + (2 * point);

    /// <summary>The variable of the current of a point's cycles.</summary>
    public int CurrentOf(int point) => _elements + (2 * point) + 1;

    /// <summary>Finds the least weighted loss.</summary>
    /// <param name="chosen">The option of each element.</param>
    public GeometricOptimum Solve(int[] chosen)
    {
        var lower = new double[VariableCount];
        var upper = new double[VariableCount];
        var start = new double[VariableCount];
        for (int e = 0; e < _elements; e++)
        {
            (lower[e], upper[e]) = e < _capacitors ? (Math.Log(LeastFarads), Math.Log(MostFarads)) : (Math.Log(LeastSiemens), Math.Log(MostSiemens));
            start[e] = Math.Log(AreaShare / AreaPerValue(e, chosen[e]));
        }

        for (int p = 0; p < _points.Count; p++)
        {
            int f = FrequencyOf(p), j = CurrentOf(p);
            (lower[f], upper[f]) = (Math.Log(_frequencyHz.Minimum!.Value), Math.Log(_frequencyHz.Maximum!.Value));
            lower[j] = Math.Log(_points[p].Point.LoadAmperes);
            upper[j] = lower[j] + Math.Log(MostCurrentFactor);
            lower[f] = Math.Min(lower[f], upper[f] - LeastSpan);
            start[f] = (lower[f] + upper[f]) / 2;
            start[j] = lower[j] + 1;
        }

        return new GeometricProgram(Objective(chosen), [.. Areas(chosen), .. Swings(), .. Currents()], lower, upper).Minimize(start, Tolerance);
    }

    /// <summary>The area per unit of value of an element.</summary>
    public double AreaPerValue(int element, int option) => AreaOf(element, option).Linear;

    /// <summary>What an element costs at a solution with other kinds: its loss, and its area at its price.</summary>
    public double CostOf(int element, int option, GeometricOptimum optimum)
    {
        double value = Math.Exp(optimum.Logarithms[element]), watts = 0;
        for (int p = 0; p < _points.Count; p++)
        {
            (double hertz, double amperes) = (Math.Exp(optimum.Logarithms[FrequencyOf(p)]), Math.Exp(optimum.Logarithms[CurrentOf(p)]));
            StagePoint point = _points[p];
            double share = point.Weight * point.Point.LoadAmperes / amperes;
            (double volts, LossPolynomial rest) = (point.Point.InputVolts, point.Costs.Rest(element, option));
            watts += (share * ((Conducted(point, element, option).At(volts, amperes, hertz) / value) + (hertz * PerHertz(rest, volts) * value)))
                + (point.Weight * Always(rest, volts) * value);
        }

        double price = 0;
        int k = 0;
        foreach ((double area, bool ofCapacitors, bool ofSwitches) in Budgets())
        {
            price += (element < _capacitors ? ofCapacitors : ofSwitches) ? optimum.Multipliers[k] / area : 0;
            k++;
        }

        return watts + (Math.Exp(optimum.LogValue) * price * AreaOf(element, option).At(value));
    }

    private const double Tolerance = 1e-7;

    // a variable needs room to move
    private const double LeastSpan = 1e-6;

    private AreaLaw AreaOf(int element, int option) => element < _capacitors
        ? AreaLaw.Of(_options.Capacitors[element][option])
        : AreaLaw.Of(_options.Switches[element - _capacitors][option]);

    private double AreaShare => (_area.TotalSquareMetres ?? Math.Min(_area.CapacitorSquareMetres!.Value, _area.SwitchSquareMetres!.Value)) / (2 * _elements);

    private static LossPolynomial Conducted(StagePoint point, int element, int option) => point.Costs.Conduction(element, option);

    private LogConvexFunction Objective(int[] chosen)
    {
        PosynomialBuilder sum = new();
        for (int p = 0; p < _points.Count; p++)
        {
            StagePoint point = _points[p];
            double volts = point.Point.InputVolts, scale = point.Weight * point.Point.LoadAmperes;
            int f = FrequencyOf(p), j = CurrentOf(p);
            for (int e = 0; e < _elements; e++)
            {
                LossPolynomial conducted = Conducted(point, e, chosen[e]), rest = point.Costs.Rest(e, chosen[e]);
                sum.Add(scale * conducted.Current2, (j, 1), (e, -1));
                sum.Add(scale * conducted.Volts2PerHertz2 * volts * volts, (j, -1), (f, -2), (e, -1));
                sum.Add(scale * PerHertz(rest, volts), (j, -1), (f, 1), (e, 1));
                sum.Add(point.Weight * Always(rest, volts), (e, 1));
                if (e < _capacitors && point.Costs.Analysis.ChargeSharing?.Coefficients[e] is { IsDetermined: true } shared)
                {
                    sum.Add(scale * shared.ToDouble(), (j, 1), (f, -1), (e, -1));
                }
            }

            LossPolynomial others = point.Costs.Others;
            sum.Add(scale * others.Current2, (j, 1));
            sum.Add(scale * others.Volts2PerHertz2 * volts * volts, (j, -1), (f, -2));
            sum.Add(scale * PerHertz(others, volts), (j, -1), (f, 1));
            sum.Add(scale * point.Costs.DiodeVoltSeconds, (f, 1));
            foreach (CoreTerm core in point.Costs.Cores)
            {
                // at one hertz, as the ripple goes with one over the frequency
                sum.Add(scale * core.At(volts, 1), (j, -1), (f, core.Device.CoreFrequencyExponent - core.Device.CoreRippleExponent));
            }

            sum.Add(point.Weight * Always(others, volts));
        }

        return sum.Build();
    }

    private IEnumerable<(double Area, bool OfCapacitors, bool OfSwitches)> Budgets()
    {
        double inductors = _inductors.Sum(l => l.AreaSquareMetres);
        if (_area.TotalSquareMetres is { } total)
        {
            yield return (total - inductors, true, true);
        }

        if (_area.CapacitorSquareMetres is { } capacitors && _capacitors > 0)
        {
            yield return (capacitors, true, false);
        }

        if (_area.SwitchSquareMetres is { } switches)
        {
            yield return (switches, false, true);
        }
    }

    private IEnumerable<LogConvexFunction> Areas(int[] chosen)
    {
        foreach ((double area, bool ofCapacitors, bool ofSwitches) in Budgets())
        {
            PosynomialBuilder sum = new();
            for (int e = 0; e < _elements; e++)
            {
                if (e < _capacitors ? ofCapacitors : ofSwitches)
                {
                    AreaLaw own = AreaOf(e, chosen[e]);
                    sum.Add(own.Linear / area, (e, 1)).Add(own.Root / area, (e, 0.5)).Add(own.Constant / area);
                }
            }

            yield return sum.Build();
        }
    }

    // charge in and out of a capacitor in a period, over its capacitance and the voltage that it holds
    private IEnumerable<LogConvexFunction> Swings()
    {
        for (int p = 0; p < _points.Count; p++)
        {
            ModeAnalysis analysis = _points[p].Costs.Analysis;
            for (int c = 0; c < _capacitors; c++)
            {
                double charge = StageCurrents.ChargeOf(analysis, c);
                double held = analysis.IdealPoint.CapacitorVoltages[c] is { IsDetermined: true } voltage ? Math.Abs(voltage.ToDouble()) * _points[p].Point.InputVolts : 0;
                if (charge > 0 && held > 0)
                {
                    yield return new PosynomialBuilder().Add(charge / (CapacitorSwing * held), (CurrentOf(p), 1), (FrequencyOf(p), -1), (c, -1)).Build();
                }
            }
        }
    }

    private IEnumerable<LogConvexFunction> Currents()
    {
        for (int p = 0; p < _points.Count; p++)
        {
            ModeAnalysis analysis = _points[p].Costs.Analysis;
            for (int l = 0; l < _inductors.Count; l++)
            {
                if (_inductors[l].MaximumAmperes is not { } most)
                {
                    continue;
                }

                (double average, double rise) = StageCurrents.Of(analysis, l, _inductors[l]);
                PosynomialBuilder sum = new PosynomialBuilder().Add(average / most, (CurrentOf(p), 1));
                yield return sum.Add(rise * _points[p].Point.InputVolts / most, (FrequencyOf(p), -1)).Build();
            }
        }
    }

    private static double PerHertz(LossPolynomial p, double volts) => p.Hertz + (volts * (p.HertzVolts + (volts * p.HertzVolts2)));

    private static double Always(LossPolynomial p, double volts) => p.Constant + (volts * (p.Volts + (volts * p.Volts2)));
}
