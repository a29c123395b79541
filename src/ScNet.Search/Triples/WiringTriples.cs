using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ScNet.Search.Triples;

/// <summary>
/// All choices of a wiring for each phase of a triple, by the least number of switches that each may have: m12 + m13 + m23
/// − n1 − n2 − n3, with m the nodes of what two phases both join (docs/theory/atlas.md).
/// </summary>
internal sealed class WiringTriples
{
    // what fills up the rows of a table, above every number of nodes, and twice of it still a byte
    private const byte Padding = 127;

    private readonly Wiring[][] _phases;
    private readonly byte[] _firstSecond;
    private readonly byte[] _firstThird;
    private readonly byte[] _secondThird;
    private readonly int _width;
    private readonly int _nodes;

    private WiringTriples(Wiring[][] phases)
    {
        _phases = phases;
        _nodes = phases.Sum(p => p[0].NodeCount);
        _width = (phases[2].Length + Vector256<byte>.Count - 1) / Vector256<byte>.Count * Vector256<byte>.Count;
        _firstSecond = Meets(phases[0], phases[1], phases[1].Length);
        _firstThird = Meets(phases[0], phases[2], _width);
        _secondThird = Meets(phases[1], phases[2], _width);
        Least = int.MaxValue;
        for (int first = 0; first < phases[0].Length; first++)
        {
            for (int second = 0; second < phases[1].Length; second++)
            {
                Vector256<byte> least = Vector256.Create(byte.MaxValue);
                for (int third = 0; third < _width; third += Vector256<byte>.Count)
                {
                    least = Vector256.Min(least, Sums(first, second, third));
                }

                byte sum = byte.MaxValue;
                for (int lane = 0; lane < Vector256<byte>.Count; lane++)
                {
                    sum = Math.Min(sum, least[lane]);
                }

                Least = Math.Min(Least, sum + _firstSecond[(first * phases[1].Length) + second] - _nodes);
            }
        }
    }

    /// <summary>The least bound of any choice.</summary>
    public int Least { get; }

    /// <summary>The choices of a triple. Cost: the product of the numbers of wirings of each two phases.</summary>
    /// <param name="phases">The wirings of each phase, in one piece.</param>
    public static WiringTriples Of(Wiring[][] phases) => new(phases);

    /// <summary>The wirings of a choice.</summary>
    public Wiring[] this[(int First, int Second, int Third) choice] => [_phases[0][choice.First], _phases[1][choice.Second], _phases[2][choice.Third]];

    /// <summary>Every choice of a bound, in order.</summary>
    /// <param name="bound">The bound.</param>
    public IEnumerable<(int First, int Second, int Third)> OfBound(int bound)
    {
        for (int first = 0; first < _phases[0].Length; first++)
        {
            for (int second = 0; second < _phases[1].Length; second++)
            {
                int sum = bound + _nodes - _firstSecond[(first * _phases[1].Length) + second];
                for (int third = 0; third < _width && sum is > 0 and < Padding; third += Vector256<byte>.Count)
                {
                    for (uint hits = Vector256.Equals(Sums(first, second, third), Vector256.Create((byte)sum)).ExtractMostSignificantBits(); hits != 0; hits &= hits - 1)
                    {
                        yield return (first, second, third + BitOperations.TrailingZeroCount(hits));
                    }
                }
            }
        }
    }

    private Vector256<byte> Sums(int first, int second, int third) =>
        Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(_firstThird), (nuint)((first * _width) + third))
        + Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(_secondThird), (nuint)((second * _width) + third));

    // a row per wiring of the one phase, filled up to a width
    private static byte[] Meets(Wiring[] ones, Wiring[] others, int width)
    {
        byte[] meets = new byte[ones.Length * width];
        meets.AsSpan().Fill(Padding);
        for (int one = 0; one < ones.Length; one++)
        {
            for (int other = 0; other < others.Length; other++)
            {
                meets[(one * width) + other] = (byte)NodesOfBoth(ones[one].Nodes, others[other].Nodes);
            }
        }

        return meets;
    }

    // the sets of terminals that are joined in both; a wiring in one piece of four capacitors has six nodes at most
    private static int NodesOfBoth(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other)
    {
        ulong seen = 0;
        for (int t = 0; t < one.Length; t++)
        {
            seen |= 1ul << ((one[t] << 3) | other[t]);
        }

        return BitOperations.PopCount(seen);
    }
}
