using ScNet.Netlists.Documents;
using Tomlyn.Syntax;

namespace ScNet.Netlists;

/// <summary>Reads netlist documents: TOML 1.0 with the keys that <see cref="NetlistSchema"/> describes.</summary>
/// <remarks>
/// No document makes it throw. Time is linear in the length of the document. A document may have
/// <see cref="MaximumLength"/> bytes, a million signs of structure (about 100 000 elements) and values
/// nested 64 deep; at most 1000 errors are listed.
/// </remarks>
public static class NetlistReader
{
    /// <summary>The most bytes of a file, or characters of a text, that are read: 16 MiB.</summary>
    public const int MaximumLength = NetlistFile.MaximumLength;

    /// <summary>Reads the text of a document.</summary>
    /// <param name="text">The document.</param>
    /// <param name="file">The name of the file for the positions of diagnostics; null for text without a file.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static NetlistReading Read(string text, string? file = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        DocumentErrors errors = new(file);
        if (!NetlistFile.IsAcceptable(text, errors))
        {
            return Failed(errors, []);
        }

        // a byte order mark is no part of the text, and would shift the columns of the first line
        return ReadText(text.StartsWith('\uFEFF') ? text[1..] : text, errors);
    }

    /// <summary>Reads a file in UTF-8. A file that cannot be read gives one error, not an exception.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static NetlistReading ReadFile(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        DocumentErrors errors = new(path);
        string? text = NetlistFile.Read(path, errors);
        return text is null ? Failed(errors, []) : Read(text, path);
    }

    private static NetlistReading ReadText(string text, DocumentErrors errors)
    {
        DocumentSyntax? document = TomlText.Parse(text, errors);
        if (document is null)
        {
            return Failed(errors, []);
        }

        bool complete = errors.Count == 0;
        if (complete)
        {
            TomlEdition.Check(text, errors);
        }

        DocumentTable root = DocumentTree.Of(document, errors);
        if (complete && root.Entries.Count == 0)
        {
            errors.Add(DiagnosticCodes.MissingKey, $"The document is empty. Give at least name, input, output and [switches].", new SourcePosition(errors.File, 1, 1));
            return Failed(errors, []);
        }

        ConverterAssembly assembly = ConverterAssembly.Of(DeclarationReader.Read(root, errors, complete));
        return errors.Count == 0 && assembly.Converter is { } converter
            ? new NetlistReading(converter, assembly.Diagnostics, NameOf(errors))
            : Failed(errors, assembly.Diagnostics);
    }

    private static NetlistReading Failed(DocumentErrors errors, IReadOnlyList<Diagnostic> others) =>
        new(null, errors.With(others), NameOf(errors));

    private static string NameOf(DocumentErrors errors) => errors.File is { } file ? $"'{file}'" : "The netlist";
}
