using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>An element as its table says it; a node that could not be read is empty.</summary>
internal readonly record struct ElementEntry(TomlEntry Entry, string First, string Second)
{
    public Declared<string> Name => new(Entry.Key, Entry.Position);
}

/// <summary>Reads what elements of every kind have in common: a name and two nodes, in a table of their kind.</summary>
internal sealed class ElementEntries(TomlValues values, DiagnosticList findings)
{
    /// <summary>Whether an entry was left out, or a node of one could not be read.</summary>
    public bool HasGaps { get; private set; }

    /// <summary>The elements of a table; entries that are none are reported.</summary>
    public List<ElementEntry> Read(TomlEntry table, ElementShape shape)
    {
        List<ElementEntry> elements = new(table.Entries.Count);
        foreach (TomlEntry entry in table.Entries)
        {
            if (values.IsNamedTable(entry, "a table such as { between = [\"a\", \"b\"] }", shape.Kind, [entry.Key]))
            {
                (string first, string second) = Between(entry, shape) ?? (string.Empty, string.Empty);
                elements.Add(new ElementEntry(entry, first, second));
                HasGaps |= first.Length == 0;
            }
            else
            {
                HasGaps = true;
            }
        }

        return elements;
    }

    // a sound element, the rule in a large document, is read without composing the words for a message
    private (string First, string Second)? Between(TomlEntry element, ElementShape shape)
    {
        bool isMisspelt = !TomlKeys.AreKnown(element, shape.Keys)
            && TomlKeys.Check(element, shape.Keys, Called(element, shape), NetlistKeys.Format, findings, [element.Key]).Contains(NetlistKeys.Between);
        if (isMisspelt)
        {
            return null;
        }

        if (element.Find(NetlistKeys.Between) is not { } between)
        {
            findings.Error(DiagnosticCodes.MissingKey, $"The {Called(element, shape)} has no key 'between'. Name its two nodes: between = [\"a\", \"b\"].", element.Position, [element.Key]);
            return null;
        }

        if (between.Value is not ArraySyntax array)
        {
            values.Wrong("an array of two nodes", between, between.Value, $"'between' of {Called(element, shape)}", [element.Key]);
            return null;
        }

        if (array.Items.ChildrenCount != 2)
        {
            findings.Error(DiagnosticCodes.WrongValue, $"Expected two nodes for 'between' of {Called(element, shape)}, but got {array.Items.ChildrenCount}.", TomlValues.PositionOf(array, findings), [element.Key]);
            return null;
        }

        return Node(0) is { } first && Node(1) is { } second ? (first, second) : null;

        string? Node(int index) => array.Items.GetChild(index)?.Value is StringValueSyntax { Value.Length: > 0 } text
            ? TomlValues.TextOf(text, findings)
            : values.Text(between, array.Items.GetChild(index)?.Value, $"a node of {Called(element, shape)}", [element.Key])?.Value;
    }

    private static string Called(TomlEntry element, ElementShape shape) => $"{shape.Kind} {Quoted.Name(element.Key)}";
}
