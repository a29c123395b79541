using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>
/// Goes through all pairs of a fixed space with the spaces of an orbit, each once, and finds those whose loops fix
/// every voltage, none of them zero.
/// </summary>
/// <remarks>
/// The voltages that the fixed phase allows are combinations x of a few vectors N, one more than the moving phase has
/// loops. Each of the moving phase's loops b asks for (N b)·x = 0; so x is the vector of signed minors of N Bᵀ. That
/// small matrix is a sum over branches: from one way to move the capacitors to the next only the parts of the last
/// capacitors change (docs/theory/atlas.md). Its entries lie side by side in one register. One per thread.
/// </remarks>
internal sealed class PairWalk
{
    private readonly int _capacitors;
    private readonly ExchangedPairs _exchanged = new();
    private readonly Vector256<sbyte>[] _sums;
    private readonly Vector256<sbyte>[] _parts;
    private readonly Vector256<short>[] _columns;
    private readonly long[] _transposed;
    private Vector256<sbyte> _ends;
    private int _rows;
    private int _loops;

    /// <summary>A walk for a number of capacitors, up to <see cref="LoopSpace.MostCapacitors"/>.</summary>
    public PairWalk(int capacitors)
    {
        _capacitors = capacitors;
        Voltages = new int[capacitors + LoopSpace.FirstCapacitorColumn];
        _sums = new Vector256<sbyte>[capacitors + 1];
        _parts = new Vector256<sbyte>[capacitors << 4];
        _columns = new Vector256<short>[Voltages.Length];
        _transposed = new long[Voltages.Length * Voltages.Length];
    }

    /// <summary>The pairs that were decided.</summary>
    public long PairCount { get; private set; }

    /// <summary>The voltages of the branches of the pair at hand, in the numbering of the fixed space, up to a common factor.</summary>
    public int[] Voltages { get; }

    /// <summary>The orbit whose representative stays.</summary>
    public LoopSpaceOrbit Fixed { get; private set; } = null!;

    /// <summary>The orbit whose spaces are gone through.</summary>
    public MovingOrbit Moving { get; private set; } = null!;

    /// <summary>The vectors N that the fixed phase allows.</summary>
    public sbyte[][] Allowed { get; private set; } = [];

    /// <summary>The part of N Bᵀ that capacitors alone give, N's rows by loops.</summary>
    public ReadOnlySpan<sbyte> CapacitorSums => MemoryMarshal.CreateReadOnlySpan(ref MemoryMarshal.GetReference(
        MemoryMarshal.Cast<Vector256<sbyte>, sbyte>(_sums.AsSpan(_capacitors, 1))), _rows * _loops);

    /// <summary>Walks all pairs of a fixed space with the spaces of an orbit.</summary>
    /// <param name="fixedOrbit">The orbit whose representative stays.</param>
    /// <param name="moving">The other orbit, of as many loops or fewer.</param>
    /// <param name="visitor">Told of each pair with voltages.</param>
    public void Run(LoopSpaceOrbit fixedOrbit, MovingOrbit moving, IPairVisitor visitor)
    {
        Fixed = fixedOrbit;
        Moving = moving;
        Allowed = fixedOrbit.Space.Complement();
        _rows = Allowed.Length;
        _loops = moving.Orbit.Space.Dimension;
        _exchanged.Start(fixedOrbit, moving);
        FillParts();
        uint[] ways = moving.Ways;
        uint before = ~ways[0];
        for (int place = 0; place < ways.Length; place++)
        {
            if (!_exchanged.AreNone && !_exchanged.IsFirst(place))
            {
                continue;
            }

            AddParts(ways[place], before);
            before = ways[place];
            PairCount++;
            if (TrySolve())
            {
                visitor.Visit(this, place);
            }
        }
    }

    // the part that a capacitor adds in every position, not turned and turned, in the order of a way's four bits
    private void FillParts()
    {
        Span<sbyte> part = stackalloc sbyte[Vector256<sbyte>.Count];
        for (int c = 0; c < _capacitors; c++)
        {
            for (int position = 0; position < _capacitors; position++)
            {
                part.Clear();
                AddProduct(part, LoopSpace.FirstCapacitorColumn + position, LoopSpace.FirstCapacitorColumn + c);
                Vector256<sbyte> straight = Vector256.Create<sbyte>(part);
                _parts[(c << 4) | (position << 1)] = straight;
                _parts[(c << 4) | (position << 1) | 1] = -straight;
            }
        }

        part.Clear();
        AddProduct(part, LoopSpace.InputColumn, LoopSpace.InputColumn);
        AddProduct(part, LoopSpace.OutputColumn, LoopSpace.OutputColumn);
        _ends = Vector256.Create<sbyte>(part);
        Span<short> column = stackalloc short[Vector256<short>.Count];
        for (int row = 0; row < _rows; row++)
        {
            column.Clear();
            for (int branch = 0; branch < Voltages.Length; branch++)
            {
                column[branch] = Allowed[row][branch];
            }

            _columns[row] = Vector256.Create<short>(column);
        }
    }

