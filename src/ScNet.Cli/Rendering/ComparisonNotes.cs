using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>What stands below the table of a comparison: what exceeds the rating, what is undetermined, and the findings of files and modes.</summary>
internal static class ComparisonNotes
{
    public static void Write(TextWriter output, IReadOnlyList<FileComparison> comparisons)
    {
        List<string> notes = [];
        foreach (FileComparison file in comparisons)
        {
            notes.AddRange((file.File.Reading.Converter?.Warnings ?? []).Select(file.File.Describe));
            foreach (ResultRow<ComparedMode> row in file.Rows.Where(r => r.Outcome is not null))
            {
                string place = $"{file.File.Path}, mode {row.Outcome!.Mode.Name}: ";
                if (row.Result is { Comparison: var comparison })
                {
                    Note(notes, place + "over the rating", comparison.SwitchStress.Exceeding, comparison.CapacitorStress.Exceeding);
                    Note(notes, place + "across a source and left out", [], comparison.LeftOut);
                    Note(notes, place + "voltage undetermined", comparison.SwitchStress.Undetermined, comparison.CapacitorStress.Undetermined);
                }

                notes.AddRange(row.Diagnostics.Except(row.Outcome!.Converter.Warnings).Select(d => place + d));
            }
        }

        if (notes.Count > 0)
        {
            output.WriteLine();
        }

        foreach (string note in notes)
        {
            output.WriteLine(Printable.Of(note));
        }
    }

    private static void Note(List<string> notes, string what, IReadOnlyList<string> switches, IReadOnlyList<string> capacitors)
    {
        string[] parts =
        [
            .. switches.Count > 0 ? [$"{Count(switches.Count, "switch", "switches")} ({string.Join(", ", switches)})"] : Array.Empty<string>(),
            .. capacitors.Count > 0 ? [$"{Count(capacitors.Count, "capacitor", "capacitors")} ({string.Join(", ", capacitors)})"] : Array.Empty<string>(),
        ];
        if (parts.Length > 0)
        {
            notes.Add($"{what}: {string.Join("; ", parts)}");
        }
    }

    private static string Count(int count, string one, string many) => $"{count} {(count == 1 ? one : many)}";
}
