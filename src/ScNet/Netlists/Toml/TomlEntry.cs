using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>What stands under a key, and how it was written.</summary>
internal enum TomlForm
{
    /// <summary>A value that is no table.</summary>
    Value,

    /// <summary>A table only as the beginning of a longer header: "[a.b]" implies a.</summary>
    Implied,

    /// <summary>A table by a header of its own.</summary>
    Header,

    /// <summary>A table by a dotted key.</summary>
    Dotted,

    /// <summary>A table in braces: nothing can be added to it.</summary>
    Inline,

    /// <summary>An array of tables by headers of their own; its entries are the tables, without a key.</summary>
    Array,
}

/// <summary>A key with its value, or with the entries of its table in the order written, however it was spelled.</summary>
internal sealed class TomlEntry(string key, SourcePosition position, TomlForm form, ValueSyntax? value = null, TomlEntry? parent = null)
{
    private const int SmallCount = 8;

    private List<TomlEntry>? _entries;
    private Dictionary<string, TomlEntry>? _index;

    public string Key { get; } = key;

    public SourcePosition Position { get; } = position;

    public TomlForm Form { get; set; } = form;

    /// <summary>The value; null for a table.</summary>
    public ValueSyntax? Value { get; } = value;

    /// <summary>The table in which it lies; null for the root.</summary>
    public TomlEntry? Parent { get; } = parent;

    public bool IsTable => Form is not (TomlForm.Value or TomlForm.Array);

    public IReadOnlyList<TomlEntry> Entries => _entries ?? [];

    public TomlEntry? Find(string key) => _index is not null ? _index.GetValueOrDefault(key) : _entries?.Find(e => e.Key == key);

    /// <summary>Adds a table to an array of tables.</summary>
    public TomlEntry AddItem(SourcePosition position)
    {
        TomlEntry item = new(string.Empty, position, TomlForm.Header, parent: this);
        (_entries ??= []).Add(item);
        return item;
    }

    public TomlEntry Add(string key, SourcePosition position, TomlForm form, ValueSyntax? value = null)
    {
        TomlEntry entry = new(key, position, form, value, this);
        (_entries ??= []).Add(entry);
        if (_entries.Count == SmallCount)
        {
            _index = _entries.ToDictionary(e => e.Key, StringComparer.Ordinal);
        }
        else
        {
            _index?.Add(key, entry);
        }

        return entry;
    }
}
