using MathNet.Numerics.Random;
using ScNet.Reconfiguration;

namespace ScNet.Tests.Reconfiguration;

public sealed class OverlayMappingsTests
{
    private static List<int[]> All(params int[] capacitorCounts)
    {
        List<int[]> all = [];
        new OverlayMappings(capacitorCounts).Visit(mapping => all.Add([.. mapping.SelectMany(m => m)]));
        return all;
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 3)]
    [InlineData(3, 1)]
    [InlineData(2, 3, 3)]
    [InlineData(0, 2)]
    [InlineData(3, 0, 2)]
    [InlineData(1, 1, 2, 1)]
    public void The_count_is_that_of_the_mappings_gone_through_and_none_comes_twice(params int[] capacitorCounts)
    {
        List<int[]> all = All(capacitorCounts);
        Assert.Equal(new OverlayMappings(capacitorCounts).Count, all.Count);
        Assert.Equal(all.Count, all.Select(m => string.Join(' ', m)).Distinct().Count());
    }

    [Theory]
    [InlineData(2, 2)]
    [InlineData(1, 3)]
    [InlineData(2, 3, 2)]
    [InlineData(1, 2, 3)]
    public void Every_way_to_lay_the_networks_differs_from_one_that_is_tried_in_names_only(params int[] capacitorCounts)
    {
        int shared = capacitorCounts.Max();
        HashSet<string> tried = [.. All(capacitorCounts).Select(m => string.Join(' ', m))];
        HashSet<string> reached = [];
        foreach (int[] mapping in tried.Select(t => t.Split(' ').Select(int.Parse).ToArray()))
        {
            foreach (int[] renaming in Placings(shared, shared))
            {
                reached.Add(string.Join(' ', mapping.Select(t => renaming[t])));
            }
        }

        // the definition: every network onto distinct capacitors in either direction, n · (n - 1) · … · 2ᵏ ways each
        Assert.Equal(capacitorCounts.Aggregate(1, (product, own) => product * Placings(own, shared).Count()), reached.Count);
    }

    [Fact]
    public void Each_network_lies_on_distinct_capacitors_with_both_plates()
    {
        OverlayMappings mappings = new([4, 9, 7]);
        Xoshiro256StarStar random = new(1);
        HashSet<string> drawn = [];
        for (int k = 0; k < 500; k++)
        {
            int[][] mapping = mappings.Draw(random);
            Assert.Equal([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], mapping[0]);
            foreach (int[] terminals in mapping)
            {
                Assert.Equal([0, 1, 2], terminals[..3]);
                Assert.Equal(terminals.Length, terminals.Distinct().Count());
                Assert.All(terminals, t => Assert.InRange(t, 0, 20));
                Assert.All(terminals[3..].Chunk(2), plates => Assert.Equal((plates[0] - 3) / 2, (plates[1] - 3) / 2));
            }

            drawn.Add(string.Join(' ', mapping[1]));
        }

        Assert.True(drawn.Count > 490, $"Only {drawn.Count} of 500 mappings differ.");
    }

    // Every way to lay capacitors onto distinct shared ones, each in either direction, as terminals by own terminal.
    private static IEnumerable<int[]> Placings(int own, int shared) => own == 0
        ? [[0, 1, 2]]
        : from before in Placings(own - 1, shared)
          from capacitor in Enumerable.Range(0, shared)
          where !before.Contains(3 + (2 * capacitor))
          from isTurned in new[] { false, true }
          select (int[])[.. before, 3 + (2 * capacitor) + (isTurned ? 1 : 0), 4 + (2 * capacitor) - (isTurned ? 1 : 0)];
}
