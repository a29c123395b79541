using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// Mixtures of balanced capacitor charges that meet Kirchhoff's voltage law at the phase ends, tested with
/// every flow z that leaves the load alone: Σ z · v = 0, v being the running sum of charge over capacitance.
/// </summary>
/// <remarks>
/// Equations: docs/theory/value-decided-flow.md. Columns hold charge over the root of capacitance, index
/// capacitor · phases + phase. With two phases the condition is least dissipation; with more, the matrix
/// zᵀLz' is solved, whose symmetric part is positive, with residuals taken from the charges themselves.
/// </remarks>
internal sealed class VoltageLaw
{
    // A column of unit length that adds less than this is a combination of the ones before it.
    private const double DependentColumn = 1e-14;
    private const int Refinements = 2;

    private readonly int _phases;
    private readonly double[] _scale;
    private readonly ThinColumns _thin;
    private readonly SparseVector[] _rows;
    private readonly int[] _position;

    private VoltageLaw(SparseVector[] columns, int phases)
    {
        _phases = phases;
        _scale = Array.ConvertAll(columns, c => c.IsZero ? 1 : 1 / c.Length());
        _thin = ThinColumns.Of([.. columns.Select((c, k) => c.Weighted(_ => _scale[k]))]);
        _rows = Products(_thin.Columns, phases);
        _position = FillOrder.Of(columns.Length, _rows.Select(r => r.Indices.ToArray()));
    }

    /// <summary>The amounts of flows that together deliver one unit.</summary>
    /// <param name="columns">The charges of each flow.</param>
    /// <param name="delivered">What a unit of each delivers.</param>
    /// <param name="phases">The number of phases.</param>
    public static double[] Mixture(SparseVector[] columns, double[] delivered, int phases)
    {
        if (phases <= 2)
        {
            return LeastDissipation.Of(columns).Amounts(delivered);
        }

        double[] amounts = new VoltageLaw(columns, phases).Solve(delivered);
        double sum = amounts.Zip(delivered, (a, d) => a * d).Sum();
        return Array.ConvertAll(amounts, a => a / sum);
    }

    /// <summary>The amounts of directions that, added to given charges, meet the law.</summary>
    public static double[] Amounts(SparseVector[] columns, SparseVector charges, int phases)
    {
        SparseVector sums = RunningSums(charges, phases);
        return new VoltageLaw(columns, phases).Solve(Array.ConvertAll(columns, c => -Dot(c, sums)));
    }

    private double[] Solve(double[] right)
    {
        int n = _scale.Length;
        double[] wanted = _thin.Row([.. right.Zip(_scale, (r, s) => r * s)]);
        var x = new double[n];
        double[] residual = [.. wanted];
        for (int pass = 0; pass <= Refinements; pass++)
        {
            double[] step = Step(residual);
            for (int k = 0; k < n; k++)
            {
                x[k] += step[k];
            }

            Dictionary<int, double> charges = [];
            for (int k = 0; k < n; k++)
            {
                SparseVector own = _thin.Columns[k];
                for (int e = 0; e < own.Count && x[k] != 0; e++)
                {
                    charges[own.Indices[e]] = charges.GetValueOrDefault(own.Indices[e]) + (x[k] * own.Values[e]);
                }
            }

            SparseVector sums = RunningSums(SparseVector.Of([.. charges.Keys], [.. charges.Values]), _phases);
            for (int k = 0; k < n; k++)
            {
                residual[k] = wanted[k] - Dot(_thin.Columns[k], sums);
            }
        }

        _thin.ToFirst(x);
        return [.. x.Zip(_scale, (a, s) => a * s)];
    }

    private double[] Step(double[] right)
    {
        int n = _scale.Length;
        SparseTriangle triangle = SparseTriangle.Of(
            _rows.Select((row, a) => SparseVector.Of(
                [.. row.Indices.ToArray().Select(b => _position[b]), n], [.. row.Values, right[a]])).Where(r => !r.IsZero).OrderBy(r => r.Indices[0]).ThenBy(r => r.Count),
            n,
            DependentColumn);
        double[] x = triangle.Column(n);
        triangle.Solve(x);
        return Array.ConvertAll(_position, p => x[p]);
    }

    // zᵀLz' of every pair of columns
    private static SparseVector[] Products(SparseVector[] columns, int phases)
    {
        SparseVector[] sums = Array.ConvertAll(columns, c => RunningSums(c, phases));
        Dictionary<int, List<(int Column, double Value)>> byIndex = [];
        for (int b = 0; b < sums.Length; b++)
        {
            for (int e = 0; e < sums[b].Count; e++)
            {
                if (!byIndex.TryGetValue(sums[b].Indices[e], out List<(int Column, double Value)>? list))
                {
                    byIndex.Add(sums[b].Indices[e], list = []);
                }

                list.Add((b, sums[b].Values[e]));
            }
        }

        return Array.ConvertAll(columns, column =>
        {
            Dictionary<int, double> row = [];
            for (int e = 0; e < column.Count; e++)
            {
                foreach ((int other, double value) in byIndex.GetValueOrDefault(column.Indices[e], []))
                {
                    row[other] = row.GetValueOrDefault(other) + (column.Values[e] * value);
                }
            }

            return SparseVector.Of([.. row.Keys], [.. row.Values]);
        });
    }

    /// <summary>What has entered each capacitor at the end of each phase. Charges balance: after the last one of a capacitor nothing is left.</summary>
    public static SparseVector RunningSums(SparseVector charges, int phases)
    {
        List<int> indices = [];
        List<double> values = [];
        for (int e = 0; e < charges.Count;)
        {
            int capacitor = charges.Indices[e] / phases;
            double sum = 0;
            for (; e < charges.Count - 1 && charges.Indices[e + 1] / phases == capacitor; e++)
            {
                sum += charges.Values[e];
                for (int index = charges.Indices[e]; index < charges.Indices[e + 1] && sum != 0; index++)
                {
                    indices.Add(index);
                    values.Add(sum);
                }
            }

            e++;
        }

        return SparseVector.Of([.. indices], [.. values]);
    }

    /// <summary>The sum of products. Cost: entries of the shorter one, times the logarithm of those of the longer.</summary>
    public static double Dot(SparseVector left, SparseVector right)
    {
        (SparseVector few, SparseVector many) = left.Count < right.Count ? (left, right) : (right, left);
        double sum = 0;
        for (int e = 0; e < few.Count; e++)
        {
            sum += few.Values[e] * many[few.Indices[e]];
        }

        return sum;
    }
}
