namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Leaves out the corners of a line that nobody would miss.</summary>
/// <remarks>
/// The method of U. Ramer (Computer Graphics and Image Processing 1(3), 1972) and D. Douglas and T. Peucker (Cartographica 10(2), 1973; both
/// from memory): the corner farthest from the chord stays where it is farther than the tolerance, and both halves are treated likewise.
/// </remarks>
internal static class LineThinning
{
    /// <summary>The corners that stay, in their order: both ends, the highest and the lowest, and what bends the line by more than the tolerance.</summary>
    /// <param name="line">The line in pixels.</param>
    /// <param name="tolerancePixels">How far the line may lie from any corner that is left out.</param>
    public static IReadOnlyList<int> Of(IReadOnlyList<(double X, double Y)> line, double tolerancePixels)
    {
        if (line.Count < 3)
        {
            return [.. Enumerable.Range(0, line.Count)];
        }

        bool[] stays = new bool[line.Count];
        int[] ends = [.. new[] { 0, Extreme(1), Extreme(-1), line.Count - 1 }.Distinct().Order()];
        Stack<(int From, int To)> open = new(ends.Zip(ends.Skip(1)));
        Array.ForEach(ends, e => stays[e] = true);
        while (open.TryPop(out (int From, int To) chord))
        {
            (int farthest, double distance) = (-1, tolerancePixels);
            for (int i = chord.From + 1; i < chord.To; i++)
            {
                double away = Distance(line[i], line[chord.From], line[chord.To]);
                if (away > distance)
                {
                    (farthest, distance) = (i, away);
                }
            }

            if (farthest >= 0)
            {
                stays[farthest] = true;
                open.Push((chord.From, farthest));
                open.Push((farthest, chord.To));
            }
        }

        return [.. Enumerable.Range(0, line.Count).Where(i => stays[i])];

        int Extreme(int sign) => Enumerable.Range(0, line.Count).MaxBy(i => sign * line[i].Y);
    }

    /// <summary>How far a point is from a stretch of line.</summary>
    public static double Distance((double X, double Y) point, (double X, double Y) from, (double X, double Y) to)
    {
        (double x, double y) = (to.X - from.X, to.Y - from.Y);
        double square = (x * x) + (y * y);
        double share = square > 0 ? Math.Clamp((((point.X - from.X) * x) + ((point.Y - from.Y) * y)) / square, 0, 1) : 0;
        return Math.Sqrt(Square(point.X - from.X - (share * x)) + Square(point.Y - from.Y - (share * y)));

        static double Square(double value) => value * value;
    }
}
