using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>What docs/theory/families.md proves of the codes.</summary>
public sealed class BinaryCodesTests
{
    public static TheoryData<int> Bits => [.. Enumerable.Range(0, 11)];

    [Theory]
    [MemberData(nameof(Bits))]
    public void Every_odd_number_has_one_code_more_than_digits_and_each_gives_the_number(int bits) => ForEachOdd(bits, (k, codes) =>
    {
        Assert.Equal(bits + 1, codes.Count);
        Assert.All(codes, code =>
        {
            Assert.Equal(k, code.Digits.Select((digit, j) => digit << (bits - j)).Sum());
            Assert.InRange(code.Digits[0], 0, 1);
            Assert.All(code.Digits, digit => Assert.InRange(digit, -1, 1));
        });
    });

    [Theory]
    [MemberData(nameof(Bits))]
    public void Charges_are_positive_and_balance_every_digit_and_the_ratio(int bits) => ForEachOdd(bits, (k, codes) =>
    {
        Assert.All(codes, code => Assert.InRange(code.Charge, 1, 1L << bits));
        Assert.Equal(1L << bits, codes.Sum(code => code.Charge));
        Assert.Equal(k, codes.Sum(code => code.Charge * code.Digits[0]));
        for (int j = 1; j <= bits; j++)
        {
            Assert.Equal(0, codes.Sum(code => code.Charge * code.Digits[j]));
        }
    });

    [Theory]
    [MemberData(nameof(Bits))]
    public void Neighbours_differ_by_two_of_a_digit_and_one_of_the_digit_before_it_each_digit_once(int bits) => ForEachOdd(bits, (_, codes) =>
    {
        SortedSet<int> seen = [];
        for (int i = 1; i < codes.Count; i++)
        {
            int[] step = [.. codes[i - 1].Digits.Zip(codes[i].Digits, (left, right) => left - right)];
            int j = Array.FindIndex(step, s => s == 2);
            Assert.True(j >= 1 && seen.Add(j));
            Assert.Equal(-1, step[j - 1]);
            Assert.Equal(2, step.Count(s => s != 0));
        }

        Assert.Equal(bits, seen.Count);
    });

    private static void ForEachOdd(int bits, Action<int, IReadOnlyList<(int[] Digits, long Charge)>> check)
    {
        for (int k = 1; k < 1 << bits; k += 2)
        {
            check(k, BinaryCodes.Of(bits, k));
        }

        if (bits == 0)
        {
            check(1, BinaryCodes.Of(0, 1));
        }
    }
}
