using System.Globalization;
using ScNet.Results.Pages;

namespace ScNet.Derivations.Pages;

/// <summary>What changed between two analyses, as a person reads it.</summary>
public static class DifferencePage
{
    /// <summary>The page of a difference.</summary>
    /// <param name="difference">The difference.</param>
    public static Page Of(AnalysisDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        (string before, string after) = difference.Converters;
        return before == after ? Of($"{before} before", "after", difference) : Of(before, after, difference);
    }

    /// <summary>The page of a difference.</summary>
    /// <param name="before">What the earlier analysis is of, as the caller named it.</param>
    /// <param name="after">What the later analysis is of, as the caller named it.</param>
    /// <param name="difference">The difference.</param>
    public static Page Of(string before, string after, AnalysisDifference difference)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(difference);
        string count = difference.Changes.Count switch
        {
            0 => "no difference",
            1 => "1 difference",
            int many => string.Create(CultureInfo.InvariantCulture, $"{many} differences"),
        };
        return new Page(
            $"{before} and {after}: {count}",
            difference.IsEmpty ? [] : [new PageTable(
                string.Empty,
                [
                    new("mode", IsFigure: false, "mode"),
                    new("what", IsFigure: false, "what"),
                    new("before", IsFigure: true, "before"),
                    new("after", IsFigure: true, "after"),
                    new("change", IsFigure: true, "amount"),
                    new("%", IsFigure: true, "percent"),
                ],
                difference.Changes.Select(c => (IEnumerable<PageCell>)
                [
                    c.Mode ?? string.Empty,
                    c.Description,
                    Word(c.Before, c.After is null ? "there" : "-"),
                    Word(c.After, c.Before is null ? "new" : "gone"),
                    new(c.Amount.IsDetermined ? $"{(c.Amount.Sign > 0 ? "+" : string.Empty)}{c.Amount}" : string.Empty, c.Amount.IsDetermined ? c.Amount.ToDouble() : null),
                    new(c.Percent?.ToString("+0.###;-0.###;0", CultureInfo.InvariantCulture) ?? string.Empty, c.Percent),
                ]))]);
    }

    private static string Word(string? value, string none) => string.IsNullOrEmpty(value) ? none : value;
}
