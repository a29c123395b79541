using System.Buffers;
using System.Text.Unicode;

namespace ScNet.Netlists.Documents;

/// <summary>Reads the text of a file, or says why it cannot.</summary>
internal static class NetlistFile
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

    /// <summary>Whether a text is small enough to be parsed; reported where it is not.</summary>
    public static bool IsAcceptable(string text, DocumentErrors errors)
    {
        SourcePosition whole = new(errors.File, 0, 0);
        if (text.Length > MaximumLength)
        {
            ReportLarge(text.Length, whole, errors, "characters");
            return false;
        }

        long signs = text.Length <= MaximumSigns ? 0 : CountSigns(text);
        if (signs > MaximumSigns)
        {
            ReportLarge(signs, whole, errors, "signs of structure (= , . [ { \\ and line ends)", MaximumSigns);
            return false;
        }

        int lone = IndexOfLoneSurrogate(text);
        if (lone >= 0)
        {
            errors.Add(DiagnosticCodes.Syntax, $"Half a character (U+{(int)text[lone]:X4}) is no text. Remove it.", PositionAfter(text.AsSpan(0, lone), errors.File));
            return false;
        }

        return true;
    }

    /// <summary>The text, or null where the errors say why there is none.</summary>
    public static string? Read(string path, DocumentErrors errors)
    {
        SourcePosition whole = new(path, 0, 0);
        try
        {
            if (Directory.Exists(path))
            {
                errors.Add(DiagnosticCodes.FileUnreadable, $"{Quoted.Name(path)} is a directory. Name a netlist file in it.", whole);
                return null;
            }

            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            if (stream.CanSeek && stream.Length > MaximumLength)
            {
                ReportLarge(stream.Length, whole, errors);
                return null;
            }

            return ReadBytes(stream) is { } bytes ? Decode(bytes, path, errors) : ReportLarge(null, whole, errors);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            errors.Add(DiagnosticCodes.FileUnreadable, $"There is no file {Quoted.Name(path)}. Correct the path.", whole);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            errors.Add(DiagnosticCodes.FileUnreadable, $"{Quoted.Name(path)} cannot be read: {exception.Message}", whole);
        }

        return null;
    }

    /// <summary>Reports a text or file over the limit.</summary>
    /// <param name="length">Its size, or null where reading stopped at the limit.</param>
    /// <param name="whole">The file as a whole.</param>
    /// <param name="errors">Takes the error.</param>
    /// <param name="unit">What the size counts.</param>
    /// <param name="allowed">The limit.</param>
    private static string? ReportLarge(
        long? length, SourcePosition whole, DocumentErrors errors, string unit = "bytes", int allowed = MaximumLength)
    {
        string actual = length is { } known ? FormattableString.Invariant($"{known}") : FormattableString.Invariant($"more than {allowed}");
        errors.Add(DiagnosticCodes.FileTooLarge, $"Expected at most {allowed} {unit}, but the document has {actual}. Split the converter.", whole);
        return null;
    }

    private static long CountSigns(ReadOnlySpan<char> text)
    {
        long count = 0;
        int next;
        while ((next = text.IndexOfAny(s_signs)) >= 0)
        {
            count++;
            text = text[(next + 1)..];
        }

        return count;
    }

    // the length of a pipe or device is only known by reading it
    private static byte[]? ReadBytes(FileStream stream)
    {
        using MemoryStream bytes = new();
        byte[] buffer = ArrayPool<byte>.Shared.Rent(1 << 16);
        try
        {
            int count;
            while ((count = stream.Read(buffer, 0, buffer.Length)) > 0)
            {
                if (bytes.Length + count > MaximumLength)
                {
                    return null;
                }

                bytes.Write(buffer, 0, count);
            }

            return bytes.ToArray();
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    private static string? Decode(byte[] bytes, string path, DocumentErrors errors)
    {
        var characters = new char[bytes.Length];
        OperationStatus status = Utf8.ToUtf16(bytes, characters, out int read, out int written, replaceInvalidSequences: false);
        if (status == OperationStatus.Done)
        {
            return new string(characters, 0, written);
        }

        errors.Add(DiagnosticCodes.FileUnreadable, $"The file is not UTF-8 text: the byte 0x{bytes[read]:X2} does not belong here. Save the file as UTF-8.", PositionAfter(characters.AsSpan(0, written), path));
        return null;
    }

    private static int IndexOfLoneSurrogate(string text)
    {
        int i = 0;
        while (i < text.Length)
        {
            int next = text.AsSpan(i).IndexOfAnyInRange('\uD800', '\uDFFF');
            if (next < 0)
            {
                break;
            }

            i += next;
            if (i + 1 >= text.Length || !char.IsSurrogatePair(text[i], text[i + 1]))
            {
                return i;
            }

            i += 2;
        }

        return -1;
    }

    private static SourcePosition PositionAfter(ReadOnlySpan<char> text, string? file)
    {
        int column = 1;
        foreach (char c in text[(text.LastIndexOf('\n') + 1)..])
        {
            column += char.IsLowSurrogate(c) ? 0 : 1;
        }

        return new SourcePosition(file, 1 + text.Count('\n'), column);
    }
}
