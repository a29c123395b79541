using System.Numerics;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>
/// Goes through all pairs of a unit, each once, and finds those whose loops fix every voltage, none of them zero.
/// </summary>
/// <remarks>
/// The voltages that the fixed phase allows are combinations x of a few vectors N, one more than the moving phase has
/// loops. Each of the moving phase's loops b asks for (N b)·x = 0; so x is the vector of signed minors of N Bᵀ. That
/// small matrix is a sum over branches: from one way to move the capacitors to the next only the parts of the last
/// capacitors change (docs/theory/atlas.md). One per thread.
/// </remarks>
internal sealed class PairWalk
{
    private readonly int _capacitors;
    private readonly ExchangedPairs _exchanged;
    private readonly long[] _potentials;
    private readonly long[] _transposed;
    private readonly int[] _sums;
    private int[] _parts = [];
    private sbyte[][] _allowed = [];
    private int _rows;
    private int _loops;

    public PairWalk(SignedPermutations group)
    {
        _capacitors = group.Capacitors;
        _exchanged = new ExchangedPairs(group);
        Voltages = new int[_capacitors + LoopSpace.FirstCapacitorColumn];
        _potentials = new long[_capacitors + LoopSpace.FirstCapacitorColumn];
        _transposed = new long[_potentials.Length * _potentials.Length];
        _sums = new int[(_capacitors + 1) * _transposed.Length];
    }

    /// <summary>The pairs that were decided.</summary>
    public long PairCount { get; private set; }

    /// <summary>The voltages of the branches of the pair at hand, in the numbering of the fixed space, up to a common factor.</summary>
    public int[] Voltages { get; }

    /// <summary>The orbit whose representative stays.</summary>
    public LoopSpaceOrbit Fixed { get; private set; } = null!;

    /// <summary>The orbit whose spaces are gone through.</summary>
    public MovingOrbit Moving { get; private set; } = null!;

    /// <summary>The part of N Bᵀ that capacitors alone give, N's rows by loops.</summary>
    public ReadOnlySpan<int> CapacitorSums => _sums.AsSpan(_capacitors * _rows * _loops, _rows * _loops);

    /// <summary>The vectors that the fixed phase allows.</summary>
    public sbyte[][] Allowed => _allowed;

    /// <summary>Walks all pairs of a fixed space with the spaces of an orbit.</summary>
    /// <param name="fixedOrbit">The orbit whose representative stays.</param>
    /// <param name="moving">The other orbit, of as many loops or fewer.</param>
    /// <param name="visitor">Told of each pair with voltages.</param>
    public void Run(LoopSpaceOrbit fixedOrbit, MovingOrbit moving, IPairVisitor visitor)
    {
        Fixed = fixedOrbit;
        Moving = moving;
        _allowed = fixedOrbit.Space.Complement();
        _rows = _allowed.Length;
        _loops = moving.Orbit.Space.Dimension;
        _exchanged.Start(fixedOrbit, moving);
        FillParts();
        _sums.AsSpan(0, _rows * _loops).Clear();
        uint[] ways = moving.Ways;
        uint before = ~ways[0];
        for (int place = 0; place < ways.Length; place++)
        {
            if (!_exchanged.AreNone && !_exchanged.IsFirst(place))
            {
                continue;
            }

            int same = (BitOperations.LeadingZeroCount(ways[place] ^ before) / 4) - (8 - _capacitors);
            AddParts(ways[place], Math.Max(0, same));
            before = ways[place];
            PairCount++;
            if (TrySolve())
            {
                visitor.Visit(this, place);
            }
        }
    }

    // the part that a capacitor adds when it takes a position, for every capacitor and position
    private void FillParts()
    {
        int size = _rows * _loops;
        _parts = new int[(_capacitors * _capacitors + 1) * size];
        for (int row = 0; row < _rows; row++)
        {
            for (int loop = 0; loop < _loops; loop++)
            {
                ReadOnlySpan<sbyte> branches = Moving.Orbit.Space.Row(loop);
                for (int c = 0; c < _capacitors; c++)
                {
                    for (int position = 0; position < _capacitors; position++)
                    {
                        _parts[(((c * _capacitors) + position) * size) + (row * _loops) + loop] =
                            _allowed[row][LoopSpace.FirstCapacitorColumn + position] * branches[LoopSpace.FirstCapacitorColumn + c];
                    }
                }

                _parts[(_capacitors * _capacitors * size) + (row * _loops) + loop] =
                    (_allowed[row][LoopSpace.InputColumn] * branches[LoopSpace.InputColumn])
                    + (_allowed[row][LoopSpace.OutputColumn] * branches[LoopSpace.OutputColumn]);
            }
        }
    }

