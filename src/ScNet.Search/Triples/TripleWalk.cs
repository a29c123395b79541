using System.Runtime.Intrinsics;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Pairs;

namespace ScNet.Search.Triples;

/// <summary>
/// Goes through triples of loop spaces of three phases, two of them given and the third each of a list, and keeps for each
/// ratio those whose loops fix all voltages and charges, all or what no other beats. One per thread.
/// </summary>
/// <remarks>
/// The first two phases leave d + 1 directions u of voltages, d being the number of loops b of the third. Each loop is
/// looked at once for all spaces that have it: w = (u · b). The voltages are Σ m u with m the minors of a space's w, all
/// branches side by side in one register (docs/theory/atlas.md).
/// </remarks>
internal sealed class TripleWalk
{
    // the most directions: a third phase has three loops at most
    private const int Stride = 4;

    private readonly int _width;
    private readonly uint _branches;
    private readonly int[] _voltages;
    private readonly TripleCharges _charges;
    private readonly Vector256<int>[] _directions = new Vector256<int>[Stride];
    private readonly int[] _minors = new int[Stride];
    private readonly Dictionary<(int Output, int Input), TripleFront> _fronts = [];
    private readonly bool _keepsBeaten;
    private int[] _products = [];

    /// <summary>A walk for a number of capacitors, up to <see cref="ThreePhaseAtlas.MaximumCapacitorCount"/>.</summary>
    /// <param name="capacitors">The number of capacitors.</param>
    /// <param name="keepsBeaten">Whether all networks are kept.</param>
    public TripleWalk(int capacitors, bool keepsBeaten)
    {
        _keepsBeaten = keepsBeaten;
        _width = capacitors + LoopSpace.FirstCapacitorColumn;
        _branches = (1u << _width) - 1;
        _voltages = new int[_width];
        _charges = new TripleCharges(capacitors);
    }

    /// <summary>The triples that were decided.</summary>
    public long TripleCount { get; private set; }

    /// <summary>Those that are networks.</summary>
    public long NetworkCount { get; private set; }

    /// <summary>Networks, each counted with all its renamings and turns and all orders of its phases.</summary>
    public long LabelledNetworkCount { get; private set; }

    /// <summary>The fronts by ratio: output and input voltage in lowest terms, the input's positive.</summary>
    public IReadOnlyDictionary<(int Output, int Input), TripleFront> Fronts => _fronts;

    /// <summary>Walks the triples of two phases.</summary>
    /// <param name="first">The number of the first space.</param>
    /// <param name="second">The number of the second space.</param>
    /// <param name="two">The two; null where they depend on one another, so that no triple is a network.</param>
    /// <param name="thirds">The spaces of the third phase.</param>
    /// <param name="labelled">How many networks each stands for.</param>
    public void Run(int first, int second, TwoPhases? two, ThirdPhases thirds, long labelled)
    {
        TripleCount += thirds.Spaces.Length;
        if (two is null)
        {
            return;
        }

        Prepare(two, thirds);
        int d = thirds.Dimension;
        Span<int> products = stackalloc int[Stride * d];
        Span<sbyte[]> loops = new sbyte[d][];
        ReadOnlySpan<int> loopsOfSpaces = thirds.LoopsOfSpaces;
        for (int third = 0; third < thirds.Spaces.Length; third++)
        {
            ReadOnlySpan<int> numbers = loopsOfSpaces.Slice(third * d, d);
            Vector256<int> voltages = Solve(numbers);
            if ((Vector256.Equals(voltages, Vector256<int>.Zero).ExtractMostSignificantBits() & _branches) != 0)
            {
                continue;
            }

            for (int loop = 0; loop < d; loop++)
            {
                loops[loop] = thirds.Loops[numbers[loop]];
                _products.AsSpan(Stride * numbers[loop], Stride).CopyTo(products[(Stride * loop)..]);
            }

            Write(voltages);
            if (_charges.TryFind(two, loops, products, _minors.AsSpan().IndexOfAnyExcept(0), _voltages))
            {
                NetworkCount++;
                LabelledNetworkCount += labelled;
                Keep(new TriplePlace(first, second, thirds.Spaces[third]));
            }
        }
    }

