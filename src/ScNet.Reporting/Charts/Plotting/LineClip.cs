namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Cuts lines to what lies between two heights, so that nothing is drawn outside of a panel.</summary>
internal static class LineClip
{
    /// <summary>The pieces of a line within the heights; a missing height ends a piece.</summary>
    public static IReadOnlyList<IReadOnlyList<(double X, double Y)>> Between(IEnumerable<(double X, double? Y)> line, double low, double high)
    {
        List<List<(double X, double Y)>> pieces = [];
        List<(double X, double Y)> piece = [];
        (double X, double Y)? before = null;
        foreach ((double x, double? height) in line)
        {
            if (height is not { } y || !double.IsFinite(y))
            {
                End();
                before = null;
                continue;
            }

            if (before is { } from)
            {
                Segment(from, (x, y));
            }
            else if (y >= low && y <= high)
            {
                piece.Add((x, y));
            }

            before = (x, y);
        }

        End();
        return pieces;

        void Segment((double X, double Y) from, (double X, double Y) to)
        {
            bool starts = from.Y >= low && from.Y <= high, ends = to.Y >= low && to.Y <= high;
            if (!starts && (Math.Max(from.Y, to.Y) < low || Math.Min(from.Y, to.Y) > high))
            {
                return;
            }

            if (!starts)
            {
                End();
                piece.Add(At(from, to, from.Y < low ? low : high));
            }

            piece.Add(ends ? to : At(from, to, to.Y < low ? low : high));
            if (!ends)
            {
                End();
            }
        }

        void End()
        {
            if (piece.Count > 1)
            {
                pieces.Add(piece);
            }

            piece = [];
        }
    }

    private static (double X, double Y) At((double X, double Y) from, (double X, double Y) to, double height) =>
        (from.X + ((to.X - from.X) * (height - from.Y) / (to.Y - from.Y)), height);
}
