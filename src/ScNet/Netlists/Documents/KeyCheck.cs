namespace ScNet.Netlists.Documents;

/// <summary>Reports the keys of a table that the format does not have.</summary>
internal sealed class KeyCheck(DocumentErrors errors)
{
    /// <summary>Checks every key of a table.</summary>
    /// <returns>The known keys that unknown ones stand for, so that these are not reported as missing; null for none.</returns>
    public HashSet<string>? Check(DocumentTable table, string[] known, string where, string[]? elements = null)
    {
        HashSet<string>? meant = null;
        foreach (DocumentEntry entry in table.Entries)
        {
            if (Array.IndexOf(known, entry.Key) >= 0)
            {
                continue;
            }

            string? nearest = NearestName.Of(entry.Key, known);
            FormattableString advice = nearest is null
                ? (FormattableString)$"The keys are {string.Join(", ", known)}."
                : $"Did you mean '{nearest}'?";
            errors.Add(DiagnosticCodes.UnknownKey, $"There is no key {Quoted.Name(entry.Key)} in {where}. {FormattableString.Invariant(advice)}", entry.Position, elements);
            if (nearest is not null)
            {
                (meant ??= new HashSet<string>(StringComparer.Ordinal)).Add(nearest);
            }
        }

        return meant;
    }
}
