namespace ScNet.Design.Sizing;

/// <summary>Speeds up the way to sizes that a convex program gives back: what the last two rounds moved by tells how far it goes on.</summary>
/// <remarks>
/// With y the sizes that went in, g those that came out and r = log g − log y, the next ones are log g − θ (log g − log g′) with the θ that makes
/// r − θ (r − r′) shortest, the dash for the round before. Source: D. G. Anderson, "Iterative procedures for nonlinear integral
/// equations", Journal of the ACM 12(4), 1965 (from memory).
/// </remarks>
internal sealed class FixedPoint
{
    private const double Farthest = 3;

    private double[]? _before;
    private double[]? _changeBefore;

    /// <summary>The sizes to go on with.</summary>
    /// <param name="went">What went in; null where none did.</param>
    /// <param name="came">What came out.</param>
    public double[] Next(double[]? went, double[] came)
    {
        double[] logarithms = [.. came.Select(v => Math.Log(v))];
        double[]? change = went is null ? null : [.. logarithms.Select((l, e) => l - Math.Log(went[e]))];
        double[] next = came;
        if (_before is { } before && _changeBefore is { } changeBefore && change is not null)
        {
            double along = 0, square = 0;
            for (int e = 0; e < change.Length; e++)
            {
                double turn = change[e] - changeBefore[e];
                along += change[e] * turn;
                square += turn * turn;
            }

            double factor = square > 0 ? Math.Clamp(along / square, -Farthest, 0.9) : 0;
            next = [.. logarithms.Select((l, e) => Math.Exp(l - (factor * (l - before[e]))))];
        }

        (_before, _changeBefore) = (logarithms, change);
        return next;
    }
}
