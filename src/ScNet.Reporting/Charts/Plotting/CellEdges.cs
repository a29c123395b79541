namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Where the cells of rising values meet: half way between neighbours, on a logarithmic scale where factors are equal rather than steps.</summary>
internal sealed class CellEdges
{
    // beyond it values over a logarithmic range crowd on an even one
    private const double LogarithmicFactor = 8;

    private CellEdges(bool isLogarithmic, IReadOnlyList<double> edges) => (IsLogarithmic, Edges) = (isLogarithmic, edges);

    public bool IsLogarithmic { get; }

    /// <summary>One more than there are values.</summary>
    public IReadOnlyList<double> Edges { get; }

    public static CellEdges Of(IReadOnlyList<double> values, string parameter)
    {
        if (values.Count < 2 || values.Zip(values.Skip(1), (a, b) => b > a).Any(rises => !rises))
        {
            throw new ArgumentException($"Expected a map with at least two rising values on either axis, but got {string.Join(", ", values)}.", parameter);
        }

        bool isLogarithmic = values[^1] / values[0] > LogarithmicFactor;
        double[] places = [.. values.Select(v => isLogarithmic ? Math.Log(v) : v)];
        double[] middles = [.. places.Zip(places.Skip(1), (a, b) => (a + b) / 2)];
        double[] edges = [places[0] - (middles[0] - places[0]), .. middles, places[^1] + (places[^1] - middles[^1])];
        return new CellEdges(isLogarithmic, [.. edges.Select(e => isLogarithmic ? Math.Exp(e) : e)]);
    }

    public ChartAxis Axis(string title, string unit) => IsLogarithmic
        ? ChartAxis.Logarithmic(title, Edges[0], Edges[^1], unit)
        : ChartAxis.Linear(title, Edges[0], Edges[^1], unit, 6, isExtended: false);
}
