using ScNet.Numerics;

namespace ScNet.Design.Sizing;

/// <summary>What area, resistance and switching are worth at a solution: with these prices every element can be judged by itself.</summary>
/// <remarks>
/// The Lagrangian of the program is a sum over elements once the multipliers of areas and impedances and the frequencies stand.
/// Derivation: docs/theory/sizing.md, "Kinds of devices".
/// </remarks>
internal sealed class DevicePrices
{
    private readonly SizingTask _task;
    private readonly SizingPoint[] _points;
    private readonly double[] _frequencies;
    private readonly double[] _wattsPerOhm;
    private readonly double _ofCapacitors;
    private readonly double _ofSwitches;
    private readonly double _weights;
    private readonly SizedMode[] _modes;

    public DevicePrices(SizingTask task, SizingPoint[] points, SizingProgram program, GeometricOptimum optimum, SizedMode[] modes)
    {
        (_task, _points, _modes) = (task, points, modes);
        _weights = points.Sum(p => p.Weight);
        double watts = Math.Exp(optimum.LogValue);
        _frequencies = [.. points.Select((_, p) => Math.Exp(optimum.Logarithms[program.FrequencyOf(p)]))];
        int[] pointOf = program.PointOfConstraint();
        _wattsPerOhm = new double[points.Length];
        double[] areas = new double[3];
        for (int k = 0; k < pointOf.Length; k++)
        {
            double price = optimum.Multipliers[k] * watts;
            if (pointOf[k] < 0)
            {
                areas[AreaOf(k)] = price;
            }
            else
            {
                int p = pointOf[k];
                _wattsPerOhm[p] += price / (points[p].OutputVolts is null ? Math.Exp(optimum.Logarithms[program.ImpedanceOf(p)]) : task.NeededOhms(points[p]));
            }
        }

        double Per(int kind, double? area) => area is { } known ? areas[kind] / known : 0;
        _ofCapacitors = Per(0, task.Area.TotalSquareMetres) + Per(1, task.Area.CapacitorSquareMetres);
        _ofSwitches = Per(0, task.Area.TotalSquareMetres) + Per(2, task.Area.SwitchSquareMetres);
    }

    /// <summary>The best option of each element at its value; one that betters less than by a share of its cost is not taken.</summary>
    public int[] BestOptions(int[] options, double[] values, double worth) => [.. options.Select((own, e) =>
    {
        int best = Enumerable.Range(0, _task.OptionCount(e)).MinBy(o => Cost(e, o, values[e]));
        return Cost(e, best, values[e]) < (1 - worth) * Cost(e, own, values[e]) ? best : own;
    })];

    // watts, the area at its price included
    private double Cost(int element, int option, double value)
    {
        double size = Math.Max(value, _task.LeastValue(element, option));
        double cost = _task.AreaOf(element, option).At(size) * (element < _task.CapacitorCount ? _ofCapacitors : _ofSwitches);
        for (int p = 0; p < _points.Length; p++)
        {
            int mode = _task.ModeOf(_points[p]);
            ElementCost own = _task.Costs[mode].At(element, option, _points[p].InputVolts);
            cost += _points[p].Weight / _weights * ((_frequencies[p] * ((own.PerHertz * size) + own.PerHertzFixed)) + (own.Watts * size) + own.WattsFixed);
            if (element < _task.CapacitorCount)
            {
                cost += _wattsPerOhm[p] * _modes[mode].FastOfCapacitors[element] * _task.EsrSeconds(element, option) / size;
            }
        }

        return cost;
    }

    // the order of SizingProgram.Areas
    private int AreaOf(int constraint)
    {
        int[] kinds = [.. new[] { (0, _task.Area.TotalSquareMetres), (1, _task.CapacitorCount > 0 ? _task.Area.CapacitorSquareMetres : null), (2, _task.Area.SwitchSquareMetres) }
            .Where(k => k.Item2 is not null).Select(k => k.Item1)];
        return kinds[constraint];
    }
}
