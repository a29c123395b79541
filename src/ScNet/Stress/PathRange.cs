using System.Numerics;
using Fractions;

namespace ScNet.Stress;

/// <summary>
/// The smallest and largest sum of voltages over the simple paths between two nodes: each path is part of
/// some spanning tree, so these are the bounds over all spanning trees.
/// </summary>
/// <remarks>
/// Sums are whole numbers over one common denominator. Cost: the number of simple paths, given up after a fixed
/// number of steps, on a path of more than 500 pieces, or where the sums could exceed a machine word; each pair
/// of pieces is searched once.
/// </remarks>
internal sealed class PathRange
{
    private const int MaximumSteps = 20_000;
    private const int MaximumLength = 500;

    private readonly RigidPieces _pieces;
    private readonly (int Piece, long Step)[][] _steps;
    private readonly long _denominator;
    private readonly Dictionary<(int First, int Second), Interval<Fraction>> _found = [];

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
        HashSet<(int Piece, long Step)>[] steps = [.. Enumerable.Range(0, pieces.PieceCount).Select(_ => new HashSet<(int, long)>())];
        foreach ((int first, int second, Fraction exact) in IsExact ? joints : [])
        {
            long step = (long)(exact.Numerator * denominator / exact.Denominator);
            steps[first].Add((second, step));
            steps[second].Add((first, -step));
        }

        _steps = [.. steps.Select(s => s.ToArray())];
    }

    /// <summary>Whether no search was given up.</summary>
    public bool IsExact { get; private set; }

    /// <summary>First minus second potential; null where there are too many paths.</summary>
    public Interval<Fraction>? Of(int first, int second)
    {
        (int from, int to) = (_pieces.Piece[first], _pieces.Piece[second]);
        if (!_found.TryGetValue((from, to), out Interval<Fraction> drop) && _denominator > 0)
        {
            Search search = new(_steps, to);
            search.From(from, 0, 0);
            drop = search.StepsLeft > 0
                ? new Interval<Fraction>(new Fraction(search.Minimum, _denominator), new Fraction(search.Maximum, _denominator))
                : default;
            _found.Add((from, to), drop);
        }

        IsExact &= drop.IsDetermined;
        return drop.IsDetermined ? Intervals.Point(_pieces.Offset[first] - _pieces.Offset[second]).Minus(drop) : null;
    }

    private sealed class Search((int Piece, long Step)[][] steps, int target)
    {
        private readonly bool[] _isOnPath = new bool[steps.Length];

        public int StepsLeft { get; private set; } = MaximumSteps;

        public long Minimum { get; private set; } = long.MaxValue;

        public long Maximum { get; private set; } = long.MinValue;

        public void From(int piece, long sum, int length)
        {
            // the stack is not for paths of any length
            if (length > MaximumLength)
            {
                StepsLeft = 0;
                return;
            }

            if (piece == target)
            {
                Minimum = Math.Min(Minimum, sum);
                Maximum = Math.Max(Maximum, sum);
                return;
            }

            _isOnPath[piece] = true;
            foreach ((int next, long step) in steps[piece])
            {
                if (!_isOnPath[next] && --StepsLeft > 0)
                {
                    From(next, sum + step, length + 1);
                }
            }

            _isOnPath[piece] = false;
        }
    }
}
