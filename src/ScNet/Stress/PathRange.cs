using Fractions;

namespace ScNet.Stress;

/// <summary>
/// The smallest and largest sum of voltages over the simple paths between two nodes: each path is part of
/// some spanning tree, so these are the bounds over all spanning trees.
/// </summary>
/// <remarks>Cost: the number of simple paths, given up after a fixed number of steps or on a path of more than 500 pieces.</remarks>
internal sealed class PathRange
{
    private const int MostSteps = 20_000;
    private const int LongestPath = 500;

    private readonly RigidPieces _pieces;
    private readonly HashSet<(int Piece, Fraction Step)>[] _steps;

    public PathRange(RigidPieces pieces, List<ResistiveEdge> edges)
    {
        _pieces = pieces;
        _steps = [.. Enumerable.Range(0, pieces.PieceCount).Select(_ => new HashSet<(int, Fraction)>())];
        foreach (ResistiveEdge edge in edges)
        {
            int first = pieces.Piece[edge.First], second = pieces.Piece[edge.Second];
            if (first != second)
            {
                // how the potential of a piece's first node changes over the edge where no current flows
                Fraction step = pieces.Offset[edge.First] - edge.Voltage - pieces.Offset[edge.Second];
                _steps[first].Add((second, step));
                _steps[second].Add((first, -step));
            }
        }
    }

    /// <summary>Whether no search was given up.</summary>
    public bool IsExact { get; private set; } = true;

    /// <summary>First minus second potential; null where there are too many paths.</summary>
    public Interval<Fraction>? Of(int first, int second)
    {
        Search search = new(this, _pieces.Piece[second]);
        search.From(_pieces.Piece[first], Fraction.Zero, 0);
        if (search.StepsLeft <= 0)
        {
            IsExact = false;
            return null;
        }

        return Intervals.Point(_pieces.Offset[first] - _pieces.Offset[second]).Minus(search.Reached);
    }

    private sealed class Search(PathRange range, int target)
    {
        private readonly bool[] _isOnPath = new bool[range._steps.Length];

        public int StepsLeft { get; private set; } = MostSteps;

        public Interval<Fraction> Reached { get; private set; } = Intervals.Empty<Fraction>();

        public void From(int piece, Fraction sum, int length)
        {
            // the stack is not for paths of any length
            if (length > LongestPath)
            {
                StepsLeft = 0;
                return;
            }

            if (piece == target)
            {
                Reached = Reached.Hull(Intervals.Point(sum));
                return;
            }

            _isOnPath[piece] = true;
            foreach ((int next, Fraction step) in range._steps[piece])
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
