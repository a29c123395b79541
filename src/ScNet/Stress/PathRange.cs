using System.Numerics;
using Fractions;

namespace ScNet.Stress;

/// <summary>
/// The smallest and largest sum of voltages over the simple paths between two nodes: each path is part of
/// some spanning tree, so these are the bounds over all spanning trees.
/// </summary>
/// <remarks>
/// Sums are whole numbers over one common denominator. Of parallel edges the smallest and the largest step count,
/// so one walk over all simple paths from a piece finds both bounds to every other one. Cost: the number of those
/// paths, given up after a fixed number of steps, on a path of more than 500 pieces, or where the sums could
/// exceed a machine word; each piece is started from once.
/// </remarks>
internal sealed class PathRange
{
    private const int MaximumSteps = 50_000;
    private const int MaximumLength = 500;

    private readonly RigidPieces _pieces;
    private readonly (int Piece, long Smallest, long Largest)[][] _steps;
    private readonly long _denominator;
    private readonly Walk?[] _walks;

    public PathRange(RigidPieces pieces, List<ResistiveEdge> edges)
    {
        _pieces = pieces;
        List<(int First, int Second, Fraction Step)> joints = [];
        foreach (ResistiveEdge edge in edges)
        {
            int first = pieces.Piece[edge.First], second = pieces.Piece[edge.Second];
            if (first != second)
            {
                // how the potential of a piece's first node changes over the edge where no current flows
                joints.Add((first, second, (pieces.Offset[edge.First] - edge.Voltage - pieces.Offset[edge.Second]).Reduce()));
            }
        }

        BigInteger denominator = joints.Aggregate(
            BigInteger.One, (common, j) => common / BigInteger.GreatestCommonDivisor(common, j.Step.Denominator) * j.Step.Denominator);
        BigInteger largest = joints.Aggregate(BigInteger.Zero, (sum, j) => sum + BigInteger.Abs(j.Step.Numerator * denominator / j.Step.Denominator));
        IsExact = denominator <= long.MaxValue && largest <= long.MaxValue;
        _denominator = IsExact ? (long)denominator : 0;
        var steps = new Dictionary<int, (long Smallest, long Largest)>[pieces.PieceCount];
        for (int k = 0; k < steps.Length; k++)
        {
            steps[k] = [];
        }

        foreach ((int first, int second, Fraction exact) in IsExact ? joints : [])
        {
            long step = (long)(exact.Numerator * denominator / exact.Denominator);
            Add(first, second, step);
            Add(second, first, -step);
        }

        _steps = [.. steps.Select(s => s.Select(t => (t.Key, t.Value.Smallest, t.Value.Largest)).ToArray())];
        _walks = new Walk?[steps.Length];

        void Add(int from, int to, long step) => steps[from][to] = steps[from].TryGetValue(to, out (long Smallest, long Largest) known)
            ? (Math.Min(known.Smallest, step), Math.Max(known.Largest, step))
            : (step, step);
    }

    /// <summary>Whether no search was given up.</summary>
    public bool IsExact { get; private set; }

    /// <summary>First minus second potential of two nodes that edges join; null where there are too many paths.</summary>
    public Interval<Fraction>? Of(int first, int second)
    {
        Walk? walk = _denominator > 0 ? _walks[_pieces.Piece[first]] ??= new Walk(_steps, _pieces.Piece[first]) : null;
        if (walk is not { IsComplete: true })
        {
            IsExact = false;
            return null;
        }

        (long smallest, long largest) = walk.To(_pieces.Piece[second]);
        return Intervals.Point(_pieces.Offset[first] - _pieces.Offset[second])
            .Minus(new Interval<Fraction>(new Fraction(smallest, _denominator), new Fraction(largest, _denominator)));
    }

    // every simple path from one piece, and the bounds of the sums to each piece on it
    private sealed class Walk
    {
        private readonly (int Piece, long Smallest, long Largest)[][] _steps;
        private readonly bool[] _isOnPath;
        private readonly long[] _smallest;
        private readonly long[] _largest;
        private int _stepsLeft = MaximumSteps;

        public Walk((int Piece, long Smallest, long Largest)[][] steps, int start)
        {
            _steps = steps;
            _isOnPath = new bool[steps.Length];
            _smallest = new long[steps.Length];
            _largest = new long[steps.Length];
            _smallest.AsSpan().Fill(long.MaxValue);
            _largest.AsSpan().Fill(long.MinValue);
            From(start, 0, 0, 0);
        }

        public bool IsComplete => _stepsLeft > 0;

        public (long Smallest, long Largest) To(int piece) => (_smallest[piece], _largest[piece]);

        private void From(int piece, long smallest, long largest, int length)
        {
            // the stack is not for paths of any length
            if (length > MaximumLength)
            {
                _stepsLeft = 0;
                return;
            }

            _smallest[piece] = Math.Min(_smallest[piece], smallest);
            _largest[piece] = Math.Max(_largest[piece], largest);
            _isOnPath[piece] = true;
            foreach ((int next, long low, long high) in _steps[piece])
            {
                if (!_isOnPath[next] && --_stepsLeft > 0)
                {
                    From(next, smallest + low, largest + high, length + 1);
                }
            }

            _isOnPath[piece] = false;
        }
    }
}