    // sums from the first capacitor on in which a way differs from the one before
    private void AddParts(uint way, int firstChanged)
    {
        int size = _rows * _loops;
        for (int c = firstChanged; c < _capacitors; c++)
        {
            uint bits = way >> (4 * (_capacitors - 1 - c));
            int position = (int)(bits >> 1 & 7), sign = 1 - (2 * (int)(bits & 1));
            ReadOnlySpan<int> part = _parts.AsSpan(((c * _capacitors) + position) * size, size), before = _sums.AsSpan(c * size, size);
            Span<int> after = _sums.AsSpan((c + 1) * size, size);
            for (int e = 0; e < part.Length; e++)
            {
                after[e] = before[e] + (sign * part[e]);
            }
        }
    }

    // x from the loops' small matrix, then every branch's voltage
    private bool TrySolve()
    {
        ReadOnlySpan<int> sums = CapacitorSums, ends = _parts.AsSpan(_capacitors * _capacitors * _rows * _loops);
        Span<long> x = _potentials.AsSpan(0, _rows);
        if (_loops == 1)
        {
            (x[0], x[1]) = (-(sums[1] + ends[1]), sums[0] + ends[0]);
        }
        else if (_loops == 2)
        {
            int a = sums[0] + ends[0], b = sums[1] + ends[1], c = sums[2] + ends[2], d = sums[3] + ends[3], e = sums[4] + ends[4], f = sums[5] + ends[5];
            (x[0], x[1], x[2]) = ((c * f) - (d * e), (e * b) - (f * a), (a * d) - (b * c));
        }
        else if (!TrySolveGeneral(sums, ends, x))
        {
            return false;
        }

        for (int branch = 0; branch < Voltages.Length; branch++)
        {
            long voltage = 0;
            for (int row = 0; row < x.Length; row++)
            {
                voltage += _allowed[row][branch] * x[row];
            }

            if (voltage == 0)
            {
                return false;
            }

            Voltages[branch] = (int)voltage;
        }

        return true;
    }

    private bool TrySolveGeneral(ReadOnlySpan<int> sums, ReadOnlySpan<int> ends, Span<long> x)
    {
        if (_loops == 3)
        {
            Span<int> m = stackalloc int[12];
            for (int e = 0; e < m.Length; e++)
            {
                m[e] = sums[e] + ends[e];
            }

            // minors of the upper two rows and the lower two rows, by columns 12, 13, 23
            int u12 = (m[0] * m[4]) - (m[1] * m[3]), u13 = (m[0] * m[5]) - (m[2] * m[3]), u23 = (m[1] * m[5]) - (m[2] * m[4]);
            int l12 = (m[6] * m[10]) - (m[7] * m[9]), l13 = (m[6] * m[11]) - (m[8] * m[9]), l23 = (m[7] * m[11]) - (m[8] * m[10]);
            x[0] = (m[3] * l23) - (m[4] * l13) + (m[5] * l12);
            x[1] = -((m[0] * l23) - (m[1] * l13) + (m[2] * l12));
            x[2] = (m[9] * u23) - (m[10] * u13) + (m[11] * u12);
            x[3] = -((m[6] * u23) - (m[7] * u13) + (m[8] * u12));
            return true;
        }

        Span<long> transposed = _transposed.AsSpan(0, _rows * _loops);
        for (int row = 0; row < _rows; row++)
        {
            for (int loop = 0; loop < _loops; loop++)
            {
                transposed[(loop * _rows) + row] = sums[(row * _loops) + loop] + ends[(row * _loops) + loop];
            }
        }

        return NullVector.TryFind(transposed, _rows, x);
    }
}
