using System.Buffers;
using System.Text;
using System.Text.Unicode;

namespace ScNet.Fuzzing;

/// <summary>Bytes as the text that a reader is given.</summary>
internal static class TextInput
{
    private const char LowHalf = '\uDC00';

    /// <summary>UTF-8; a byte that does not belong to it becomes half of a surrogate pair, which is no character but can be in a string.</summary>
    public static string Of(ReadOnlySpan<byte> bytes)
    {
        StringBuilder text = new(bytes.Length);
        while (!bytes.IsEmpty)
        {
            bool isCharacter = Rune.DecodeFromUtf8(bytes, out Rune rune, out int length) == OperationStatus.Done;
            if (isCharacter)
            {
                text.Append(rune.ToString());
            }
            else
            {
                length = 1;
                text.Append((char)(LowHalf + bytes[0]));
            }

            bytes = bytes[length..];
        }

        return text.ToString();
    }

    /// <summary>Whether bytes are UTF-8.</summary>
    public static bool IsText(ReadOnlySpan<byte> bytes) => Utf8.IsValid(bytes);
}
