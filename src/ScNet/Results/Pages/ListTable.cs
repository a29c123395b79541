using System.Collections;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace ScNet.Results.Pages;

/// <summary>A list as a table: things property by property, values beside their names, what has a value per phase with a column for each.</summary>
/// <param name="Blocks">The table, and below it how many rows are left out.</param>
[RequiresUnreferencedCode("Reads the properties of objects.")]
internal sealed record ListTable(IReadOnlyList<PageBlock> Blocks)
{
    // a notebook that holds more is slow to open
    private const int MostRows = 200;

    /// <summary>The table of a list that has entries.</summary>
    public static ListTable Of(object list)
    {
        object?[] all = [.. ((IEnumerable)list).Cast<object?>()], items = all[..Math.Min(all.Length, MostRows)];
        NameIndex? names = (list as INamed)?.Names;
        PageTable table = CommonType(items) is { } type && PropertyPage.Shows(type) ? PropertyPage.TableOf(type, items, names)
            : items.All(i => i is INamed and IEnumerable) ? Crossed([.. items.Cast<INamed>()], names)
            : Entries(items, names);
        return new([table, .. all.Length > MostRows ? [new PageRemarks([string.Create(CultureInfo.InvariantCulture, $"and {all.Length - MostRows} more")])] : Array.Empty<PageBlock>()]);
    }

    /// <summary>The heading of what names the rows: "Capacitor".</summary>
    public static PageColumn Head(NameIndex? names) => names is null ? new PageColumn("Position", IsFigure: true) : new PageColumn(char.ToUpperInvariant(names.Kind[0]) + names.Kind[1..], IsFigure: false);

    // the type of all, or the nearest that all derive from
    private static Type? CommonType(object?[] items)
    {
        Type? type = items.FirstOrDefault(i => i is not null)?.GetType();
        while (type is not null && items.Any(i => i is not null && !type.IsInstanceOfType(i)))
        {
            type = type.BaseType;
        }

        return type == typeof(object) || type == typeof(ValueType) ? null : type;
    }

    private static PageTable Crossed(INamed[] rows, NameIndex? names) => new(
        string.Empty,
        [Head(names), .. Enumerable.Range(0, rows.Select(r => r.Names.Count).Max()).Select(k => new PageColumn(HeadOf(rows.First(r => r.Names.Count > k).Names, k), IsFigure: true))],
        rows.Select((r, i) => (IEnumerable<PageCell>)[Name(names, i), .. ((IEnumerable)r).Cast<object?>().Select(v => PropertyCells.Of(v))]));

    private static PageTable Entries(object?[] items, NameIndex? names) => new(
        string.Empty,
        [Head(names), new PageColumn(names is null ? "Entry" : "Value", IsFigure: items.All(i => i is double or int or Quantity))],
        items.Select((item, i) => new[] { Name(names, i), PropertyCells.Of(item) }));

    // numbers alone would not tell what they count
    private static string HeadOf(NameIndex names, int position) =>
        int.TryParse(names[position], NumberStyles.None, CultureInfo.InvariantCulture, out _) ? $"{names.Kind} {names[position]}" : names[position];

    private static PageCell Name(NameIndex? names, int position) => names is null ? Cells.Count(position) : names[position];
}
