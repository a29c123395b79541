namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Names as charts show them.</summary>
internal static class ChartNames
{
    /// <summary>A converter, and its mode where it has several.</summary>
    public static string Of(Converter converter, Mode mode) => converter.Modes.Count > 1 ? $"{converter.Name}, mode {mode}" : converter.Name;

    /// <summary>Names without what all of them begin with, up to the last ", " or space: "1/3" and "1/2" of "Gears, 1/3" and "Gears, 1/2".</summary>
    public static IReadOnlyList<string> Short(IReadOnlyList<string> names)
    {
        if (names.Count < 2)
        {
            return names;
        }

        int length = 0;
        while (names.All(n => n.Length > length && n[length] == names[0][length]))
        {
            length++;
        }

        int end = length == 0 ? -1 : names[0].LastIndexOf(' ', length - 1);
        return [.. names.Select(n => n[(end + 1)..])];
    }
}
