using ScNet.Search.Atlases;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Pairs;

namespace ScNet.Search.Tests.Shards;

public class PairTotalTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void As_many_pairs_are_counted_beforehand_as_are_decided(int capacitors) =>
        Assert.Equal(PairShard.Run(capacitors, 1, 1, threads: 1).PairCount, PairTotal.Of(capacitors));

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(5)]
    public void Classes_are_those_of_the_elements_and_so_are_their_squares(int capacitors)
    {
        SignedPermutations group = new(capacitors);
        int[] positions = new int[capacitors], squared = new int[capacitors];
        Dictionary<SignedCycles, int> counted = [];
        for (int element = 0; element < group.Count; element++)
        {
            int turns = group.Read(element, positions);
            SignedCycles kind = SignedCycles.Of(positions, turns);
            counted[kind] = counted.GetValueOrDefault(kind) + 1;
            Assert.Equal(SignedCycles.Of(squared, SignedPermutations.Compose(positions, turns, positions, turns, squared)), kind.Squared());
        }

        SignedCycles[] all = [.. SignedCycles.All(capacitors)];
        Assert.Equal(all.Length, all.Distinct().Count());
        Assert.Equal(counted.Count, all.Length);
        Assert.All(all, k => Assert.Equal(k.ElementCount, counted[k]));
    }

    // pairs of partitions, https://oeis.org/A000712, from memory
    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 5)]
    [InlineData(3, 10)]
    [InlineData(4, 20)]
    [InlineData(8, 185)]
    public void There_are_as_many_classes_as_pairs_of_partitions(int capacitors, int count)
    {
        Assert.Equal(count, SignedCycles.All(capacitors).Count());
        Assert.Equal(new SignedPermutations(capacitors).Count, SignedCycles.All(capacitors).Aggregate((Int128)0, (sum, k) => sum + k.ElementCount));
    }
}
