using Tomlyn.Syntax;

namespace ScNet.Netlists.Documents;

/// <summary>How a table of the document was written.</summary>
internal enum TableForm
{
    /// <summary>Only as the beginning of a longer header: "[a.b]" implies a.</summary>
    Implied,

    /// <summary>By a header of its own.</summary>
    Header,

    /// <summary>By a dotted key.</summary>
    Dotted,

    /// <summary>In braces: nothing can be added to it.</summary>
    Inline,

    /// <summary>As an array of tables, of which the format has none.</summary>
    Array,
}

/// <summary>A table of the document with its keys in the order written, however it was spelled.</summary>
internal sealed class DocumentTable(TableForm form, string section, int depth)
{
    private const int SmallCount = 8;

    private readonly List<DocumentEntry> _entries = [];
    private Dictionary<string, DocumentEntry>? _index;

    public TableForm Form { get; set; } = form;

    /// <summary>The key of the root table under which it lies; empty for the root.</summary>
    public string Section { get; } = section;

    /// <summary>How many keys lead to it: 0 for the root.</summary>
    public int Depth { get; } = depth;

    public List<DocumentEntry> Entries => _entries;

    public DocumentEntry? Find(string key)
    {
        if (_index is not null)
        {
            return _index.GetValueOrDefault(key);
        }

        foreach (DocumentEntry entry in _entries)
        {
            if (entry.Key == key)
            {
                return entry;
            }
        }

        return null;
    }

    public void Add(DocumentEntry entry)
    {
        _entries.Add(entry);
        if (_index is null && _entries.Count > SmallCount)
        {
            _index = new Dictionary<string, DocumentEntry>(StringComparer.Ordinal);
            foreach (DocumentEntry known in _entries)
            {
                _index.Add(known.Key, known);
            }
        }
        else
        {
            _index?.Add(entry.Key, entry);
        }
    }

    /// <summary>An empty table under a key of this one.</summary>
    public DocumentTable Child(string key, TableForm form) => new(form, Depth == 0 ? key : Section, Depth + 1);
}

/// <summary>A key and what stands under it: a table, or a value of another type.</summary>
internal sealed class DocumentEntry(string key, SourcePosition position, DocumentTable? table, ValueSyntax? value)
{
    public string Key { get; } = key;

    public SourcePosition Position { get; } = position;

    public DocumentTable? Table { get; } = table;

    public ValueSyntax? Value { get; } = value;
}
