namespace ScNet.Netlists.Toml;

/// <summary>The tree of a document, and whether parts of it were left out because of syntax errors.</summary>
/// <param name="Root">The tables and keys.</param>
/// <param name="IsComplete">False where parts are left out: then nothing counts as missing.</param>
internal readonly record struct TomlDocument(TomlEntry Root, bool IsComplete)
{
    /// <summary>The document of a text; null where there is none, or an empty one, which was reported.</summary>
    public static TomlDocument? Read(string text, TomlFormat format, DiagnosticList findings)
    {
        // a byte order mark is no part of the text, and would shift the columns of the first line
        if (!TomlFile.IsAcceptable(text, format, findings)
            || TomlText.Parse(text.StartsWith('\uFEFF') ? text[1..] : text, format, findings) is not { } document)
        {
            return null;
        }

        bool isComplete = !findings.HasErrors;
        TomlEntry root = TomlTree.Of(document, format, findings);
        if (isComplete && root.Entries.Count == 0)
        {
            findings.Error(DiagnosticCodes.MissingKey, $"The document is empty. Give at least {format.Least}.", root.Position);
            return null;
        }

        return new TomlDocument(root, isComplete);
    }
}