    private void AddProduct(Span<sbyte> part, int allowedColumn, int loopColumn)
    {
        for (int row = 0; row < _rows; row++)
        {
            for (int loop = 0; loop < _loops; loop++)
            {
                part[(row * _loops) + loop] += (sbyte)(Allowed[row][allowedColumn] * Moving.Orbit.Space.Row(loop)[loopColumn]);
            }
        }
    }

    // sums from the first capacitor on in which a way differs from the one before
    private void AddParts(uint way, uint before)
    {
        int first = Math.Max(0, (BitOperations.LeadingZeroCount(way ^ before) / 4) - (8 - _capacitors));
        Vector256<sbyte> sum = _sums[first];
        for (int c = first; c < _capacitors; c++)
        {
            sum += _parts[(c << 4) | (int)(way >> (4 * (_capacitors - 1 - c)) & 15)];
            _sums[c + 1] = sum;
        }
    }

    // x from the loops' small matrix, then every branch's voltage
    private bool TrySolve()
    {
        Vector256<sbyte> sum = _sums[_capacitors] + _ends;
        Span<sbyte> m = stackalloc sbyte[Vector256<sbyte>.Count];
        sum.CopyTo(m);
        Vector256<short> voltages;
        switch (_loops)
        {
            case 1:
                voltages = (_columns[1] * (short)m[0]) - (_columns[0] * (short)m[1]);
                break;
            case 2:
                voltages = (_columns[0] * (short)((m[2] * m[5]) - (m[3] * m[4])))
                    + (_columns[1] * (short)((m[4] * m[1]) - (m[5] * m[0])))
                    + (_columns[2] * (short)((m[0] * m[3]) - (m[1] * m[2])));
                break;
            case 3:
                voltages = OfThreeLoops(m);
                break;
            default:
                if (!TryGeneral(m, out voltages))
                {
                    return false;
                }

                break;
        }

        int zeros = (int)Vector256.Equals(voltages, Vector256<short>.Zero).ExtractMostSignificantBits();
        if ((zeros & ((1 << Voltages.Length) - 1)) != 0)
        {
            return false;
        }

        for (int branch = 0; branch < Voltages.Length; branch++)
        {
            Voltages[branch] = voltages.GetElement(branch);
        }

        return true;
    }

    // minors of the upper and of the lower two rows, by the columns they leave
    private Vector256<short> OfThreeLoops(ReadOnlySpan<sbyte> m)
    {
        int u12 = (m[0] * m[4]) - (m[1] * m[3]), u13 = (m[0] * m[5]) - (m[2] * m[3]), u23 = (m[1] * m[5]) - (m[2] * m[4]);
        int l12 = (m[6] * m[10]) - (m[7] * m[9]), l13 = (m[6] * m[11]) - (m[8] * m[9]), l23 = (m[7] * m[11]) - (m[8] * m[10]);
        return (_columns[0] * (short)((m[3] * l23) - (m[4] * l13) + (m[5] * l12)))
            - (_columns[1] * (short)((m[0] * l23) - (m[1] * l13) + (m[2] * l12)))
            + (_columns[2] * (short)((m[9] * u23) - (m[10] * u13) + (m[11] * u12)))
            - (_columns[3] * (short)((m[6] * u23) - (m[7] * u13) + (m[8] * u12)));
    }

    private bool TryGeneral(ReadOnlySpan<sbyte> m, out Vector256<short> voltages)
    {
        Span<long> transposed = _transposed.AsSpan(0, _rows * _loops), x = stackalloc long[_rows];
        for (int row = 0; row < _rows; row++)
        {
            for (int loop = 0; loop < _loops; loop++)
            {
                transposed[(loop * _rows) + row] = m[(row * _loops) + loop];
            }
        }

        voltages = Vector256<short>.Zero;
        bool isFound = NullVector.TryFind(transposed, _rows, x);
        for (int row = 0; row < _rows && isFound; row++)
        {
            voltages += _columns[row] * (short)x[row];
        }

        return isFound;
    }
}
