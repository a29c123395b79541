using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace ScNet.Netlists.Documents;

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
    private const long Effort = 1 << 24;

    private const int MaximumErrors = 100;

    // the parser's own default
    private const int MaximumDepth = 64;

    /// <summary>Parses a text.</summary>
    /// <param name="text">The document.</param>
    /// <param name="errors">Takes one error per statement that is not TOML.</param>
    /// <returns>The syntax tree without the statements in error; null where the rest would be misleading.</returns>
    public static DocumentSyntax? Parse(string text, DocumentErrors errors)
    {
        // the parser fails on a backslash at the very end of a text
        bool isPadded = !text.EndsWith('\n');
        if (isPadded)
        {
            text += "\n";
        }

        if ((text.Length <= LargeLength || FirstError(text) is null) && ParseTree(text) is { HasErrors: false } document)
        {
            return document;
        }

        TextStatements statements = new(text);
        bool misleading = false;
        long spent = 0;
        string rest = text;
        for (int i = 0; i < MaximumErrors && spent <= Effort; i++)
        {
            TomlError? error = FirstError(rest);
            if (error is null)
            {
                TomlEdition.Check(rest, errors);
                return misleading ? null : ParseTree(rest) is { HasErrors: false } tree && errors.Count > 0 ? tree : ReportAny(rest, errors);
            }

            TomlError found = isPadded ? error.Value.Before(statements.End) : error.Value;
            StatementRange range = statements.Around(found.Line);
            Report(range, found, errors);
            if (!statements.Blank(range))
            {
                break;
            }

            misleading |= range.IsHeader;
            spent += rest.Length;
            rest = statements.Text;
        }

        return null;
    }

    private static void Report(StatementRange range, TomlError error, DocumentErrors errors)
    {
        if (error.IsDepth)
        {
            errors.Add(DiagnosticCodes.Syntax, $"Values are nested more than {MaximumDepth} deep, but a netlist document needs no more than three levels. Remove the brackets.", new SourcePosition(errors.File, error.Line, error.Column));
        }
        else if (range.IsOpen)
        {
            errors.Add(DiagnosticCodes.Syntax, $"A bracket that opens in this statement is not closed before line {range.End + 1}. Close it.", new SourcePosition(errors.File, range.Start + 1, range.Column + 1));
        }
        else
        {
            errors.Add(DiagnosticCodes.Syntax, $"This is not valid TOML: {error.Message} Correct this statement.", new SourcePosition(errors.File, error.Line, error.Column));
        }
    }

    // the two parsers disagree: the tree's own first error is the message
    private static DocumentSyntax? ReportAny(string text, DocumentErrors errors)
    {
        if (errors.Count == 0)
        {
            DiagnosticMessage? first = ParseTree(text)?.Diagnostics.MinBy(d => d.Span.Offset);
            int line = first?.Span.Start.Line ?? 0;
            int column = first?.Span.Start.Column ?? 0;
            errors.Add(DiagnosticCodes.Syntax, $"This is not valid TOML: {Clean(first?.Message)} Correct this statement.", new SourcePosition(errors.File, line + 1, column + 1));
        }

        return null;
    }

    private static DocumentSyntax? ParseTree(string text)
    {
        try
        {
            return SyntaxParser.Parse(text, null!, validate: false);
        }
        catch (Exception exception) when (exception is TomlException || IsFault(exception))
        {
            return null;
        }
    }

    private static TomlError? FirstError(string text)
    {
        try
        {
            TomlParser parser = TomlParser.Create(text);
            while (parser.MoveNext())
            {
            }

            return null;
        }
        catch (TomlException exception)
        {
            DiagnosticMessage? first = exception.Diagnostics.Count > 0 ? exception.Diagnostics[0] : null;
            bool isDepth = exception.Message.Contains("maximum depth", StringComparison.Ordinal);
            return new TomlError(
                Math.Max(1, first is null ? exception.Line ?? 1 : first.Span.Start.Line + 1),
                Math.Max(1, first is null ? exception.Column ?? 1 : first.Span.Start.Column + 1),
                Clean(first?.Message ?? exception.Message),
                isDepth);
        }
        catch (Exception exception) when (IsFault(exception))
        {
            return new TomlError(1, 1, Clean(null), false);
        }
    }

    // a fault of the parser on a malformed text is a mistake of the text to the user
    private static bool IsFault(Exception exception) =>
        exception is ArgumentException or InvalidOperationException or FormatException or OverflowException or IndexOutOfRangeException;

    private static string Clean(string? message)
    {
        string text = (message ?? "the text cannot be parsed").Trim().TrimEnd('.').Replace('`', '\'').Replace("␤", "end of line", StringComparison.Ordinal);
        return text.Length > 200 ? string.Concat(text.AsSpan(0, 200), "….") : text + ".";
    }

    private readonly record struct TomlError(int Line, int Column, string Message, bool IsDepth)
    {
        /// <summary>The same error, at the end of the text where it lies behind it.</summary>
        public TomlError Before((int Line, int Column) end) => Line > end.Line ? this with { Line = end.Line, Column = end.Column } : this;
    }
}
