using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>Reads in which phases switches are closed and which an inductor ends: of an element by itself, and in every mode.</summary>
internal sealed class PhaseEntries(TomlValues values, DiagnosticList findings)
{
    /// <summary>The modes of a table; an entry that is none is reported and left out.</summary>
    public IEnumerable<DeclaredMode> Modes(TomlEntry table)
    {
        if (table.Entries.Count == 0)
        {
            findings.Error(DiagnosticCodes.MissingKey, $"The table 'modes' has no mode. Add one such as [modes.\"1/2\"], or leave the table out.", table.Position);
        }

        foreach (TomlEntry mode in table.Entries)
        {
            if (values.IsNamedTable(mode, "a table with the closed phases of each switch", "mode"))
            {
                yield return new DeclaredMode(
                    new Declared<string>(mode.Key, mode.Position),
                    [.. mode.Entries.Select(c => new DeclaredClosing(new Declared<string>(c.Key, c.Position), Closed(c, c.Key)))]);
            }
        }
    }

    /// <summary>A phase or an array of phases, each by number or name; what is neither is reported and left out.</summary>
    public DeclaredPhase[] Closed(TomlEntry entry, string element, string? kind = null)
    {
        if (entry.Value is not ArraySyntax array)
        {
            return Phase(entry, entry.Value, element, kind, "a phase or an array of phases") is { } only ? [only] : [];
        }

        var phases = new List<DeclaredPhase>(array.Items.ChildrenCount);
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (Phase(entry, item.Value, element, kind, "a phase") is { } phase)
            {
                phases.Add(phase);
            }
        }

        return [.. phases];
    }

    private DeclaredPhase? Phase(TomlEntry entry, ValueSyntax? value, string element, string? kind, string expected)
    {
        switch (value)
        {
            case IntegerValueSyntax whole:
                return new DeclaredPhase(whole.Value, null, TomlValues.PositionOf(value, findings));
            case StringValueSyntax { Value.Length: > 0 } name:
                return new DeclaredPhase(0, TomlValues.TextOf(name, findings), TomlValues.PositionOf(value, findings));
            default:
                values.Wrong($"{expected} (a number from 1, or a name)", entry, value, kind is null ? $"when switch {Quoted.Name(element)} is closed" : $"the phases that {kind} {Quoted.Name(element)} ends", [element]);
                return null;
        }
    }
}
