using System.Globalization;

namespace ScNet;

/// <summary>Numbers with their unit for <see cref="object.ToString"/>: six digits, the invariant culture, "?" for an undetermined one.</summary>
internal static class UnitText
{
    public static string Of(double? value, string unit) => value is { } known
        ? string.Create(CultureInfo.InvariantCulture, $"{known:G6} {unit}")
        : "?";

    public static string Percent(double? fraction) => fraction is { } known ? string.Create(CultureInfo.InvariantCulture, $"{100 * known:G4} %") : "?";

    /// <summary>"1 switch", "2 switches".</summary>
    public static string Count(long count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    /// <summary>Names between two texts; nothing where there are none.</summary>
    public static string Names(string before, IReadOnlyCollection<string> names, string after = "") =>
        names.Count > 0 ? $"{before}{string.Join(", ", names)}{after}" : string.Empty;
}
