using ScNet.Cli.Rendering;

namespace ScNet.Cli;

/// <summary>One line of a comparison: a mode of a file, or a file that could not be read.</summary>
internal sealed record ComparisonRow(NetlistFile File, ModeRow? Mode);

/// <summary>The lines of a comparison in their order.</summary>
internal static class ComparisonRows
{
    /// <summary>The lines in the order of the files, or in the ascending order of a column, those without a value last.</summary>
    /// <param name="comparisons">The files.</param>
    /// <param name="column">The header of one of <see cref="ComparisonColumns"/> that the rows have, or null.</param>
    public static ComparisonRow[] Of(IEnumerable<FileComparison> comparisons, string? column)
    {
        ComparisonRow[] rows = [.. comparisons.SelectMany(c => c.File.Reading.Succeeded
            ? c.Rows.Select(r => new ComparisonRow(c.File, r))
            : [new ComparisonRow(c.File, null)])];
        if (column is null)
        {
            return rows;
        }

        Func<ModeRow, double?> value = ComparisonColumns.WithSilicon.First(c => c.Header == column).Value;
        return [.. rows.OrderBy(r => ValueOf(r) is null).ThenBy(ValueOf)];

        double? ValueOf(ComparisonRow row) => row.Mode is { Comparison: not null } mode ? value(mode) : null;
    }
}
