namespace ScNet.Search.Pairs;

/// <summary>
/// The class of a way to rename and turn capacitors: how many cycles of each length turn an even and how many an odd
/// number of times. Two ways are conjugate when these numbers agree (Young 1930; from memory).
/// </summary>
internal readonly record struct SignedCycles
{
    // four bits per length and sign
    private const int FieldBits = 4;

    private readonly ulong _counts;

    private SignedCycles(ulong counts) => _counts = counts;

    /// <summary>The class of an element.</summary>
    public static SignedCycles Of(ReadOnlySpan<int> positions, int turns)
    {
        ulong counts = 0;
        uint seen = 0;
        for (int start = 0; start < positions.Length; start++)
        {
            int length = 0;
            bool isOdd = false;
            for (int c = start; (seen >> c & 1) == 0; c = positions[c])
            {
                seen |= 1u << c;
                length++;
                isOdd ^= (turns >> c & 1) != 0;
            }

            counts += length > 0 ? One(length, isOdd) : 0;
        }

        return new SignedCycles(counts);
    }

    /// <summary>Every class.</summary>
    public static IEnumerable<SignedCycles> All(int capacitors) => From(0, capacitors, capacitors).Select(c => new SignedCycles(c));

    /// <summary>The number of elements of the class: 2^k k! over Π (2 length)^m m!, m being the number of cycles of a length and sign.</summary>
    public Int128 ElementCount
    {
        get
        {
            Int128 group = 1, centraliser = 1;
            for (int length = 1, below = 0; length <= 8; length++)
            {
                foreach (bool isOdd in (ReadOnlySpan<bool>)[false, true])
                {
                    for (int m = 1; m <= Count(length, isOdd); m++)
                    {
                        centraliser *= 2 * length * m;
                        for (int c = 0; c < length; c++)
                        {
                            group *= 2 * ++below;
                        }
                    }
                }
            }

            return group / centraliser;
        }
    }

    /// <summary>The class of the squares of the elements: a cycle of even length becomes two of half the length, which turn as often; one of odd length turns twice as often.</summary>
    public SignedCycles Squared()
    {
        ulong squared = 0;
        for (int length = 1; length <= 8; length++)
        {
            foreach (bool isOdd in (ReadOnlySpan<bool>)[false, true])
            {
                ulong count = (ulong)Count(length, isOdd);
                squared += length % 2 == 0 ? 2 * count * One(length / 2, isOdd) : count * One(length, isOdd: false);
            }
        }

        return new SignedCycles(squared);
    }

    private static IEnumerable<ulong> From(ulong counts, int left, int longest)
    {
        if (left == 0)
        {
            return [counts];
        }

        // lengths falling, of one length even cycles before odd ones
        return from length in Enumerable.Range(1, Math.Min(left, longest))
               from odd in Enumerable.Range(0, left / length + 1)
               from even in Enumerable.Range(odd == 0 ? 1 : 0, left / length - odd + (odd == 0 ? 0 : 1))
               from whole in From(counts + ((ulong)odd * One(length, true)) + ((ulong)even * One(length, false)), left - (length * (odd + even)), length - 1)
               select whole;
    }

    private static ulong One(int length, bool isOdd) => 1ul << Shift(length, isOdd);

    private static int Shift(int length, bool isOdd) => FieldBits * ((2 * (length - 1)) + (isOdd ? 1 : 0));

    private int Count(int length, bool isOdd) => (int)(_counts >> Shift(length, isOdd) & 15);
}
