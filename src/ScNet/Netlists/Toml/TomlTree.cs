using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>
/// Brings every spelling of a document (headers, sub-tables, dotted keys, inline tables) into one tree, and
/// reports what is defined twice by the rules of TOML 1.0, or written as only later editions allow.
/// </summary>
internal sealed class TomlTree
{
    private readonly TomlFormat _format;
    private readonly DiagnosticList _findings;

    private TomlTree(TomlFormat format, DiagnosticList findings)
    {
        _format = format;
        _findings = findings;
    }

    public static TomlEntry Of(DocumentSyntax document, TomlFormat format, DiagnosticList findings)
    {
        TomlTree tree = new(format, findings);
        TomlEntry root = new(string.Empty, new SourcePosition(findings.File, 1, 1), TomlForm.Header);
        tree.AddAll(document.KeyValues, root);
        foreach (TableSyntaxBase table in document.Tables)
        {
            if (table.Name is { } path && tree.Enter(root, path, TomlForm.Implied, table is TableArraySyntax ? TomlForm.Array : TomlForm.Header) is { } opened)
            {
                tree.AddAll(table.Items, opened);
            }
        }

        return root;
    }

    /// <summary>The tables of an array, written with headers or in braces; null where something else stands there.</summary>
    public static IReadOnlyList<TomlEntry>? TablesOf(TomlEntry entry, TomlFormat format, DiagnosticList findings)
    {
        if (entry.Form == TomlForm.Array)
        {
            return entry.Entries;
        }

        if (entry.Value is not ArraySyntax array || array.Items.Any(i => i.Value is not InlineTableSyntax))
        {
            return null;
        }

        TomlTree tree = new(format, findings);
        return [.. array.Items.Select(item =>
        {
            var inline = (InlineTableSyntax)item.Value!;
            TomlEntry table = new(string.Empty, TomlValues.PositionOf(inline, findings), TomlForm.Inline, parent: entry);
            tree.AddAll(inline, table);
            return table;
        })];
    }

    private void AddAll(SyntaxList<KeyValueSyntax> items, TomlEntry table)
    {
        foreach (KeyValueSyntax item in items)
        {
            Add(item, table);
        }
    }

    private void Add(KeyValueSyntax item, TomlEntry table)
    {
        if (item.Key is not { } path || item.Value is not { } value)
        {
            return;
        }

        if (value is not InlineTableSyntax inline)
        {
            _ = Enter(table, path, TomlForm.Dotted, TomlForm.Value, value);
            return;
        }

        if (Enter(table, path, TomlForm.Dotted, TomlForm.Inline) is { } child)
        {
            AddAll(inline, child);
        }
        else
        {
            CheckBraces(inline);
        }
    }

    private void AddAll(InlineTableSyntax inline, TomlEntry table)
    {
        CheckBraces(inline);
        foreach (InlineTableItemSyntax inner in inline.Items)
        {
            if (inner.KeyValue is { } pair)
            {
                Add(pair, table);
            }
        }
    }

    // the entry at the end of a path of keys; null where it may not be entered, which was reported
    private TomlEntry? Enter(TomlEntry table, KeySyntax path, TomlForm onTheWay, TomlForm atTheEnd, ValueSyntax? value = null)
    {
        TomlEntry? at = table;
        BareKeyOrStringValueSyntax? key = path.Key;
        foreach (DottedKeyItemSyntax next in path.DotKeys)
        {
            at = at is null || key is null ? null : Step(at, key, onTheWay);
            key = next.Key;
        }

        return at is null || key is null ? null : Step(at, key, atTheEnd, value);
    }

    private TomlEntry? Step(TomlEntry table, BareKeyOrStringValueSyntax key, TomlForm form, ValueSyntax? value = null)
    {
        string name = key is StringValueSyntax quoted ? TomlValues.TextOf(quoted, _findings) : (key as BareKeySyntax)?.Key?.Text ?? string.Empty;
        SourcePosition position = TomlValues.PositionOf(key, _findings);
        if (table.Find(name) is not { } found)
        {
            TomlEntry added = table.Add(name, position, form, value);
            return form == TomlForm.Array ? added.AddItem(position) : added;
        }

        switch (form)
        {
            case TomlForm.Implied when found.Form == TomlForm.Array:
                return found.Entries[^1];
            case TomlForm.Dotted when found.Form == TomlForm.Dotted:
            case TomlForm.Implied when found.Form is not (TomlForm.Value or TomlForm.Inline):
                return found;
            case TomlForm.Header when found.Form == TomlForm.Implied:
                found.Form = TomlForm.Header;
                return found;
            case TomlForm.Array when found.Form == TomlForm.Array:
                return found.AddItem(position);
            default:
                ReportTwice(table, found, position);
                // what follows a second header belongs to the table all the same, so that it is not missed
                return form == TomlForm.Header && found.Form == TomlForm.Header ? found : null;
        }
    }

    private void ReportTwice(TomlEntry table, TomlEntry first, SourcePosition position)
    {
        TomlNaming naming = _format.NamingOf(table);
        _findings.Error(
            naming == TomlNaming.Keys ? DiagnosticCodes.Syntax : DiagnosticCodes.DuplicateName,
            $"{Quoted.Name(first.Key)} is written twice (first at line {first.Position.Line}, column {first.Position.Column}). Join the two, or leave one out.",
            position,
            naming == TomlNaming.Elements ? [first.Key] : null);
    }

    // of the line breaks within one pair of braces the first
    private void CheckBraces(InlineTableSyntax inline)
    {
        SyntaxNodeBase? before = inline.OpenBrace;
        bool isBroken = false;
        SyntaxToken? comma = null;
        foreach (InlineTableItemSyntax item in inline.Items)
        {
            comma = item.Comma;
            Pass(item.KeyValue);
            Pass(comma);
        }

        if (comma is not null)
        {
            _findings.Error(DiagnosticCodes.Syntax, $"TOML 1.0 has no comma before a closing brace. Remove it.", TomlValues.PositionOf(comma, _findings));
        }

        Pass(inline.CloseBrace);

        void Pass(SyntaxNodeBase? next)
        {
            if (before is not null && next is not null && !isBroken && before.Span.End.Line < next.Span.Start.Line)
            {
                isBroken = true;
                TextPosition end = before.Span.End;
                _findings.Error(
                    DiagnosticCodes.Syntax,
                    $"TOML 1.0 does not break the line within braces. Write the braces on one line, or open a table with a header such as {_format.HeaderExample}.",
                    new SourcePosition(_findings.File, end.Line + 1, end.Column + 2));
            }

            before = next ?? before;
        }
    }
}
