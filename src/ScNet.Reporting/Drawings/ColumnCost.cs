namespace ScNet.Reporting.Drawings;

/// <summary>How good an order of columns is: crossings count most, then width and the length of wires.</summary>
/// <remarks>Cost of one evaluation: parts times lines.</remarks>
internal sealed class ColumnCost
{
    /// <summary>What one conflict costs: a drawing with any is no drawing.</summary>
    public const int Conflict = 1_000_000;

    private const int Crossing = 260;
    private const int Column = 50;
    private const int LevelWire = 40;
    private const int UprightWire = 20;
    private const int Disorder = 3;
    private const int Chain = -60;

    private readonly RowPlan _plan;
    private readonly (int Top, int Bottom)[] _rows;
    private readonly bool[] _isLevel;
    private readonly bool[,] _mayShare;
    private readonly bool[,] _isChain;
    private readonly int[] _minimum;
    private readonly int[] _maximum;
    private readonly int _source;
    private readonly int[] _pull;

    public ColumnCost(RowPlan plan, int[] pull)
    {
        _plan = plan;
        _pull = pull;
        int count = plan.Parts.Length;
        _rows = [.. Enumerable.Range(0, count).Select(plan.Rows)];
        _isLevel = [.. Enumerable.Range(0, count).Select(plan.IsLevel)];
        _minimum = new int[plan.LineNet.Length];
        _maximum = new int[plan.LineNet.Length];
        _source = Array.FindIndex(plan.Parts, p => p.Part.Kind == PartKind.Source);
        _mayShare = new bool[count, count];
        _isChain = new bool[count, count];
        for (int p = 0; p < count; p++)
        {
            for (int q = 0; q < count; q++)
            {
                _mayShare[p, q] = p != q && MayShare(p, q);
                // parts of one kind that meet, one above the other, look like the chain that they are
                _isChain[p, q] = _mayShare[p, q] && plan.Parts[p].Part.Kind == plan.Parts[q].Part.Kind
                    && (_rows[p].Bottom == _rows[q].Top || _rows[q].Bottom == _rows[p].Top);
            }
        }
    }

    /// <summary>Whether two parts may stand in one column, one above the other.</summary>
    public bool MayShareColumn(int part, int other) => _mayShare[part, other];

    /// <summary>Whether two parts of one kind meet, one above the other.</summary>
    public bool IsChain(int part, int other) => _isChain[part, other];

    /// <summary>The cost of columns, the smaller the better.</summary>
    /// <param name="column">The column of each part, from 0.</param>
    /// <param name="columnCount">The number of columns.</param>
    public int Of(int[] column, int columnCount)
    {
        int cost = columnCount * Column;
        Array.Fill(_minimum, int.MaxValue);
        Array.Fill(_maximum, -1);
        for (int p = 0; p < column.Length; p++)
        {
            Reach(_plan.Parts[p].First, column[p]);
            Reach(_plan.Parts[p].Second, column[p]);
            cost += (_rows[p].Bottom - _rows[p].Top) * UprightWire;
            for (int q = 0; q < p; q++)
            {
                if (column[p] == column[q])
                {
                    cost += !_mayShare[p, q] ? Conflict : _isChain[p, q] ? Chain : 0;
                }
            }
        }

        for (int l = 0; l < _minimum.Length; l++)
        {
            cost += (_maximum[l] - _minimum[l]) * LevelWire;
            for (int k = 0; k < l; k++)
            {
                if (_plan.LineRow[k] == _plan.LineRow[l] && _minimum[k] < _maximum[l] && _minimum[l] < _maximum[k])
                {
                    cost += Conflict;
                }
            }
        }

        for (int p = 0; p < column.Length; p++)
        {
            if (!_isLevel[p])
            {
                cost += Crossings(p, column[p]) * Crossing;
            }

            for (int q = 0; q < p; q++)
            {
                if (column[p] < column[q] && _plan.Parts[p].Part.Kind == _plan.Parts[q].Part.Kind)
                {
                    cost += Disorder;
                }
            }

            if (_pull[p] > 0)
            {
                cost += (columnCount - 1 - column[p]) * _pull[p];
            }
        }

        return cost;
    }

    private int Crossings(int part, int column)
    {
        int count = 0;
        (int top, int bottom) = _rows[part];
        for (int l = 0; l < _minimum.Length; l++)
        {
            int row = _plan.LineRow[l];
            if (row > top && row < bottom && _minimum[l] <= column && column <= _maximum[l])
            {
                count++;
            }
        }

        return count;
    }

    private void Reach(int line, int column)
    {
        _minimum[line] = Math.Min(_minimum[line], column);
        _maximum[line] = Math.Max(_maximum[line], column);
    }

    private bool MayShare(int p, int q)
    {
        if (_isLevel[p] || _isLevel[q] || p == _source || q == _source)
        {
            return false;
        }

        (int upper, int lower) = _rows[p].Top < _rows[q].Top ? (p, q) : (q, p);
        return _rows[upper].Bottom < _rows[lower].Top || (_rows[upper].Bottom == _rows[lower].Top && LineAt(upper, _rows[upper].Bottom) == LineAt(lower, _rows[lower].Top));
    }

    private int LineAt(int part, int row) => _plan.LineRow[_plan.Parts[part].First] == row ? _plan.Parts[part].First : _plan.Parts[part].Second;
}
