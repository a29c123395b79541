namespace ScNet.Netlists.Toml;

/// <summary>Checks that tables have the keys that the format knows.</summary>
internal static class TomlKeys
{
    public static bool AreKnown(TomlEntry table, string[] known) => table.Entries.All(e => Array.IndexOf(known, e.Key) >= 0);

    /// <summary>Reports the unknown keys of a table.</summary>
    /// <returns>The known keys that they seem to stand for, so that these need not be reported as missing.</returns>
    public static HashSet<string> Check(TomlEntry table, string[] known, string where, TomlFormat format, DiagnosticList findings, string[]? elements = null)
    {
        HashSet<string> meant = [];
        foreach (TomlEntry entry in table.Entries.Where(e => Array.IndexOf(known, e.Key) < 0))
        {
            string? nearest = format.Nearest(entry.Key, known);
            string advice = nearest is null ? $"The keys are {string.Join(", ", known)}." : $"Did you mean '{nearest}'?";
            findings.Error(DiagnosticCodes.UnknownKey, $"There is no key {Quoted.Name(entry.Key)} in {where}. {advice}", entry.Position, elements);
            if (nearest is not null)
            {
                meant.Add(nearest);
            }
        }

        return meant;
    }
}
