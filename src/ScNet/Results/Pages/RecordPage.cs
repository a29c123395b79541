using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace ScNet.Results.Pages;

/// <summary>A record that has no words of its own, value by value: what its name says is the heading, its unit stands with the number.</summary>
[RequiresUnreferencedCode("Reads the properties of records.")]
internal static class RecordPage
{
    private static readonly (string Word, string Unit)[] s_units =
    [
        ("Volts", "V"), ("Amperes", "A"), ("Ohms", "Ω"), ("Farads", "F"), ("Henries", "H"), ("Watts", "W"), ("Hz", "Hz"), ("Hertz", "Hz"),
        ("Seconds", "s"), ("Hours", "h"), ("Coulombs", "C"), ("Metres", "m"), ("Joules", "J"),
    ];

    /// <summary>Whether values of a type would say their properties one after the other, as the compiler has it.</summary>
    public static bool Shows(Type type) =>
        type.GetMethod(nameof(ToString), BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly, Type.EmptyTypes)
            ?.IsDefined(typeof(CompilerGeneratedAttribute)) == true;

    public static Page Of(object record) => new(
        Words(record.GetType().Name),
        [new PageFigures(PropertiesOf(record.GetType()).Select(p => new PageFigure(Split(p.Name).Words, Value(p, record).Text)))]);

    /// <summary>Records of one type, one to a row.</summary>
    public static PageTable TableOf(Type type, IEnumerable<object?> records)
    {
        PropertyInfo[] properties = PropertiesOf(type);
        return new PageTable(
            string.Empty,
            properties.Select(p => new PageColumn(Split(p.Name).Words, IsFigure: IsNumber(p.PropertyType))),
            records.Select(r => properties.Select(p => r is null ? new PageCell(string.Empty) : Value(p, r))));
    }

    private static PropertyInfo[] PropertiesOf(Type type) =>
        [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0)];

    private static PageCell Value(PropertyInfo property, object record) => property.GetValue(record) switch
    {
        null => "none",
        double number => Split(property.Name).Unit is { } unit
            ? new PageCell(EngineeringNumber.Of(number, unit), number)
            : new PageCell(number.ToString("G5", CultureInfo.InvariantCulture), number),
        int number => new PageCell(number.ToString(CultureInfo.InvariantCulture), number),
        bool isSo => isSo ? "yes" : "no",
        string text => text,
        System.Collections.IEnumerable items => string.Join(", ", items.Cast<object?>()),
        IFormattable value => value.ToString(null, CultureInfo.InvariantCulture),
        { } value => $"{value}",
    };

    private static bool IsNumber(Type type) => (Nullable.GetUnderlyingType(type) ?? type) is var t && (t == typeof(double) || t == typeof(int));

    private static (string Words, string? Unit) Split(string name)
    {
        // an area has no prefixes: the square of a prefix would be read as the prefix of a square
        (string word, string? unit) = name.EndsWith("SquareMetres", StringComparison.Ordinal) ? default : s_units.FirstOrDefault(u => name.EndsWith(u.Word, StringComparison.Ordinal));
        return unit is not null && name.Length > word.Length ? (Words(name[..^word.Length]), unit) : (Words(name), unit);
    }

    // "OutputVolts" is "Output volts"
    private static string Words(string name) =>
        string.Concat(name.Select((c, i) => i > 0 && char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()));
}
