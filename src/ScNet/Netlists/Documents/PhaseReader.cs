using Fractions;
using Tomlyn.Syntax;

namespace ScNet.Netlists.Documents;

/// <summary>Reads the table of phases, and the phases in which a switch is closed.</summary>
internal sealed class PhaseReader(ValueReader values, NetlistDeclaration declaration)
{
    public void ReadTable(DocumentTable table)
    {
        foreach (DocumentEntry entry in table.Entries)
        {
            bool read = entry.Key switch
            {
                NetlistKeys.Count => ReadCount(entry),
                NetlistKeys.Duty => ReadDuties(entry),
                NetlistKeys.Names => ReadNames(entry),
                _ => false,
            };
            if (!read)
            {
                declaration.Gaps |= DeclarationGaps.Phases;
            }
        }
    }

    /// <summary>A phase or an array of phases, each by number or name; what is neither is reported and left out.</summary>
    public DeclaredPhase[] ReadOn(DocumentEntry entry, string switchName)
    {
        if (entry.Value is not ArraySyntax array)
        {
            return ReadPhase(entry.Value, entry.Table, entry.Position, switchName, "a phase or an array of phases") is { } only ? [only] : [];
        }

        var phases = new DeclaredPhase[array.Items.ChildrenCount];
        int count = 0;
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (ReadPhase(item.Value, null, entry.Position, switchName, "a phase") is { } phase)
            {
                phases[count++] = phase;
            }
        }

        return count == phases.Length ? phases : phases[..count];
    }

    private DeclaredPhase? ReadPhase(
        ValueSyntax? value, DocumentTable? table, SourcePosition position, string switchName, string expected)
    {
        switch (value)
        {
            case IntegerValueSyntax integer:
                return new DeclaredPhase(integer.Value, null, values.Errors.PositionOf(value));
            case StringValueSyntax { Value.Length: > 0 } text:
                return new DeclaredPhase(0, text.Value, values.Errors.PositionOf(value));
            default:
                values.WrongType(
                    $"{expected} (a number from 1, or a name)", value, table, $"when switch {Quoted.Name(switchName)} is closed", position, [switchName]);
                return null;
        }
    }

    private bool ReadCount(DocumentEntry entry)
    {
        if (entry.Value is IntegerValueSyntax integer)
        {
            declaration.PhaseCount = new Declared<long>(integer.Value, values.Errors.PositionOf(integer));
            return true;
        }

        values.WrongType("a whole number", entry, "the number of phases");
        return false;
    }

    private bool ReadDuties(DocumentEntry entry)
    {
        if (entry.Value is not ArraySyntax array)
        {
            values.WrongType("an array with one number per phase", entry, "the duties");
            return false;
        }

        var duties = new List<Declared<Fraction>>(array.Items.ChildrenCount);
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (values.Exact(item.Value, entry.Position, $"the duty of phase {duties.Count + 1}") is not { } duty)
            {
                return false;
            }

            duties.Add(duty);
        }

        declaration.Duties = new([.. duties], values.Errors.PositionOf(array));
        return true;
    }

    private bool ReadNames(DocumentEntry entry)
    {
        if (entry.Value is not ArraySyntax array)
        {
            values.WrongType("an array with one string per phase", entry, "the names of the phases");
            return false;
        }

        var names = new List<Declared<string>>(array.Items.ChildrenCount);
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (values.Text(item.Value, entry.Position, null, $"the name of phase {names.Count + 1}") is not { } name)
            {
                return false;
            }

            names.Add(new Declared<string>(name, values.Errors.PositionOf(item.Value!)));
        }

        declaration.PhaseNames = new([.. names], values.Errors.PositionOf(array));
        return true;
    }
}
