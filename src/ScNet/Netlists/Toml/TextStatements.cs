namespace ScNet.Netlists.Toml;

/// <summary>Lines of a document that belong to one statement.</summary>
/// <param name="Start">The first line, from 0.</param>
/// <param name="End">The line after the last.</param>
/// <param name="IsHeader">Whether it opens a table.</param>
/// <param name="IsOpen">Whether it opens a bracket that the following statement shows to be forgotten.</param>
internal readonly record struct StatementRange(int Start, int End, bool IsHeader, bool IsOpen);

/// <summary>Finds, by the look of the lines alone, the statement in which a mistake lies, and blanks it out.</summary>
internal sealed class TextStatements
{
    private readonly char[] _text;
    private readonly List<int> _starts = [0];

    /// <param name="text">A document that ends with a line end.</param>
    public TextStatements(string text)
    {
        _text = text.ToCharArray();
        for (int i = text.IndexOf('\n', StringComparison.Ordinal) + 1; i > 0; i = text.IndexOf('\n', i) + 1)
        {
            _starts.Add(i);
        }
    }

    /// <summary>The document without the statements blanked out; every other one keeps its place.</summary>
    public string Text => new(_text);

    /// <summary>The place from 1 of the first character of a statement.</summary>
    public (int Line, int Column) StartOf(StatementRange range) => (range.Start + 1, Line(range.Start).IndexOfAnyExcept(' ', '\t') + 1);

    /// <summary>A place from 1, moved to the nearest one that lies in the text or right behind one of its lines.</summary>
    public (int Line, int Column) Inside(int line, int column)
    {
        int last = Math.Clamp(line, 1, Math.Max(1, _starts.Count - 1));
        int end = Line(last - 1).TrimEnd("\r\n").Length + 1;
        return (last, line > last ? end : Math.Clamp(column, 1, end));
    }

    /// <summary>The statement to which a mistake belongs.</summary>
    /// <param name="line">The line of the mistake, from 1.</param>
    public StatementRange Around(int line)
    {
        int at = Math.Clamp(line - 1, 0, _starts.Count - 1);
        int before = at - 1;
        while (before >= 0 && !LooksLikeStart(before))
        {
            before--;
        }

        // the mistake shows here, but a bracket above may have been left open
        if (before >= 0 && Depth(before, at) > 0)
        {
            bool isForgotten = LooksLikeStart(at) || Line(at).Trim().IsEmpty;
            return new StatementRange(before, isForgotten ? at : NextStart(at + 1), IsHeader(before), isForgotten);
        }

        bool goesOn = !IsHeader(at) && Depth(at, at + 1) > 0;
        return new StatementRange(at, goesOn ? NextStart(at + 1) : at + 1, IsHeader(at), false);
    }

    /// <summary>Replaces a statement by blanks.</summary>
    /// <returns>False where it was blank already.</returns>
    public bool Blank(StatementRange range)
    {
        bool changed = false;
        int end = range.End < _starts.Count ? _starts[range.End] : _text.Length;
        foreach (ref char c in _text.AsSpan(_starts[range.Start]..end))
        {
            changed |= !char.IsWhiteSpace(c);
            c = c == '\n' ? c : ' ';
        }

        return changed;
    }

    private int NextStart(int line)
    {
        while (line < _starts.Count && !LooksLikeStart(line))
        {
            line++;
        }

        return line;
    }

    // a header, or a key followed by an equals sign
    private bool LooksLikeStart(int line)
    {
        ReadOnlySpan<char> text = Line(line).Trim();
        if (text is ['[', var next, ..])
        {
            return !text.Contains(',') && (char.IsLetter(next) || next is '[' or '"' or ' ');
        }

        int equal = text.IndexOf('=');
        return equal > 0 && text[0] is not ('}' or ']') && text[..equal].IndexOfAny("{[,#") < 0;
    }

    private bool IsHeader(int line) => Line(line).TrimStart() is ['[', ..];

    // brackets opened and not closed in some lines, without regard to those in strings and comments
    private int Depth(int start, int end)
    {
        int depth = 0;
        for (int line = start; line < end; line++)
        {
            char quote = '\0';
            ReadOnlySpan<char> text = Line(line);
            for (int i = 0; i < text.Length && (quote != '\0' || text[i] != '#'); i++)
            {
                char c = text[i];
                if (quote == '\0')
                {
                    quote = c is '"' or '\'' ? c : '\0';
                    depth += c is '[' or '{' ? 1 : c is ']' or '}' ? -1 : 0;
                }
                else if (quote == '"' && c == '\\')
                {
                    i++;
                }
                else if (c == quote)
                {
                    quote = '\0';
                }
            }
        }

        return depth;
    }

    private ReadOnlySpan<char> Line(int line) =>
        _text.AsSpan(_starts[line]..(line + 1 < _starts.Count ? _starts[line + 1] : _text.Length));
}
