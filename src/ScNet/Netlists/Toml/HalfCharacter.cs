namespace ScNet.Netlists.Toml;

/// <summary>Half of a surrogate pair, which a string can hold but which is no character.</summary>
internal static class HalfCharacter
{
    /// <summary>The position of the first in a text, from 0; -1 where every character is whole.</summary>
    public static int IndexIn(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i]))
            {
                continue;
            }

            if (i + 1 == text.Length || !char.IsSurrogatePair(text[i], text[i + 1]))
            {
                return i;
            }

            i++;
        }

        return -1;
    }

    /// <summary>What is said of one in a document.</summary>
    public static string Message(char half) => FormattableString.Invariant($"Half a character (U+{(int)half:X4}) is no text. Remove it.");
}
