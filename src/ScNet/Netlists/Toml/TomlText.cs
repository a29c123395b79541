using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>
/// Parses the text of a document. A mistake in one statement makes a parser stumble over the following
/// ones; so each statement with a mistake is reported once, blanked out, and the rest parsed again.
/// </summary>
internal static class TomlText
{
    // the syntax parser goes on after an error and collects them without a limit; where that could be
    // millions, the streaming parser, which stops at the first, looks first
    private const int LargeLength = 1 << 20;

    // the work spent on finding further errors, in characters parsed
    private const long Effort = 1 << 22;

    private const int MaximumErrors = 100;

    // the parser's own default
    private const int MaximumDepth = 64;

    /// <summary>Parses a text.</summary>
    /// <param name="text">The document.</param>
    /// <param name="format">What kind of document it is.</param>
    /// <param name="findings">Takes one error per statement that is not TOML.</param>
    /// <returns>The syntax tree without the statements in error; null where the rest would be misleading.</returns>
    public static DocumentSyntax? Parse(string text, TomlFormat format, DiagnosticList findings)
    {
        // the parser fails on a backslash at the very end of a text
        string rest = text.EndsWith('\n') ? text : text + "\n";
        if (rest.Length <= LargeLength && FirstError(rest, out DocumentSyntax? sound, isQuick: true) is null)
        {
            return sound;
        }

        TextStatements statements = new(rest);
        bool isMisleading = false;
        long spent = 0;
        for (int i = 0; i < MaximumErrors && spent <= Effort; i++)
        {
            if (FirstError(rest, out DocumentSyntax? tree) is not { } error)
            {
                return isMisleading ? null : tree;
            }

            StatementRange range = statements.Around(error.Line);
            Report(range, error, statements, format, findings);
            isMisleading |= range.IsHeader;
            if (!statements.Blank(range))
            {
                break;
            }

            spent += rest.Length;
            rest = statements.Text;
        }

        return null;
    }

    private static void Report(StatementRange range, TomlError error, TextStatements statements, TomlFormat format, DiagnosticList findings)
    {
        (int line, int column) = range.IsOpen && !error.IsDepth ? statements.StartOf(range) : statements.Inside(error.Line, error.Column);
        FormattableString message = error.IsDepth
            ? (FormattableString)$"Values are nested more than {MaximumDepth} deep, but a {format.Kind} document needs no more than {format.Levels} levels. Remove the brackets."
            : range.IsOpen ? (FormattableString)$"A bracket that opens in this statement is not closed before line {range.End + 1}. Close it."
            : $"This is not valid TOML: {error.Message} Correct this statement.";
        findings.Error(DiagnosticCodes.Syntax, message, new SourcePosition(findings.File, line, column));
    }

    // quick: the tree alone, whose first error is not always the telling one
    private static TomlError? FirstError(string text, out DocumentSyntax? tree, bool isQuick = false)
    {
        tree = null;
        try
        {
            TomlParser parser = TomlParser.Create(text);
            while (!isQuick && parser.MoveNext())
            {
            }

            tree = SyntaxParser.Parse(text, null!, validate: false);
            return tree.HasErrors ? TomlError.Of(tree.Diagnostics.MinBy(d => d.Span.Offset)) : null;
        }
        catch (TomlException exception)
        {
            return exception.Diagnostics.Count > 0 && !TomlError.TellsDepth(exception.Message)
                ? TomlError.Of(exception.Diagnostics[0])
                : new TomlError(exception.Line ?? 1, exception.Column ?? 1, exception.Message);
        }
        catch (Exception exception) when (exception is ArgumentException or InvalidOperationException or FormatException or OverflowException or IndexOutOfRangeException)
        {
            // a fault of the parser on a malformed text is a mistake of the text to the user
            return new TomlError(1, 1, "the text cannot be parsed");
        }
    }

    /// <summary>What a parser found, with line and column from 1.</summary>
    private readonly record struct TomlError(int Line, int Column, string Told)
    {
        private const int MaximumLength = 200;

        public bool IsDepth => TellsDepth(Told);

        /// <summary>One sentence in words that a reader of the document knows.</summary>
        public string Message
        {
            get
            {
                string text = OnOneLine(Told.Trim().TrimEnd('.').Replace('`', '\'').Replace("␤", "end of line", StringComparison.Ordinal));
                return text.Length > MaximumLength ? string.Concat(text.AsSpan(0, MaximumLength), "….") : text + ".";
            }
        }

        // the parser tells a character that it did not expect, whichever it is
        private static string OnOneLine(string text) =>
            string.Concat(text.Replace("\n", "end of line", StringComparison.Ordinal).Select(c => char.IsControl(c) ? '\uFFFD' : c));

        public static TomlError Of(DiagnosticMessage? message) => message is null
            ? new TomlError(1, 1, "the text cannot be parsed")
            : new TomlError(message.Span.Start.Line + 1, message.Span.Start.Column + 1, message.Message);

        public static bool TellsDepth(string message) => message.Contains("maximum depth", StringComparison.Ordinal);
    }
}
