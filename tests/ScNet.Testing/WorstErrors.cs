using System.Globalization;

namespace ScNet.Testing;

/// <summary>
/// How far quantities were from their oracles: per quantity and law how many cases and figures were compared, and the worst of them.
/// Safe on many threads.
/// </summary>
internal sealed class WorstErrors
{
    private readonly Lock _lock = new();
    private readonly Dictionary<(string Quantity, string Law), Row> _rows = [];

    /// <summary>What one law found of one quantity.</summary>
    /// <param name="Quantity">What was compared.</param>
    /// <param name="Law">By which law.</param>
    /// <param name="Cases">How many cases it was compared in.</param>
    /// <param name="Figures">How many figures were compared.</param>
    /// <param name="Worst">The largest error, in proportion to the scale of the figure; infinite where a figure was no number.</param>
    /// <param name="Tolerance">The largest error that was allowed.</param>
    /// <param name="Case">The case of the largest error, as <see cref="LawCheck"/> draws it again.</param>
    internal sealed record Row(string Quantity, string Law, long Cases, long Figures, double Worst, double Tolerance, string Case)
    {
        /// <summary>The case that was compared last.</summary>
        internal string Last { get; init; } = "";
    }

    /// <summary>Those of all laws of this process.</summary>
    public static WorstErrors OfRun { get; } = new();

    /// <summary>All rows, by quantity and law.</summary>
    public Row[] Rows()
    {
        lock (_lock)
        {
            return [.. _rows.Values.OrderBy(r => r.Quantity, StringComparer.Ordinal).ThenBy(r => r.Law, StringComparer.Ordinal)];
        }
    }

    /// <summary>Takes note of a figure, and requires it to be as near as the tolerance allows.</summary>
    /// <param name="quantity">What it is.</param>
    /// <param name="expected">What the oracle says.</param>
    /// <param name="actual">What the library says.</param>
    /// <param name="scale">What the difference is seen in proportion to.</param>
    /// <param name="tolerance">The largest error allowed, in proportion to the scale.</param>
    /// <param name="where">What else tells the figure from others, for the message.</param>
    /// <exception cref="Xunit.Sdk.XunitException">It is too far off.</exception>
    public void Require(string quantity, double expected, double actual, double scale, double tolerance, string where = "")
    {
        double off = expected == actual ? 0 : Math.Abs(expected - actual) / Math.Abs(scale);
        Note(quantity, off, tolerance);
        if (!(off <= tolerance))
        {
            Assert.Fail(string.Create(
                CultureInfo.InvariantCulture, $"{quantity} {where}: expected {expected:R}, but got {actual:R}, off by {off:e1} of {scale:R} where {tolerance:e1} is allowed."));
        }
    }

    /// <summary>Takes note of an error.</summary>
    /// <param name="quantity">Of what.</param>
    /// <param name="off">The error in proportion to its scale; what is no number counts as infinite.</param>
    /// <param name="tolerance">The largest error allowed.</param>
    public void Note(string quantity, double off, double tolerance)
    {
        (string law, string @case) = LawCheck.Current;
        off = double.IsNaN(off) ? double.PositiveInfinity : off;
        lock (_lock)
        {
            Row row = _rows.GetValueOrDefault((quantity, law)) ?? new Row(quantity, law, 0, 0, -1, 0, "");
            _rows[(quantity, law)] = row with
            {
                Cases = row.Cases + (row.Figures > 0 && row.Last == @case ? 0 : 1),
                Figures = row.Figures + 1,
                Worst = Math.Max(row.Worst, off),
                Tolerance = Math.Max(row.Tolerance, tolerance),
                Case = off > row.Worst ? @case : row.Case,
                Last = @case,
            };
        }
    }
}
