namespace ScNet.Netlists.Documents;

/// <summary>Lines of a document that belong to one statement.</summary>
/// <param name="Start">The first line, from 0.</param>
/// <param name="End">The line after the last.</param>
/// <param name="Column">The column of the first character, from 0.</param>
/// <param name="IsHeader">Whether it opens a table.</param>
/// <param name="IsOpen">Whether it opens a bracket that the following statement shows to be forgotten.</param>
internal readonly record struct StatementRange(int Start, int End, int Column, bool IsHeader, bool IsOpen);

/// <summary>Finds, by the look of the lines alone, the statement in which a mistake lies, and blanks it out.</summary>
internal sealed class TextStatements
{
    private readonly char[] _text;
    private readonly List<int> _starts = [0];

    public TextStatements(string text)
    {
        _text = text.ToCharArray();
        for (int i = 0; i < _text.Length; i++)
        {
            if (_text[i] == '\n')
            {
                _starts.Add(i + 1);
            }
        }
    }

    /// <summary>The place, from 1, of the line end that closes the text.</summary>
    public (int Line, int Column) End
    {
        get
        {
            int last = Math.Max(0, _starts.Count - 2);
            return (last + 1, Math.Max(1, Line(last).Length));
        }
    }

    /// <summary>The document without the statements blanked out; every other one keeps its place.</summary>
    public string Text => new(_text);

    /// <summary>The statement to which a mistake belongs.</summary>
    /// <param name="line">The line of the mistake, from 1.</param>
    public StatementRange Around(int line)
    {
        int at = Math.Clamp(line - 1, 0, _starts.Count - 1);
        int before = PreviousStart(at);
        if (before < at && Depth(before, at) > 0)
        {
            // the mistake shows here, but a bracket above was left open
            bool next = LooksLikeStart(at) || IsBlank(at);
            return Range(before, next ? at : NextStart(at + 1), next);
        }

        int start = LooksLikeStart(at) || before == at ? at : Depth(before, at) > 0 ? before : at;
        return Range(start, Depth(start, at + 1) > 0 && !IsHeader(start) ? NextStart(at + 1) : at + 1, false);
    }

    /// <summary>Replaces a statement by blanks.</summary>
    /// <returns>False where it was blank already.</returns>
    public bool Blank(StatementRange range)
    {
        bool changed = false;
        int end = range.End < _starts.Count ? _starts[range.End] : _text.Length;
        for (int i = _starts[range.Start]; i < end; i++)
        {
            changed |= !char.IsWhiteSpace(_text[i]);
            if (_text[i] != '\n')
            {
                _text[i] = ' ';
            }
        }

        return changed;
    }

    private StatementRange Range(int start, int end, bool isOpen)
    {
        ReadOnlySpan<char> line = Line(start);
        return new StatementRange(start, end, line.Length - line.TrimStart().Length, IsHeader(start), isOpen);
    }

    // the last line above (or the line itself, where there is none) that begins a statement
    private int PreviousStart(int line)
    {
        for (int i = line - 1; i >= 0; i--)
        {
            if (LooksLikeStart(i))
            {
                return i;
            }
        }

        return line;
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
        if (text.IsEmpty || text[0] is '#' or '{' or '}' or ']' or ',')
        {
            return false;
        }

        if (text[0] == '[')
        {
            return !text.Contains(',') && text.Length > 1 && (char.IsLetter(text[1]) || text[1] is '[' or '"' or ' ');
        }

        int equal = text.IndexOf('=');
        return equal > 0 && text[..equal].IndexOfAny("{[,#") < 0;
    }

    private bool IsHeader(int line) => Line(line).TrimStart() is ['[', ..];

    private bool IsBlank(int line) => Line(line).Trim().IsEmpty;

    // brackets opened and not closed in some lines, without regard to those in strings and comments
    private int Depth(int start, int end)
    {
        int depth = 0;
        for (int line = start; line < end; line++)
        {
            char quote = '\0';
            ReadOnlySpan<char> text = Line(line);
            for (int i = 0; i < text.Length; i++)
            {
                char c = text[i];
                if (quote != '\0')
                {
                    i += quote == '"' && c == '\\' ? 1 : 0;
                    quote = c == quote ? '\0' : quote;
                    continue;
                }

                if (c == '#')
                {
                    break;
                }

                quote = c is '"' or '\'' ? c : '\0';
                depth += c is '[' or '{' ? 1 : c is ']' or '}' ? -1 : 0;
            }
        }

        return depth;
    }

    private ReadOnlySpan<char> Line(int line) =>
        _text.AsSpan(_starts[line]..(line + 1 < _starts.Count ? _starts[line + 1] : _text.Length));
}
