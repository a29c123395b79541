using System.Globalization;
using System.Text;
using Fractions;
using ScNet.Analysis;
using ScNet.Reporting.Drawings;
using ScNet.Topologies;

namespace ScNet.Reporting.Tests.Documentation;

/// <summary>The gallery of docs: every family of the catalogue with its drawing, ratio, limits and stress, as the library finds them.</summary>
internal static class Gallery
{
    public const string Page = "README.md";

    private static readonly int[] s_sizes = [3, 4, 2, 5, 7, 1];

    /// <summary>The files of docs/gallery by name.</summary>
    public static SortedDictionary<string, string> Files()
    {
        SortedDictionary<string, string> files = new(StringComparer.Ordinal);
        StringBuilder page = new("""
            # Gallery of families

            Every form of the [family catalogue](../guide/families.md) at a small size, as the library draws and analyses it: all switches, drawn
            open, with the phases in which each is closed. Voltages are per volt of input. Limits are for equal capacitances C and
            equal on-resistances R at the switching frequency f, windings without resistance; where held currents charge softly, the slow limit is what is left of charge
            sharing. This page is written by a test from the analysis; [derivations and sources](../theory/families.md), and those
            of [inductive families](../theory/inductive-families.md).

            """);
        Dictionary<string, int> forms = [];
        foreach (Family family in FamilyCatalogue.All)
        {
            int form = forms[family.Name] = forms.GetValueOrDefault(family.Name) + 1;
            string name = form == 1 ? family.Name : $"{family.Name}-{form}";
            Converter converter = family.Build(Numbers(family));
            ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
            Picture picture = NetworkDrawing.OfConverter(converter, converter.Modes[0]);
            files.Add($"{name}.svg", picture.ToSvg());
            page.Append(CultureInfo.InvariantCulture, $"\n## {family.Usage}\n\n{Upper(family.Description)}. {Upper(family.Ranges)}; ratio {Ratio(family)}.\n\n");
            page.Append(CultureInfo.InvariantCulture, $"![The switches of {converter.Name} and the phases in which each is closed]({name}.svg)\n\n");
            string mode = converter.Modes.Count > 1 ? $", mode {analysis.Mode}" : string.Empty;
            page.Append(CultureInfo.InvariantCulture, $"| {converter.Name}{mode} | |\n|---|---|\n");
            foreach ((string what, string value) in Figures(analysis))
            {
                page.Append(CultureInfo.InvariantCulture, $"| {what} | {value} |\n");
            }
        }

        files.Add(Page, page.Replace("\r\n", "\n").ToString());
        return files;
    }

    private static IEnumerable<(string What, string Value)> Figures(ModeAnalysis analysis)
    {
        Converter converter = analysis.Converter;
        yield return ("ratio", $"{analysis.Ratio}");
        yield return ("elements", string.Join(", ", new[]
        {
            (converter.Capacitors.Count, "capacitors"), (converter.Switches.Count, "switches"), (converter.Inductors.Count, "inductors"),
        }.Where(c => c.Item1 > 0).Select(c => $"{c.Item1} {(c.Item1 == 1 ? c.Item2[..^1] : c.Item2)}")));
        yield return ("slow-switching limit", Limit(analysis.ChargeSharing?.Coefficients ?? analysis.SlowSwitchingLimit.Coefficients, "· 1/(f C)"));
        yield return ("fast-switching limit", Limit(analysis.FastSwitchingLimit.SwitchCoefficients, "· R"));
        yield return ("largest voltage of a switch", Largest(analysis.Switches.Select(s => (s.Switch.Name, s.PeakBlocking))));
        yield return ("largest voltage of a capacitor", Largest(analysis.Capacitors.Select(c => (c.Capacitor.Name, c.Voltage))));
    }

    private static string Limit(IEnumerable<Quantity> coefficients, string unit)
    {
        Quantity[] all = [.. coefficients];
        if (!all.All(q => q.IsDetermined))
        {
            return "undetermined";
        }

        Fraction sum = all.Aggregate(Fraction.Zero, (s, q) => s + q.ToFraction()).Reduce();
        return sum.IsZero ? "0" : $"{Text(sum)} {unit}";
    }

    private static string Largest(IEnumerable<(string Name, Quantity Value)> elements)
    {
        (string Name, Quantity Value)[] all = [.. elements];
        if (all.Length == 0)
        {
            return "none";
        }

        if (!all.All(e => e.Value.IsDetermined))
        {
            return "undetermined";
        }

        Fraction largest = all.Max(e => e.Value.ToFraction().Abs());
        return $"{Text(largest)} at {string.Join(", ", all.Where(e => e.Value.ToFraction().Abs() == largest).Select(e => e.Name))}";
    }

    // the first of a few sizes that the family accepts and at which every voltage is determined, if there is one
    private static int[] Numbers(Family family)
    {
        int[][] accepted = [.. Combinations(family.Parameters.Count).Where(n => family.Accepts(n))];
        return accepted.FirstOrDefault(n => IsDetermined(family.Build(n))) ?? accepted[0];
    }

    private static bool IsDetermined(Converter converter) =>
        ModeAnalysis.Try(converter, converter.Modes[0]) is { HasResult: true, Analysis: { } analysis }
        && analysis.Switches.All(s => s.PeakBlocking.IsDetermined) && analysis.Capacitors.All(c => c.Voltage.IsDetermined);

    private static IEnumerable<int[]> Combinations(int count) => count == 0
        ? [[]]
        : Combinations(count - 1).SelectMany(head => s_sizes.Select(size => (int[])[.. head, size]));

    private static string Ratio(Family family) => family.StepUpRatio is { } up ? $"{family.Ratio}, stepping up {up}" : family.Ratio;

    private static string Text(Fraction value) => value.Denominator.IsOne ? $"{value.Numerator}" : $"{value.Numerator}/{value.Denominator}";

    private static string Upper(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
