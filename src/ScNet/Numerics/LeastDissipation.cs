namespace ScNet.Numerics;

/// <summary>
/// The mixture of given flows that dissipates least: minimise ‖A x‖ over the amounts x of the columns of A,
/// where a combination of what the columns deliver is one. Columns without a common row cost nothing together.
/// </summary>
/// <remarks>
/// With A = QR the least is at R x = R⁻ᵀd / ‖R⁻ᵀd‖², d what each column delivers: no right-hand side in the
/// space of A is needed, so the triangle alone is backward stable. Equations: docs/theory/value-decided-flow.md.
/// Cost: by the fill of R (<see cref="SparseTriangle"/>).
/// </remarks>
internal sealed class LeastDissipation
{
    // A column of unit length that adds less than this to the ones before it is a combination of them.
    private const double DependentColumn = 1e-13;

    private readonly double[] _scale;
    private readonly ThinColumns _thin;
    private readonly int[] _position;
    private readonly SparseTriangle _triangle;

    private LeastDissipation(SparseVector[] columns)
    {
        _scale = Array.ConvertAll(columns, c => c.IsZero ? 1 : 1 / c.Length());
        _thin = ThinColumns.Of([.. columns.Select((c, k) => c.Weighted(_ => _scale[k]))]);
        (int Index, List<int> Members)[] rows = [.. ThinColumns.SparseRowsOf(_thin.Columns)];
        _position = FillOrder.Of(columns.Length, rows.Select(r => r.Members.ToArray()));
        _triangle = SparseTriangle.Of(
            rows.Select(r => SparseVector.Of([.. r.Members.Select(c => _position[c])], [.. r.Members.Select(c => _thin.Columns[c][r.Index])]))
                .OrderBy(r => r.Indices[0]).ThenBy(r => r.Count),
            columns.Length,
            DependentColumn);
    }

    /// <summary>Prepares flows.</summary>
    /// <param name="columns">Each flow, its entries times the root of what a unit dissipates there.</param>
    public static LeastDissipation Of(SparseVector[] columns) => new(columns);

    /// <summary>The amount of each column in the mixture that delivers one unit.</summary>
    /// <param name="delivered">What a unit of each column delivers; not zero for every column that dissipates.</param>
    public double[] Amounts(ReadOnlySpan<double> delivered)
    {
        double[] x = new double[_scale.Length];
        double[] row = _thin.Row(Scaled(delivered));
        for (int c = 0; c < x.Length; c++)
        {
            x[_position[c]] = row[c];
        }

        _triangle.SolveTransposed(x);
        double square = 0;
        foreach (double value in x)
        {
            square += value * value;
        }

        for (int p = 0; p < x.Length; p++)
        {
            x[p] /= square;
        }

        _triangle.Solve(x);
        return ToColumns(x);
    }

    /// <summary>Independent mixtures that dissipate nothing, each by amount of the columns.</summary>
    public List<SparseVector> Unseen()
    {
        List<SparseVector> unseen = [];
        for (int c = 0; c < _scale.Length; c++)
        {
            int p = _position[c];
            if (!_triangle.IsDependent(p))
            {
                continue;
            }

            var x = new double[_scale.Length];
            if (!_thin.Columns[c].IsZero)
            {
                x = Array.ConvertAll(_triangle.Column(p), v => -v);
                _triangle.Solve(x);
            }

            x[p] = 1;
            unseen.Add(SparseVector.OfDense(ToColumns(x)));
        }

        return unseen;
    }

    private double[] Scaled(ReadOnlySpan<double> delivered)
    {
        var scaled = new double[_scale.Length];
        for (int k = 0; k < scaled.Length; k++)
        {
            scaled[k] = delivered[k] * _scale[k];
        }

        return scaled;
    }

    private double[] ToColumns(double[] x)
    {
        double[] amounts = Array.ConvertAll(_position, p => x[p]);
        _thin.ToFirst(amounts);
        for (int k = 0; k < amounts.Length; k++)
        {
            amounts[k] *= _scale[k];
        }

        return amounts;
    }
}
