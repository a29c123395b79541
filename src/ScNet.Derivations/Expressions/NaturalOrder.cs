namespace ScNet.Derivations.Expressions;

/// <summary>The order of names in which "fly2" comes before "fly10"; the same in every culture.</summary>
internal static class NaturalOrder
{
    /// <summary>Negative, zero or positive; zero only for equal names.</summary>
    public static int Compare(string left, string right)
    {
        int i = 0, j = 0;
        while (i < left.Length && j < right.Length)
        {
            int order = char.IsAsciiDigit(left[i]) && char.IsAsciiDigit(right[j])
                ? CompareNumbers(Number(left, ref i), Number(right, ref j))
                : left[i++].CompareTo(right[j++]);
            if (order != 0)
            {
                return order;
            }
        }

        int rest = (left.Length - i).CompareTo(right.Length - j);
        return rest != 0 ? rest : string.CompareOrdinal(left, right);
    }

    private static ReadOnlySpan<char> Number(string text, ref int position)
    {
        int start = position;
        while (position < text.Length && char.IsAsciiDigit(text[position]))
        {
            position++;
        }

        return text.AsSpan(start, position - start).TrimStart('0');
    }

    private static int CompareNumbers(ReadOnlySpan<char> left, ReadOnlySpan<char> right) =>
        left.Length != right.Length ? left.Length.CompareTo(right.Length) : left.SequenceCompareTo(right);
}
