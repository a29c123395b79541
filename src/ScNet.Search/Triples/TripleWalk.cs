using ScNet.Search.LoopSpaces;
using ScNet.Search.Pairs;

namespace ScNet.Search.Triples;

/// <summary>
/// Goes through all triples of loop spaces of three phases, up to renaming and turning capacitors, whose loops fix all
/// voltages and charges, and keeps for each ratio what no other beats.
/// </summary>
/// <remarks>
/// Loops of the three phases are k + 1 together. The phase of the fewest loops is the representative of its orbit; the
/// next goes through one space of each set that the representative's stabiliser makes; the last through all. Two phases
/// leave one vector of voltages more than the last has loops, so that its voltages are the minors of a small matrix
/// (docs/theory/atlas.md). Which phase comes first does not matter to voltages and charges. Cost: 35 million triples for
/// four capacitors.
/// </remarks>
internal sealed class TripleWalk
{
    private readonly int _capacitors;
    private readonly int _width;
    private readonly PlacedSpaces _spaces;
    private readonly long[] _matrix;
    private readonly long[] _minors;
    private readonly long[] _voltages;
    private readonly long[] _amounts;
    private readonly long[] _moved;
    private long[][] _allowed = [];

    public TripleWalk(PlacedSpaces spaces, int capacitors)
    {
        _capacitors = capacitors;
        _width = capacitors + LoopSpace.FirstCapacitorColumn;
        _spaces = spaces;
        _matrix = new long[_width * _width];
        _minors = new long[_width];
        _voltages = new long[_width];
        _amounts = new long[_width];
        _moved = new long[_width];
    }

    /// <summary>The triples that were decided.</summary>
    public long TripleCount { get; private set; }

    /// <summary>Networks, each counted with all its renamings and turns and all orders of its phases.</summary>
    public long LabelledNetworkCount { get; private set; }

    /// <summary>The fronts by ratio: output and input voltage in lowest terms, the input's positive.</summary>
    public SortedDictionary<(int Output, int Input), TripleFront> Fronts { get; } = [];

    /// <summary>Walks all triples.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public void Run(IReadOnlyList<LoopSpaceOrbit> orbits, CancellationToken cancellationToken)
    {
        for (int first = 1; 3 * first <= _capacitors + 1; first++)
        {
            for (int second = first; first + (2 * second) <= _capacitors + 1; second++)
            {
                int third = _capacitors + 1 - first - second;
                int orders = first == third ? 1 : first == second || second == third ? 3 : 6;
                int[] seconds = _spaces.OfDimension(second), thirds = _spaces.OfDimension(third);
                foreach (LoopSpaceOrbit orbit in orbits.Where(o => o.Space.Dimension == first))
                {
                    foreach ((int space, int size) in _spaces.Classes(seconds, orbit.Generators))
                    {
                        cancellationToken.ThrowIfCancellationRequested();
                        Run(orbit.Space, space, thirds, (long)orders * orbit.Size * size);
                    }
                }
            }
        }
    }

    private void Run(LoopSpace first, int second, int[] thirds, long labelled)
    {
        TripleCount += thirds.Length;
        if (!TryAllow(first, _spaces[second]))
        {
            return;
        }

        foreach (int third in thirds)
        {
            if (TrySolveVoltages(_spaces[third]) && TrySolveCharges(first, _spaces[second], _spaces[third]))
            {
                LabelledNetworkCount += labelled;
                Keep(_spaces.NumberOf(first), second, third);
            }
        }
    }

    // the vectors at right angles to two phases' loops: those of the first combined to be at right angles to the second's
    private bool TryAllow(LoopSpace first, LoopSpace second)
    {
        sbyte[][] allowed = first.Complement();
        int loops = second.Dimension;
        List<long[]> left = [.. allowed.Select(vector => vector.Select(v => (long)v).ToArray())];
        for (int loop = 0; loop < loops; loop++)
        {
            int pivot = left.FindIndex(vector => Product(vector, second.Row(loop)) != 0);
            if (pivot < 0)
            {
                return false;
            }

            long[] taken = left[pivot];
            long own = Product(taken, second.Row(loop));
            left.RemoveAt(pivot);
            for (int v = 0; v < left.Count; v++)
            {
                long other = Product(left[v], second.Row(loop));
                left[v] = Primitive([.. left[v].Zip(taken, (a, b) => (a * own) - (b * other))]);
            }
        }

        _allowed = [.. left];
        return true;
    }

