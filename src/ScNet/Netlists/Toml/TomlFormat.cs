namespace ScNet.Netlists.Toml;

/// <summary>What one kind of document has of its own: the words of messages, and what is meant by a wrong key.</summary>
internal sealed class TomlFormat
{
    /// <summary>What a document of the kind is called, such as "netlist".</summary>
    public required string Kind { get; init; }

    /// <summary>The version that is read; a document that names none is of it.</summary>
    public required int Version { get; init; }

    /// <summary>How deep its values are nested at most, in words.</summary>
    public required string Levels { get; init; }

    /// <summary>What to do with a document that is too large.</summary>
    public required string IfTooLarge { get; init; }

    /// <summary>An example of a table whose braces are broken over lines.</summary>
    public required string HeaderExample { get; init; }

    /// <summary>What a document must have at least.</summary>
    public required string Least { get; init; }

    /// <summary>The known key that an unknown one most likely stands for, or null.</summary>
    public required Func<string, string[], string?> Nearest { get; init; }

    /// <summary>What the keys of a table are: keys of the format, names, or names of elements.</summary>
    public required Func<TomlEntry, TomlNaming> NamingOf { get; init; }
}

/// <summary>What the keys of a table are.</summary>
internal enum TomlNaming
{
    /// <summary>Keys that the format has.</summary>
    Keys,

    /// <summary>Names that the author chose.</summary>
    Names,

    /// <summary>Names that the author chose for elements.</summary>
    Elements,
}
