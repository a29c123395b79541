using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>The tree of a document, and whether parts of it were left out because of syntax errors.</summary>
/// <param name="Root">The tables and keys.</param>
/// <param name="IsComplete">False where parts are left out: then nothing counts as missing.</param>
internal readonly record struct TomlDocument(TomlEntry Root, bool IsComplete)
{
    /// <summary>The key of the version that a document is written for.</summary>
    public const string VersionKey = "format";

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

        return IsOfVersion(root, format, findings) ? new TomlDocument(root, isComplete) : null;
    }

    // of a document of another version nothing else is said: its keys have a meaning that is not known here
    private static bool IsOfVersion(TomlEntry root, TomlFormat format, DiagnosticList findings)
    {
        if (root.Find(VersionKey) is not { } version)
        {
            return true;
        }

        if (version.Value is not IntegerValueSyntax whole)
        {
            new TomlValues(findings).Wrong("a whole number", version, version.Value, $"'{VersionKey}'");
            return true;
        }

        if (whole.Value != format.Version)
        {
            findings.Error(
                DiagnosticCodes.ValueOutOfRange,
                $"Expected version {format.Version} of the format, but got {whole.Value}. Read it with the version of ScNet that it is written for.",
                TomlValues.PositionOf(whole, findings));
        }

        return whole.Value == format.Version;
    }
}