    private void Prepare(TwoPhases two, ThirdPhases thirds)
    {
        Span<int> lanes = stackalloc int[Vector256<int>.Count];
        _products = _products.Length < Stride * thirds.Loops.Length ? new int[Stride * thirds.Loops.Length] : _products;
        Array.Clear(_minors);
        for (int direction = 0; direction < two.Allowed.Length; direction++)
        {
            lanes.Clear();
            for (int branch = 0; branch < _width; branch++)
            {
                lanes[branch] = (int)two.Allowed[direction][branch];
            }

            _directions[direction] = Vector256.Create<int>(lanes);
            for (int loop = 0; loop < thirds.Loops.Length; loop++)
            {
                int product = 0;
                for (int branch = 0; branch < _width; branch++)
                {
                    product += lanes[branch] * thirds.Loops[loop][branch];
                }

                _products[(Stride * loop) + direction] = product;
            }
        }
    }

    // the signed minors, and every branch's voltage
    private Vector256<int> Solve(ReadOnlySpan<int> loops)
    {
        ReadOnlySpan<int> a = _products.AsSpan(Stride * loops[0], Stride);
        Span<int> m = _minors;
        if (loops.Length == 1)
        {
            (m[0], m[1]) = (a[1], -a[0]);
            return (_directions[0] * m[0]) + (_directions[1] * m[1]);
        }

        ReadOnlySpan<int> b = _products.AsSpan(Stride * loops[1], Stride);
        if (loops.Length == 2)
        {
            (m[0], m[1], m[2]) = ((a[1] * b[2]) - (a[2] * b[1]), (a[2] * b[0]) - (a[0] * b[2]), (a[0] * b[1]) - (a[1] * b[0]));
            return (_directions[0] * m[0]) + (_directions[1] * m[1]) + (_directions[2] * m[2]);
        }

        OfThreeLoops(a, b, _products.AsSpan(Stride * loops[2], Stride), m);
        return (_directions[0] * m[0]) + (_directions[1] * m[1]) + (_directions[2] * m[2]) + (_directions[3] * m[3]);
    }

    // expanded along the first loop by the minors of the others
    private static void OfThreeLoops(ReadOnlySpan<int> a, ReadOnlySpan<int> b, ReadOnlySpan<int> c, Span<int> m)
    {
        int m01 = (b[0] * c[1]) - (b[1] * c[0]), m02 = (b[0] * c[2]) - (b[2] * c[0]), m03 = (b[0] * c[3]) - (b[3] * c[0]);
        int m12 = (b[1] * c[2]) - (b[2] * c[1]), m13 = (b[1] * c[3]) - (b[3] * c[1]), m23 = (b[2] * c[3]) - (b[3] * c[2]);
        m[0] = (a[1] * m23) - (a[2] * m13) + (a[3] * m12);
        m[1] = -((a[0] * m23) - (a[2] * m03) + (a[3] * m02));
        m[2] = (a[0] * m13) - (a[1] * m03) + (a[3] * m01);
        m[3] = -((a[0] * m12) - (a[1] * m02) + (a[2] * m01));
    }

    // without a common factor, the input's positive
    private void Write(Vector256<int> voltages)
    {
        int divisor = 0;
        for (int branch = 0; branch < _width; branch++)
        {
            _voltages[branch] = voltages.GetElement(branch);
            divisor = divisor == 0 ? Math.Abs(_voltages[branch]) : Kernel.Integers.Gcd(divisor, _voltages[branch]);
        }

        divisor *= Math.Sign(_voltages[LoopSpace.InputColumn]);
        for (int branch = 0; branch < _width && divisor != 1; branch++)
        {
            _voltages[branch] /= divisor;
        }
    }

    private void Keep(TriplePlace place)
    {
        long product = 0, highest = 0, charge = 0;
        for (int c = 0; c < _charges.Moved.Length; c++)
        {
            long voltage = Math.Abs(_voltages[LoopSpace.FirstCapacitorColumn + c]);
            product += _charges.Moved[c] * voltage;
            highest = Math.Max(highest, voltage);
            charge += _charges.Moved[c];
        }

        int input = _voltages[LoopSpace.InputColumn], output = _voltages[LoopSpace.OutputColumn], common = Kernel.Integers.Gcd(input, output);
        TripleSums sums = new(
            MeasureKey.Quotient(product, 2 * _charges.Delivered * Math.Abs(output)),
            MeasureKey.Quotient(highest, input),
            MeasureKey.Quotient(charge, 2 * _charges.Delivered));
        (int, int) ratio = (output / common, input / common);
        if (!_fronts.TryGetValue(ratio, out TripleFront? front))
        {
            _fronts.Add(ratio, front = new TripleFront(_keepsBeaten));
        }

        front.Add(sums, place);
    }
}