    private bool TrySolveVoltages(LoopSpace third)
    {
        int rows = third.Dimension, columns = _allowed.Length;
        for (int loop = 0; loop < rows; loop++)
        {
            ReadOnlySpan<sbyte> signs = third.Row(loop);
            for (int v = 0; v < columns; v++)
            {
                _matrix[(loop * columns) + v] = Product(_allowed[v], signs);
            }
        }

        Span<long> minors = _minors.AsSpan(0, columns);
        if (rows == 1)
        {
            (minors[0], minors[1]) = (_matrix[1], -_matrix[0]);
        }
        else if (rows == 2)
        {
            ReadOnlySpan<long> m = _matrix;
            (minors[0], minors[1], minors[2]) = ((m[1] * m[5]) - (m[2] * m[4]), (m[2] * m[3]) - (m[0] * m[5]), (m[0] * m[4]) - (m[1] * m[3]));
        }
        else if (!NullVector.TryFind(_matrix.AsSpan(0, rows * columns), columns, minors))
        {
            return false;
        }

        for (int branch = 0; branch < _width; branch++)
        {
            long voltage = 0;
            for (int v = 0; v < columns; v++)
            {
                voltage += minors[v] * _allowed[v][branch];
            }

            if (voltage == 0)
            {
                return false;
            }

            _voltages[branch] = voltage;
        }

        return true;
    }

    // the amounts of all loops that leave every capacitor as it was; then what each moves, twice
    private bool TrySolveCharges(LoopSpace first, LoopSpace second, LoopSpace third)
    {
        int loops = _capacitors + 1;
        Fill(first, 0);
        Fill(second, first.Dimension);
        Fill(third, first.Dimension + second.Dimension);
        Span<long> amounts = _amounts.AsSpan(0, loops);
        if (!NullVector.TryFind(_matrix.AsSpan(0, _capacitors * loops), loops, amounts))
        {
            return false;
        }

        _moved.AsSpan().Clear();
        AddCharges(first, amounts);
        AddCharges(second, amounts[first.Dimension..]);
        AddCharges(third, amounts[(first.Dimension + second.Dimension)..]);
        return !_moved.AsSpan(LoopSpace.FirstCapacitorColumn).Contains(0);
    }

    private void Fill(LoopSpace space, int column)
    {
        for (int loop = 0; loop < space.Dimension; loop++)
        {
            ReadOnlySpan<sbyte> signs = space.Row(loop);
            for (int c = 0; c < _capacitors; c++)
            {
                _matrix[(c * (_capacitors + 1)) + column + loop] = signs[LoopSpace.FirstCapacitorColumn + c];
            }
        }
    }

    // magnitudes on capacitors; input and output keep their sign
    private void AddCharges(LoopSpace space, ReadOnlySpan<long> amounts)
    {
        for (int branch = 0; branch < _width; branch++)
        {
            long charge = 0;
            for (int loop = 0; loop < space.Dimension; loop++)
            {
                charge += amounts[loop] * space.Row(loop)[branch];
            }

            _moved[branch] += branch < LoopSpace.FirstCapacitorColumn ? charge : Math.Abs(charge);
        }
    }

    private void Keep(int first, int second, int third)
    {
        long product = 0, highest = 0, charge = 0;
        for (int c = LoopSpace.FirstCapacitorColumn; c < _width; c++)
        {
            long voltage = Math.Abs(_voltages[c]);
            product += _moved[c] * voltage;
            highest = Math.Max(highest, voltage);
            charge += _moved[c];
        }

        long input = _voltages[LoopSpace.InputColumn], output = _voltages[LoopSpace.OutputColumn], delivered = 2 * Math.Abs(_moved[LoopSpace.OutputColumn]);
        TripleSums sums = new(
            MeasureKey.Quotient(product, delivered * Math.Abs(output)),
            MeasureKey.Quotient(highest, Math.Abs(input)),
            MeasureKey.Quotient(charge, delivered));
        long common = Kernel.Integers.Gcd(input, output) * Math.Sign(input);
        (int, int) ratio = ((int)(output / common), (int)(input / common));
        if (!Fronts.TryGetValue(ratio, out TripleFront? front))
        {
            Fronts.Add(ratio, front = new TripleFront());
        }

        front.Add(sums, first, second, third);
    }

    private static long Product(ReadOnlySpan<long> vector, ReadOnlySpan<sbyte> signs)
    {
        long product = 0;
        for (int c = 0; c < vector.Length; c++)
        {
            product += vector[c] * signs[c];
        }

        return product;
    }

    private static long[] Primitive(long[] vector)
    {
        long divisor = vector.Aggregate(0L, Kernel.Integers.Gcd);
        return divisor > 1 ? [.. vector.Select(v => v / divisor)] : vector;
    }
}
