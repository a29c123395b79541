using System.Collections;
using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace ScNet.Results.Pages;

/// <summary>A thing property by property: what its name says is the heading, its unit stands with the number; lists are tables below.</summary>
[RequiresUnreferencedCode("Reads the properties of objects.")]
internal static class PropertyPage
{
    private const int LongTitle = 100;

    /// <summary>Whether values of a type are told by their properties: all but numbers, words, lists and what is marked as text.</summary>
    public static bool Shows(Type type) => !IsText(type) && !typeof(IEnumerable).IsAssignableFrom(type) && PropertiesOf(type).Length > 0;

    /// <summary>Whether values of a type are told by their text.</summary>
    public static bool IsText(Type type) =>
        type.IsEnum || typeof(IFormattable).IsAssignableFrom(type) || typeof(Exception).IsAssignableFrom(type) || typeof(Delegate).IsAssignableFrom(type)
        || (type.Namespace is "System" && !type.IsArray) || type.IsDefined(typeof(ShownAsTextAttribute), inherit: true);

    /// <summary>The page of one thing.</summary>
    public static Page Of(object thing)
    {
        PropertyInfo[] properties = PropertiesOf(thing.GetType());
        object?[] values = [.. properties.Select(p => p.GetValue(thing))];
        (string Name, IReadOnlyList<PageBlock> Blocks)[] lists =
            [.. properties.Zip(values).Where(p => IsList(p.Second)).Select(p => (PropertyWords.Split(p.First.Name).Words, p.Second is IEnumerable<string> lines ? [new PageRemarks(lines)] : ListTable.Of(p.Second!).Blocks))];
        return new Page(
            TitleOf(thing),
            [
                new PageFigures(properties.Zip(values).Where(p => !IsList(p.Second)).Select(p => new PageFigure(PropertyWords.Split(p.First.Name).Words, PropertyCells.Of(p.First, thing).Text))),
                .. lists.SelectMany(l => (IEnumerable<PageBlock>)[new PageHeading(l.Name), .. l.Blocks]),
            ]);
    }

    /// <summary>Things of one type, one to a row; a column in which nothing stands is left out.</summary>
    /// <param name="type">Their type, or one that all of them derive from.</param>
    /// <param name="things">The things.</param>
    /// <param name="names">The names of the rows where the things have none themselves.</param>
    public static PageTable TableOf(Type type, IReadOnlyList<object?> things, NameIndex? names = null)
    {
        PropertyInfo[] properties = PropertiesOf(type);
        PageCell?[][] cells = [.. things.Select(t => properties.Select(p => t is null || p.GetValue(t) is not { } value || IsEmpty(value) ? null : (PageCell?)PropertyCells.Of(value, PropertyWords.Split(p.Name).Unit)).ToArray())];
        int[] shown = [.. Enumerable.Range(0, properties.Length).Where(c => cells.Any(r => r[c] is not null))];
        bool hasNames = names is not null && !cells.Select((r, i) => r.Any(c => c?.Text == names[i])).All(isNamed => isNamed);
        return new PageTable(
            string.Empty,
            [.. hasNames ? [ListTable.Head(names)] : Array.Empty<PageColumn>(), .. shown.Select(c => new PageColumn(PropertyWords.Split(properties[c].Name).Words, IsNumber(properties[c].PropertyType)))],
            cells.Select((r, i) => (IEnumerable<PageCell>)[.. hasNames ? [names![i]] : Array.Empty<PageCell>(), .. shown.Select(c => r[c] ?? "none")]));
    }

    /// <summary>Whether a type has no text of its own: that of a record is its properties over again, as the compiler has it, that of others the name of the type.</summary>
    public static bool IsSilent(Type type) => VisibleOf(type).GetMethod(nameof(ToString), BindingFlags.Public | BindingFlags.Instance, Type.EmptyTypes) is not { } text
        || text.DeclaringType?.Namespace is "System" || text.IsDefined(typeof(CompilerGeneratedAttribute));

    /// <summary>What is asked of a thing of a type.</summary>
    public static PropertyInfo[] PropertiesOf(Type type) =>
        [.. VisibleOf(type).GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0 && !p.PropertyType.IsByRefLike)];

    private static string TitleOf(object thing)
    {
        string words = PropertyWords.Of(VisibleOf(thing.GetType()).Name.Split('`')[0]), line = IsSilent(thing.GetType()) ? string.Empty : PropertyCells.FirstLine(thing);
        return line.Length is 0 or > LongTitle ? words : $"{words}: {line}";
    }

    private static bool IsEmpty(object value) => value is IEnumerable items and not string && !items.Cast<object?>().Any();

    // what a user knows of a type that only the library sees
    private static Type VisibleOf(Type type) => type.IsVisible || type.BaseType is null ? type : VisibleOf(type.BaseType);

    // a list of things, of values that have names, or of lines
    private static bool IsList(object? value) => value is IEnumerable items and not string && !IsText(value.GetType()) && items.Cast<object?>().FirstOrDefault() is { } first
        && (first is string ? items is not INamed && PropertyCells.Of(value).Text.Length > PropertyCells.MostLetters : value is INamed || !IsText(first.GetType()));

    private static bool IsNumber(Type type) => (Nullable.GetUnderlyingType(type) ?? type) is var t && (t == typeof(double) || t == typeof(int) || t == typeof(long) || t == typeof(Quantity));
}
