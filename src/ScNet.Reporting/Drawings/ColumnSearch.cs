namespace ScNet.Reporting.Drawings;

/// <summary>
/// Finds a good column for every part of a <see cref="RowPlan"/>: from every part in a column of its own, and from chains in
/// columns, parts are moved one by one, columns as a whole, rows of equal
/// level against each other, as long as <see cref="ColumnCost"/> falls; then some parts are thrown elsewhere and the descent
/// begins anew. The best of all is kept. The same on every run: the throws come from a fixed sequence.
/// </summary>
/// <remarks>
/// Iterated local search, H. R. Lourenço, O. C. Martin and T. Stützle, in "Handbook of Metaheuristics", 2003 (from memory).
/// </remarks>
internal sealed class ColumnSearch
{
    private const int Evaluations = 40_000;
    private const int IdleRounds = 10;

    private readonly int[] _pull;

    // the first place anybody may move to: behind the source, or before all where there is none
    private readonly int _first;
    private ColumnCost _cost;
    private readonly int _source;
    private int[] _column;
    private int[] _trial;
    private int _columnCount;
    private int _value;
    private int _left = Evaluations;
    private uint _throws = 2463534242;

    private ColumnSearch(RowPlan plan, int[] order, bool isChained)
    {
        Plan = plan;
        // the load and outputs are drawn to the right
        _pull = [.. plan.Parts.Select(p => p.Part.Kind switch { PartKind.Load => 400, PartKind.CurrentLoad => 150, _ => 0 })];
        _cost = new ColumnCost(plan, _pull);
        _column = isChained ? Chained(order) : Spread(order);
        _trial = new int[order.Length];
        _source = Array.FindIndex(plan.Parts, p => p.Part.Kind == PartKind.Source);
        _first = _source >= 0 ? 1 : -1;
        _columnCount = _column.Max() + 1;
        _value = _cost.Of(_column, _columnCount);
    }

    private RowPlan Plan { get; set; }

    /// <summary>Searches.</summary>
    /// <param name="plan">The rows to begin with.</param>
    /// <param name="order">The parts from left to right to begin with; the source first.</param>
    /// <returns>The rows, the column of each part, and whether the result is free of conflicts.</returns>
    public static (RowPlan Plan, int[] Column, bool IsSound) Find(RowPlan plan, int[] order)
    {
        ColumnSearch spread = new(plan, order, isChained: false);
        ColumnSearch chained = new(plan, order, isChained: true);
        spread.Descend();
        chained.Descend();
        ColumnSearch search = chained._value <= spread._value ? chained : spread;
        search.Perturb();
        return (search.Plan, search._column, search._value < ColumnCost.Conflict);
    }

    // every part in a column of its own
    private static int[] Spread(int[] order)
    {
        int[] column = new int[order.Length];
        for (int i = 0; i < order.Length; i++)
        {
            column[order[i]] = i;
        }

        return column;
    }

    // parts of one kind that meet, one above the other, in one column
    private int[] Chained(int[] order)
    {
        List<List<int>> columns = [];
        foreach (int part in order)
        {
            List<int>? chain = columns.FirstOrDefault(c => c.TrueForAll(p => _cost.MayShareColumn(p, part)) && c.Exists(p => _cost.IsChain(p, part)));
            if (chain is null)
            {
                columns.Add([part]);
            }
            else
            {
                chain.Add(part);
            }
        }

        int[] column = new int[order.Length];
        for (int c = 0; c < columns.Count; c++)
        {
            columns[c].ForEach(p => column[p] = c);
        }

        return column;
    }

    private void Perturb()
    {
        for (int idle = 0; idle < IdleRounds && _left > 0; idle++)
        {
            (RowPlan plan, ColumnCost cost, int[] column, int count, int value) = (Plan, _cost, (int[])_column.Clone(), _columnCount, _value);
            for (int i = 0; i < 3; i++)
            {
                Move(Next(_column.Length), (2 * Next(_columnCount)) + 1, isForced: true);
            }

            Descend();
            if (_value < value)
            {
                idle = -1;
            }
            else if (_value > value)
            {
                (Plan, _cost, _column, _columnCount, _value) = (plan, cost, column, count, value);
            }
        }
    }

    private void Descend()
    {
        for (bool hasImproved = true; hasImproved && _left > 0;)
        {
            hasImproved = false;
            for (int p = 0; p < _column.Length; p++)
            {
                for (int place = _first; place <= 2 * _columnCount; place++)
                {
                    hasImproved |= Move(p, place, isForced: false);
                }
            }

            for (int c = 0; c < _columnCount; c++)
            {
                for (int place = _first; place < 2 * _columnCount; place += 2)
                {
                    hasImproved |= MoveColumn(c, place);
                }
            }

            for (int r = 0; r < Plan.RowCount; r++)
            {
                for (int s = 0; s < r; s++)
                {
                    hasImproved |= Plan.RowLevel[r] == Plan.RowLevel[s] && SwapRows(r, s);
                }
            }
        }
    }

    // an even place is a column, an odd one a new column behind it; the source stays where it is
    private bool Move(int part, int place, bool isForced)
    {
        if (part == _source || place == 2 * _column[part])
        {
            return false;
        }

        for (int p = 0; p < _column.Length; p++)
        {
            _trial[p] = 2 * _column[p];
            if (p != part && _trial[p] == place && !_cost.MayShareColumn(p, part))
            {
                return false;
            }
        }

        _trial[part] = place;
        return Take(isForced);
    }

    private bool MoveColumn(int column, int place)
    {
        if (_source >= 0 && _column[_source] == column)
        {
            return false;
        }

        for (int p = 0; p < _column.Length; p++)
        {
            _trial[p] = _column[p] == column ? place : 2 * _column[p];
        }

        return Take(isForced: false);
    }

    // numbers the places of the trial from 0 without gaps and keeps it where it is better
    private bool Take(bool isForced)
    {
        _left--;
        Span<int> number = stackalloc int[(2 * _columnCount) + 2];
        foreach (int place in _trial)
        {
            number[place + 1] = 1;
        }

        int count = 0;
        foreach (ref int entry in number)
        {
            entry = entry == 0 ? 0 : count++;
        }

        for (int p = 0; p < _trial.Length; p++)
        {
            _trial[p] = number[_trial[p] + 1];
        }

        int value = _cost.Of(_trial, count);
        if (value >= _value && !isForced)
        {
            return false;
        }

        (_column, _trial, _columnCount, _value) = (_trial, _column, count, value);
        return true;
    }

    private bool SwapRows(int row, int other)
    {
        _left--;
        RowPlan plan = Plan.WithSwapped(row, other);
        ColumnCost cost = new(plan, _pull);
        int value = cost.Of(_column, _columnCount);
        if (value >= _value)
        {
            return false;
        }

        (Plan, _cost, _value) = (plan, cost, value);
        return true;
    }

    // xorshift, G. Marsaglia, "Xorshift RNGs", 2003 (from memory)
    private int Next(int count)
    {
        _throws ^= _throws << 13;
        _throws ^= _throws >> 17;
        _throws ^= _throws << 5;
        return (int)(_throws % (uint)count);
    }
}
