using System.Buffers;
using System.Text.Unicode;

namespace ScNet.Netlists.Toml;

/// <summary>Reads the text of a file, or says why it cannot.</summary>
internal static class TomlFile
{
    /// <summary>The most bytes a file (or characters a text) may have: 16 MiB.</summary>
    public const int MaximumLength = 16 * 1024 * 1024;

    /// <summary>
    /// The most signs that structure a document ('=', ',', '.', '[', '{', '\\', line ends and other control
    /// characters): each can cost the parser a kilobyte. An element takes about ten of them.
    /// </summary>
    public const int MaximumSigns = 1_000_000;

    private static readonly SearchValues<char> s_signs = SearchValues.Create(
        ['=', ',', '.', '[', '{', '\\', '\x7F', .. Enumerable.Range(0, ' ').Select(c => (char)c).Where(c => c != '\t')]);

    /// <summary>Whether a text is small enough to be parsed, and made of whole characters; reported where it is not.</summary>
    public static bool IsAcceptable(string text, TomlFormat format, DiagnosticList findings)
    {
        if (text.Length > MaximumLength)
        {
            return ReportLarge("characters", MaximumLength, text.Length, format, findings);
        }

        long signs = text.Length <= MaximumSigns ? 0 : CountSigns(text);
        if (signs > MaximumSigns)
        {
            return ReportLarge("signs of structure (= , . [ { \\ and line ends)", MaximumSigns, signs, format, findings);
        }

        if (HalfCharacter.IndexIn(text) is >= 0 and int half)
        {
            findings.Error(DiagnosticCodes.Syntax, $"{HalfCharacter.Message(text[half])}", PositionAfter(text.AsSpan(0, half), findings.File));
            return false;
        }

        return true;
    }

    /// <summary>The text, or null where the findings say why there is none.</summary>
    public static string? Read(string path, TomlFormat format, DiagnosticList findings)
    {
        SourcePosition whole = new(path, 0, 0);
        try
        {
            if (Directory.Exists(path))
            {
                findings.Error(DiagnosticCodes.FileUnreadable, $"{Quoted.Name(path)} is a directory. Name a {format.Kind} file in it.", whole);
                return null;
            }

            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            return ReadText(stream, format, findings);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            findings.Error(DiagnosticCodes.FileUnreadable, $"There is no file {Quoted.Name(path)}. Correct the path.", whole);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            findings.Error(DiagnosticCodes.FileUnreadable, $"{Quoted.Name(path)} cannot be read: {exception.Message}", whole);
        }

        return null;
    }

    /// <summary>The text of a stream up to its end, or null where the findings say why there is none.</summary>
    public static string? Read(Stream stream, TomlFormat format, DiagnosticList findings)
    {
        try
        {
            return ReadText(stream, format, findings);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            findings.Error(DiagnosticCodes.FileUnreadable, $"{Quoted.Name(findings.File ?? "the stream")} cannot be read: {exception.Message}", new SourcePosition(findings.File, 0, 0));
            return null;
        }
    }

    private static string? ReadText(Stream stream, TomlFormat format, DiagnosticList findings) =>
        ReadBytes(stream, format, findings) is { } bytes ? Decode(bytes, findings) : null;

    // the length of a pipe or device, which tells none, is only known by reading it
    private static byte[]? ReadBytes(Stream stream, TomlFormat format, DiagnosticList findings)
    {
        long told = stream.CanSeek ? stream.Length : 0;
        if (told > MaximumLength)
        {
            ReportLarge("bytes", MaximumLength, told, format, findings);
            return null;
        }

        byte[] bytes = new byte[told > 0 ? told : MaximumLength + 1];
        int read = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        if (read > MaximumLength)
        {
            ReportLarge("bytes", MaximumLength, null, format, findings);
            return null;
        }

        return bytes[..read];
    }

    private static string? Decode(byte[] bytes, DiagnosticList findings)
    {
        var characters = new char[bytes.Length];
        OperationStatus status = Utf8.ToUtf16(bytes, characters, out int read, out int written, replaceInvalidSequences: false);
        if (status == OperationStatus.Done)
        {
            return new string(characters, 0, written);
        }

        findings.Error(DiagnosticCodes.FileUnreadable, $"The file is not UTF-8 text: the byte 0x{bytes[read]:X2} does not belong here. Save the file as UTF-8.", PositionAfter(characters.AsSpan(0, written), findings.File));
        return null;
    }

    private static bool ReportLarge(string unit, int allowed, long? length, TomlFormat format, DiagnosticList findings)
    {
        string actual = length is { } known ? FormattableString.Invariant($"{known}") : FormattableString.Invariant($"more than {allowed}");
        findings.Error(DiagnosticCodes.FileTooLarge, $"Expected at most {allowed} {unit}, but the document has {actual}. {format.IfTooLarge}", new SourcePosition(findings.File, 0, 0));
        return false;
    }

    private static long CountSigns(ReadOnlySpan<char> text)
    {
        long count = 0;
        foreach (char c in text)
        {
            count += s_signs.Contains(c) ? 1 : 0;
        }

        return count;
    }

    private static SourcePosition PositionAfter(ReadOnlySpan<char> text, string? file)
    {
        ReadOnlySpan<char> line = text[(text.LastIndexOf('\n') + 1)..];
        int column = 1;
        foreach (char c in line)
        {
            column += char.IsLowSurrogate(c) ? 0 : 1;
        }

        return new SourcePosition(file, 1 + text.Count('\n'), column);
    }
}
