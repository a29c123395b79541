using Tomlyn.Syntax;

namespace ScNet.Netlists.Documents;

/// <summary>Reads capacitors and switches.</summary>
internal sealed class ElementReader(ValueReader values, KeyCheck keys, PhaseReader phases, NetlistDeclaration declaration)
{
    private static readonly Declared<double> s_one = new(1);
    private static readonly Declared<double> s_zero = new(0);

    public void ReadCapacitors(DocumentTable table)
    {
        foreach (DocumentEntry entry in table.Entries)
        {
            if (Open(entry, "capacitor") is not { } body)
            {
                continue;
            }

            string[] element = [entry.Key];
            (string positive, string bottom) = ReadBetween(entry, body, "capacitor", NetlistKeys.Capacitor, element);
            declaration.Capacitors.Add(new DeclaredCapacitor(
                new Declared<string>(entry.Key, entry.Position),
                positive,
                bottom,
                ReadValue(body, NetlistKeys.Farads, "the capacitance (farads)", entry.Key, element) ?? s_one,
                ReadValue(body, NetlistKeys.EsrOhms, "the series resistance (ohms)", entry.Key, element) ?? s_zero));
        }
    }

    public void ReadSwitches(DocumentTable table, bool hasModes)
    {
        foreach (DocumentEntry entry in table.Entries)
        {
            if (Open(entry, "switch") is not { } body)
            {
                declaration.Gaps |= DeclarationGaps.Switches;
                continue;
            }

            string[] element = [entry.Key];
            (string first, string second) = ReadBetween(entry, body, "switch", NetlistKeys.Switch, element);
            declaration.Switches.Add(new DeclaredSwitch(
                new Declared<string>(entry.Key, entry.Position),
                first,
                second,
                ReadValue(body, NetlistKeys.Ohms, "the on-resistance (ohms)", entry.Key, element) ?? s_one,
                ReadOn(entry, body, hasModes, element)));
        }
    }

    private DocumentTable? Open(DocumentEntry entry, string kind)
    {
        string[] element = [entry.Key];
        if (entry.Key.Length == 0)
        {
            values.Errors.Add(DiagnosticCodes.WrongValue, $"Expected a non-empty name of a {kind}, but got an empty one.", entry.Position);
        }
        else if (entry.Table is { Form: not TableForm.Array } body)
        {
            return body;
        }
        else
        {
            values.WrongType("a table such as { between = [\"a\", \"b\"] }", entry, $"{kind} {Quoted.Name(entry.Key)}", element);
        }

        declaration.Gaps |= DeclarationGaps.Elements;
        return null;
    }

    private (string First, string Second) ReadBetween(
        DocumentEntry entry, DocumentTable body, string kind, string[] known, string[] element)
    {
        HashSet<string>? meant = keys.Check(body, known, $"{kind} {Quoted.Name(entry.Key)}", element);
        if (body.Find(NetlistKeys.Between) is not { } between)
        {
            if (meant?.Contains(NetlistKeys.Between) != true)
            {
                values.Errors.Add(DiagnosticCodes.MissingKey, $"The {kind} {Quoted.Name(entry.Key)} has no key 'between'. Name its two nodes: between = [\"a\", \"b\"].", entry.Position, element);
            }
        }
        else if (between.Value is not ArraySyntax { Items.ChildrenCount: 2 } nodes)
        {
            if (between.Value is ArraySyntax array)
            {
                values.Errors.Add(DiagnosticCodes.WrongValue, $"Expected two nodes for 'between' of {kind} {Quoted.Name(entry.Key)}, but got {array.Items.ChildrenCount}.", values.Errors.PositionOf(array), element);
            }
            else
            {
                values.WrongType("an array of two nodes", between, $"'between' of {kind} {Quoted.Name(entry.Key)}", element);
            }
        }
        else
        {
            string? first = ReadNode(nodes.Items.GetChild(0), between, kind, entry.Key, element);
            string? second = ReadNode(nodes.Items.GetChild(1), between, kind, entry.Key, element);
            if (first is not null && second is not null)
            {
                return (first, second);
            }
        }

        declaration.Gaps |= DeclarationGaps.Elements;
        return (string.Empty, string.Empty);
    }

    private string? ReadNode(ArrayItemSyntax? item, DocumentEntry between, string kind, string name, string[] element) =>
        item?.Value is StringValueSyntax { Value.Length: > 0 } text
            ? text.Value
            : values.Text(item?.Value, between.Position, null, $"a node of {kind} {Quoted.Name(name)}", element);

    // a sound value, the rule in a large document, is read without composing the words for a message
    private Declared<double>? ReadValue(DocumentTable body, string key, string what, string name, string[] element) =>
        body.Find(key) is not { } entry ? null
            : entry.Value is IntegerValueSyntax or FloatValueSyntax { Value: > double.NegativeInfinity and < double.PositiveInfinity }
                ? values.Number(entry, string.Empty, element)
                : values.Number(entry, $"{what} of {Quoted.Name(name)}", element);

    private Declared<DeclaredPhase[]>? ReadOn(DocumentEntry entry, DocumentTable body, bool hasModes, string[] element)
    {
        if (body.Find(NetlistKeys.On) is { } on)
        {
            return new Declared<DeclaredPhase[]>(phases.ReadOn(on, entry.Key), on.Position);
        }

        if (!hasModes)
        {
            values.Errors.Add(DiagnosticCodes.MissingKey, $"The switch {Quoted.Name(entry.Key)} has no key 'on', and the document has no [modes]. Say when it is closed: on = [1].", entry.Position, element);
        }

        return null;
    }
}
