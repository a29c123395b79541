namespace ScNet.Netlists.Documents;

/// <summary>
/// Finds what TOML 1.0 does not have although the parser takes it: line ends, comments and a closing comma
/// within braces, and the escapes \e and \x. Other programs that read netlist documents would stumble
/// over these.
/// </summary>
/// <remarks>Expects a text that the parser takes. Cost: one pass over it.</remarks>
internal ref struct TomlEdition
{
    private readonly ReadOnlySpan<char> _text;
    private readonly DocumentErrors _errors;
    private readonly Stack<char> _open = new();
    private int _at;
    private int _line = 1;
    private int _lineStart;
    private int _comma = -1;
    private bool _isLineReported;

    private TomlEdition(ReadOnlySpan<char> text, DocumentErrors errors)
    {
        _text = text;
        _errors = errors;
    }

    /// <summary>Reports each such place; of the line ends within one pair of braces the first.</summary>
    public static void Check(ReadOnlySpan<char> text, DocumentErrors errors) => new TomlEdition(text, errors).Run();

    private readonly bool IsInBraces => _open.TryPeek(out char bracket) && bracket == '{';

    private void Run()
    {
        while (_at < _text.Length)
        {
            char c = _text[_at];
            switch (c)
            {
                case '"' or '\'':
                    SkipString(c);
                    _comma = -1;
                    continue;
                case '#':
                    SkipComment();
                    continue;
                case '\n':
                    EndLine();
                    continue;
                case ',':
                    _comma = _at;
                    break;
                case '[' or '{':
                    _open.Push(c);
                    _isLineReported = false;
                    _comma = -1;
                    break;
                case ']' or '}':
                    Close(c);
                    _comma = -1;
                    break;
                case ' ' or '\t' or '\r':
                    break;
                default:
                    _comma = -1;
                    break;
            }

            _at++;
        }
    }

    private void Close(char bracket)
    {
        if (bracket == '}' && _comma >= 0)
        {
            Report(_comma, $"TOML 1.0 has no comma before a closing brace. Remove it.");
        }

        _ = _open.TryPop(out _);
    }

    private void EndLine()
    {
        if (IsInBraces && !_isLineReported)
        {
            Report(_at, $"TOML 1.0 does not break the line within braces. Write the braces on one line, or open a table with a header such as [switches.s1].");
            _isLineReported = true;
        }

        SkipLineEnd();
    }

    private void SkipLineEnd()
    {
        _at++;
        _line++;
        _lineStart = _at;
    }

    private void SkipComment()
    {
        while (_at < _text.Length && _text[_at] != '\n')
        {
            _at++;
        }
    }

    private void SkipString(char quote)
    {
        bool isLong = _text[_at..] is [var a, var b, var c, ..] && a == quote && b == quote && c == quote;
        _at += isLong ? 3 : 1;
        while (_at < _text.Length && !IsEnd(quote, isLong))
        {
            if (_text[_at] == '\n')
            {
                SkipLineEnd();
                continue;
            }

            if (quote == '"' && _text[_at] == '\\')
            {
                char escape = _at + 1 < _text.Length ? _text[_at + 1] : '\0';
                if (escape is 'e' or 'x')
                {
                    Report(_at, $"TOML 1.0 has no escape \\{escape}. Write \\u and four hexadecimal digits.");
                }

                // a backslash before a line end joins the lines; the line end is counted in the next turn
                _at += escape == '\n' ? 1 : 2;
                continue;
            }

            _at++;
        }

        _at = Math.Min(_text.Length, _at + (isLong ? 3 : 1));
        while (isLong && _at < _text.Length && _text[_at] == quote)
        {
            // up to two quotation marks may stand right before the closing three
            _at++;
        }
    }

    private readonly bool IsEnd(char quote, bool isLong) => !isLong
        ? _text[_at] == quote
        : _text[_at..] is [var a, var b, var c, ..] && a == quote && b == quote && c == quote;

    private readonly void Report(int place, FormattableString message) =>
        _errors.Add(DiagnosticCodes.Syntax, message, new SourcePosition(_errors.File, _line, place - _lineStart + 1));
}
