using System.Globalization;
using ScNet.Reporting.Drawings;

namespace ScNet.Reporting.Tests.Drawings;

/// <summary>Where the symbols and the names of nets of a drawing stand, as lines of text, and how far two such lists differ.</summary>
internal static class GoldenGeometry
{
    /// <summary>One line for the size of the sheet and for each symbol and name of a net: "symbol fly 104 180".</summary>
    public static IReadOnlyList<string> Of(Sheet sheet) =>
    [
        Line("sheet", sheet.Width, sheet.Height),
        .. sheet.Symbols.Select(s => Line($"symbol {s.Part.Name}", (s.FirstEnd.X + s.SecondEnd.X) / 2, (s.FirstEnd.Y + s.SecondEnd.Y) / 2)),
        .. sheet.Labels.Where(l => l.Role == LabelRole.Node).Select(l => Line($"net {l.Text}", l.Box.Left, l.Box.Top)),
    ];

    /// <summary>What of two lists differs by more than a tolerance; none where all is in its place.</summary>
    /// <param name="expected">The lines as they were kept.</param>
    /// <param name="actual">The lines as they are.</param>
    /// <param name="tolerancePixels">How far something may have moved (px).</param>
    public static IReadOnlyList<string> Differences(IReadOnlyList<string> expected, IReadOnlyList<string> actual, int tolerancePixels)
    {
        if (expected.Count != actual.Count)
        {
            return [$"{expected.Count} lines expected, {actual.Count} found"];
        }

        return [.. expected.Zip(actual).Where(p => !AreNear(p.First, p.Second)).Select(p => $"'{p.First}' expected, '{p.Second}' found")];

        bool AreNear(string first, string second)
        {
            string[] a = first.Split(' ');
            string[] b = second.Split(' ');
            return a.Length == b.Length && a.AsSpan()[..^2].SequenceEqual(b.AsSpan()[..^2])
                && a[^2..].Zip(b[^2..]).All(n => Math.Abs(Number(n.First) - Number(n.Second)) <= tolerancePixels);
        }
    }

    private static string Line(string name, int x, int y) => string.Create(CultureInfo.InvariantCulture, $"{name} {x} {y}");

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
