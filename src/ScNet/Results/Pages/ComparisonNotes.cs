namespace ScNet.Results.Pages;

/// <summary>What stands below the table of a comparison: what exceeds the rating, what is undetermined, and the findings of netlists and modes.</summary>
internal static class ComparisonNotes
{
    public static IEnumerable<PageBlock> Of(IEnumerable<ResultRow<ComparedMode>> rows)
    {
        List<string> notes = [];
        HashSet<Converter> seen = new(ReferenceEqualityComparer.Instance);
        foreach (ResultRow<ComparedMode> row in rows)
        {
            Converter converter = row.Outcome!.Converter;
            string source = row.File ?? converter.Name;
            if (seen.Add(converter))
            {
                notes.AddRange(converter.Warnings.Select(d => d.Position is null ? $"{source}: {d}" : d.ToString()));
            }

            string place = $"{source}, mode {row.Outcome.Mode.Name}: ";
            if (row.Result is { Comparison: var comparison })
            {
                Add(notes, place + "over the rating", comparison.SwitchStress.Exceeding, comparison.CapacitorStress.Exceeding);
                Add(notes, place + "across a source and left out", [], comparison.LeftOut);
                Add(notes, place + "voltage undetermined", comparison.SwitchStress.Undetermined, comparison.CapacitorStress.Undetermined);
            }

            notes.AddRange(row.Diagnostics.Except(converter.Warnings).Select(d => place + d));
        }

        return notes.Count > 0 ? [new PageRemarks(notes, isCaution: true)] : [];
    }

    private static void Add(List<string> notes, string what, IReadOnlyList<string> switches, IReadOnlyList<string> capacitors)
    {
        string[] parts =
        [
            .. switches.Count > 0 ? [$"{Counts.Of(switches.Count, "switch", "switches")} ({string.Join(", ", switches)})"] : Array.Empty<string>(),
            .. capacitors.Count > 0 ? [$"{Counts.Of(capacitors.Count, "capacitor", "capacitors")} ({string.Join(", ", capacitors)})"] : Array.Empty<string>(),
        ];
        if (parts.Length > 0)
        {
            notes.Add($"{what}: {string.Join("; ", parts)}");
        }
    }
}
