using System.Collections;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Reflection;
using Fractions;

namespace ScNet.Results.Pages;

/// <summary>The value of a property as a cell: numbers with their unit, things by their names, short lists in one line.</summary>
[RequiresUnreferencedCode("Reads the properties of objects.")]
internal static class PropertyCells
{
    // a longer list would be a cell that nobody reads
    public const int MostLetters = 80;

    /// <summary>The cell.</summary>
    /// <param name="property">The property.</param>
    /// <param name="owner">What has it.</param>
    public static PageCell Of(PropertyInfo property, object owner) => Of(property.GetValue(owner), PropertyWords.Split(property.Name).Unit);

    /// <summary>A value by itself.</summary>
    /// <param name="value">Any value.</param>
    /// <param name="unit">The unit of a number; null for none.</param>
    public static PageCell Of(object? value, string? unit = null) => value switch
    {
        null => "none",
        double number => PropertyWords.Number(number, unit),
        int number => Cells.Count(number),
        bool isSo => isSo ? "yes" : "no",
        string text => text,
        Quantity quantity => Cells.Of(quantity),
        Fraction fraction => Cells.Of(Quantity.Exact(fraction)),
        Interval<double> interval => new PageCell(interval.ToString(unit ?? string.Empty), interval.Minimum),
        Enum word => PropertyWords.Of($"{word}").ToLowerInvariant(),
        IFormattable formattable => formattable.ToString(null, CultureInfo.InvariantCulture),
        IEnumerable items when !PropertyPage.IsText(value.GetType()) => List([.. items.Cast<object?>()], unit),
        _ => NameOf(value) ?? (PropertyPage.IsSilent(value.GetType()) && !PropertyPage.IsText(value.GetType()) ? Words(value) : FirstLine(value)),
    };

    /// <summary>The first line of a text, and whether that is all of it.</summary>
    public static string FirstLine(object value) => $"{value}".Split('\n', 2)[0].TrimEnd('\r');

    // "bottom 2 pF, top 0 F, body node gnd": what is plain of a record within another thing
    private static string Words(object record) => string.Join(", ", PropertyPage.PropertiesOf(record.GetType()).Select(p => (p.Name, Value: p.GetValue(record)))
        .Where(p => p.Value is null or string || PropertyPage.IsText(p.Value.GetType()))
        .Select(p => $"{PropertyWords.Split(p.Name).Words.ToLowerInvariant()} {Of(p.Value, PropertyWords.Split(p.Name).Unit).Text}"));

    private static string List(object?[] items, string? unit)
    {
        string text = string.Join(", ", items.Select(i => i is IEnumerable and not string && !PropertyPage.IsText(i.GetType()) ? $"[{Of(i, unit).Text}]" : Of(i, unit).Text));
        return items.Length == 0 ? "none" : text.Length <= MostLetters || items.Length == 1 || items.All(i => i is string) ? text : string.Create(CultureInfo.InvariantCulture, $"{items.Length} entries");
    }

    // a capacitor, a mode, a converter is known by its name
    private static string? NameOf(object value) =>
        PropertyPage.IsText(value.GetType()) ? null : value.GetType().GetProperty("Name", BindingFlags.Public | BindingFlags.Instance, null, typeof(string), Type.EmptyTypes, null)?.GetValue(value) as string;
}
