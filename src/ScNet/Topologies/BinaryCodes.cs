namespace ScNet.Topologies;

/// <summary>
/// The ways to write k/2^n as A0 + A1/2 + A2/4 + … + An/2^n that the phases of a binary converter take:
/// A0 is 0 or 1, the others -1, 0 or 1.
/// </summary>
/// <remarks>
/// Written from the last digit up: an odd number takes the digit 1 or -1 and leaves (k - 1)/2 or (k + 1)/2,
/// an even one takes 0 and leaves k/2. Every digit must average to zero over the charge that passes, so
/// half of what arrives at an odd number goes each way. Of the two neighbouring numbers that are left at
/// each step just one is odd, so that laying the charge out as an interval takes one cut per step: n + 1
/// codes for an odd k, each with the length of its piece. docs/theory/families.md proves that these
/// codes fix every voltage.
/// </remarks>
internal static class BinaryCodes
{
    /// <summary>The codes of an odd k in the order of the interval; neighbours differ in two digits.</summary>
    /// <param name="bits">The number n, from 0 to 30.</param>
    /// <param name="numerator">The number k, odd, from 1 to 2^n.</param>
    /// <returns>The digits A0 to An, and the charge in units of 1/2^n.</returns>
    public static IReadOnlyList<(int[] Digits, long Charge)> Of(int bits, int numerator)
    {
        List<(int Number, int[] Digits, long Charge)> pieces = [(numerator, new int[bits + 1], 1L << bits)];
        for (int j = bits; j >= 1; j--)
        {
            long half = pieces.Where(p => IsOdd(p.Number)).Sum(p => p.Charge) / 2;
            List<(int Number, int[] Digits, long Charge)> next = [];
            foreach ((int number, int[] digits, long charge) in pieces)
            {
                if (!IsOdd(number))
                {
                    next.Add((number / 2, digits, charge));
                    continue;
                }

                long positive = Math.Min(half, charge);
                half -= positive;
                Add(1, positive);
                Add(-1, charge - positive);

                void Add(int digit, long share)
                {
                    if (share > 0)
                    {
                        int[] extended = [.. digits];
                        extended[j] = digit;
                        next.Add(((number - digit) / 2, extended, share));
                    }
                }
            }

            pieces = next;
        }

        pieces.ForEach(p => p.Digits[0] = p.Number);
        return [.. pieces.Select(p => (p.Digits, p.Charge))];
    }

    private static bool IsOdd(int value) => value % 2 != 0;
}
