using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;

namespace ScNet.Derivations.Snapshots;

/// <summary>Where the values of a document stand in its text, from 1, in characters.</summary>
internal static class JsonPlaces
{
    /// <summary>The place at which a value begins.</summary>
    /// <param name="text">The text that was parsed.</param>
    /// <param name="root">The value of the whole text.</param>
    /// <param name="value">A value within it.</param>
    /// <param name="file">The name of the file; null for text without a file.</param>
    public static SourcePosition Of(string text, JsonElement root, JsonElement value, string? file)
    {
        ReadOnlySpan<byte> whole = JsonMarshal.GetRawUtf8Value(root);
        whole.Overlaps(JsonMarshal.GetRawUtf8Value(value), out int offset);
        int before = text.Length - text.AsSpan().TrimStart().Length;
        return After(string.Concat(text.AsSpan(0, before), Encoding.UTF8.GetString(whole[..offset])), file);
    }

    /// <summary>The place at which a parser stopped.</summary>
    /// <param name="text">The text that was parsed.</param>
    /// <param name="line">The line from 0, as the parser counts it.</param>
    /// <param name="bytes">The bytes of UTF-8 before the place in its line.</param>
    /// <param name="file">The name of the file; null for text without a file.</param>
    public static SourcePosition Of(string text, long line, long bytes, string? file)
    {
        int start = 0;
        for (; line > 0 && text.IndexOf('\n', start) is >= 0 and int end; line--)
        {
            start = end + 1;
        }

        int last = start;
        for (long left = bytes; left > 0 && last < text.Length && text[last] != '\n'; last++)
        {
            // the halves of a pair take four bytes together
            left -= text[last] < 0x80 ? 1 : text[last] < 0x800 || char.IsSurrogate(text[last]) ? 2 : 3;
        }

        return After(text.AsSpan(0, last), file);
    }

    /// <summary>The place behind a text.</summary>
    public static SourcePosition After(ReadOnlySpan<char> text, string? file) =>
        new(file, 1 + text.Count('\n'), text.Length - text.LastIndexOf('\n'));
}
