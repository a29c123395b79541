using Tomlyn.Syntax;

namespace ScNet.Netlists.Documents;

/// <summary>
/// Brings every spelling of a document (headers, sub-tables, dotted keys, inline tables) into one tree
/// of tables, and reports what is defined twice by the rules of TOML 1.0.
/// </summary>
internal sealed class DocumentTree
{
    private readonly DocumentErrors _errors;

    private DocumentTree(DocumentErrors errors) => _errors = errors;

    public static DocumentTable Of(DocumentSyntax document, DocumentErrors errors)
    {
        DocumentTree tree = new(errors);
        DocumentTable root = new(TableForm.Header, string.Empty, 0);
        tree.AddAll(document.KeyValues, root);
        foreach (TableSyntaxBase table in document.Tables)
        {
            if (table.Name is { } name)
            {
                tree.AddAll(table.Items, tree.Open(root, name, table is TableArraySyntax));
            }
        }

        return root;
    }

    private void AddAll(SyntaxList<KeyValueSyntax> items, DocumentTable table)
    {
        foreach (KeyValueSyntax item in items)
        {
            Add(item, table);
        }
    }

    private void Add(KeyValueSyntax item, DocumentTable table)
    {
        if (item.Key is not { Key: { } first } path || item.Value is null)
        {
            return;
        }

        DocumentTable? target = table;
        BareKeyOrStringValueSyntax key = first;
        foreach (DottedKeyItemSyntax next in path.DotKeys)
        {
            target = Step(target, key);
            if (target is null || next.Key is null)
            {
                return;
            }

            key = next.Key;
        }

        string name = TextOf(key);
        if (target.Find(name) is { } existing)
        {
            ReportTwice(target, existing, _errors.PositionOf(key));
            return;
        }

        if (item.Value is InlineTableSyntax inline)
        {
            DocumentTable child = target.Child(name, TableForm.Dotted);
            target.Add(new DocumentEntry(name, _errors.PositionOf(key), child, null));
            foreach (InlineTableItemSyntax inner in inline.Items)
            {
                if (inner.KeyValue is { } pair)
                {
                    Add(pair, child);
                }
            }

            Close(child);
        }
        else
        {
            target.Add(new DocumentEntry(name, _errors.PositionOf(key), null, item.Value));
        }
    }

    // one part of a dotted key: into the table of that name, if a dotted key may enter it
    private DocumentTable? Step(DocumentTable table, BareKeyOrStringValueSyntax key)
    {
        string name = TextOf(key);
        DocumentEntry? entry = table.Find(name);
        if (entry is null)
        {
            DocumentTable child = table.Child(name, TableForm.Dotted);
            table.Add(new DocumentEntry(name, _errors.PositionOf(key), child, null));
            return child;
        }

        if (entry.Table is { Form: TableForm.Dotted })
        {
            return entry.Table;
        }

        ReportTwice(table, entry, _errors.PositionOf(key));
        return null;
    }

    // the table that a header opens
    private DocumentTable Open(DocumentTable root, KeySyntax path, bool isArray)
    {
        DocumentTable table = root;
        BareKeyOrStringValueSyntax? key = path.Key;
        foreach (DottedKeyItemSyntax next in path.DotKeys)
        {
            if (key is null)
            {
                break;
            }

            string part = TextOf(key);
            DocumentEntry? above = table.Find(part);
            if (above is null)
            {
                above = new DocumentEntry(part, _errors.PositionOf(key), table.Child(part, TableForm.Implied), null);
                table.Add(above);
            }

            if (above.Table is null or { Form: TableForm.Inline })
            {
                ReportTwice(table, above, _errors.PositionOf(key));
                return Scrap(table);
            }

            table = above.Table;
            key = next.Key;
        }

        return key is null ? Scrap(table) : OpenLast(table, key, isArray ? TableForm.Array : TableForm.Header);
    }

    private DocumentTable OpenLast(DocumentTable table, BareKeyOrStringValueSyntax key, TableForm form)
    {
        string name = TextOf(key);
        DocumentEntry? entry = table.Find(name);
        if (entry is null)
        {
            entry = new DocumentEntry(name, _errors.PositionOf(key), table.Child(name, form), null);
            table.Add(entry);
            return entry.Table!;
        }

        switch (entry.Table?.Form)
        {
            case TableForm.Implied when form == TableForm.Header:
                entry.Table.Form = form;
                return entry.Table;
            case TableForm.Array when form == TableForm.Array:
                return Scrap(table);
            case TableForm.Header when form == TableForm.Header:
                // what follows belongs to the table all the same, so that it is not missed
                ReportTwice(table, entry, _errors.PositionOf(key));
                return entry.Table;
            default:
                ReportTwice(table, entry, _errors.PositionOf(key));
                return Scrap(table);
        }
    }

    private void ReportTwice(DocumentTable table, DocumentEntry first, SourcePosition position)
    {
        bool isElement = table.Depth == 1 && table.Section is NetlistKeys.Capacitors or NetlistKeys.Switches;
        bool isNamed = isElement || (table.Section == NetlistKeys.Modes && table.Depth is 1 or 2);
        _errors.Add(
            isNamed ? DiagnosticCodes.DuplicateName : DiagnosticCodes.Syntax,
            $"{Quoted.Name(first.Key)} is written twice (first at line {first.Position.Line}, column {first.Position.Column}). Join the two, or leave one out.",
            position,
            isElement ? [first.Key] : null);
    }

    // with a list of its own: a dotted key in braces can be very deep
    private static void Close(DocumentTable table)
    {
        List<DocumentTable> open = [table];
        while (open.Count > 0)
        {
            DocumentTable next = open[^1];
            open.RemoveAt(open.Count - 1);
            next.Form = TableForm.Inline;
            foreach (DocumentEntry entry in next.Entries)
            {
                if (entry.Table is { Form: TableForm.Dotted } child)
                {
                    open.Add(child);
                }
            }
        }
    }

    private static DocumentTable Scrap(DocumentTable table) => table.Child(string.Empty, TableForm.Inline);

    private static string TextOf(BareKeyOrStringValueSyntax key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? string.Empty,
        StringValueSyntax quoted => quoted.Value ?? string.Empty,
        _ => string.Empty,
    };
}
