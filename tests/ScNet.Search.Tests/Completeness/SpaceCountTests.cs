namespace ScNet.Search.Tests.Completeness;

/// <summary>Counts of wirings, loop spaces and orbits, each by two routes.</summary>
public class SpaceCountTests
{
    public static IEnumerable<object[]> Counts => AtlasCampaign.UpTo(3, 4, [[1, 20, 10, 6], [2, 322, 78, 19], [3, 7432, 910, 57], [4, 229114, 15298, 175]]);

    // wirings and spaces up to three capacitors were counted by a separate program too
    [Theory]
    [MemberData(nameof(Counts))]
    public void Wirings_and_spaces_are_that_many(int capacitors, int wirings, int spaces, int orbits)
    {
        SpaceList list = SpaceList.Of(capacitors);
        Assert.Equal(wirings, AllWirings.Of(capacitors).Count());
        Assert.Equal(spaces, list.Spaces.Count);
        Assert.Equal(orbits, list.OrbitLeaders().Distinct().Count());
    }

    // Burnside's lemma: the orbits are as many as the spaces that an element leaves as they are, on average
    [Theory]
    [MemberData(nameof(Counts))]
    public void Orbits_are_the_average_number_of_fixed_spaces(int capacitors, int wirings, int spaces, int orbits)
    {
        SpaceList list = SpaceList.Of(capacitors);
        long fixedSpaces = list.Images.Sum(image => image.Where((to, from) => to == from).LongCount());
        Assert.Equal((long)orbits * list.Maps.Count, fixedSpaces);
        Assert.True(spaces < wirings);
    }

    // inclusion and exclusion over the branches that must not be short-circuited, with Bell numbers of what is left
    [Theory]
    [MemberData(nameof(Counts))]
    public void Wirings_are_what_inclusion_and_exclusion_gives(int capacitors, int wirings, int spaces, int orbits)
    {
        int branches = capacitors + 2, terminals = Terminals.Count(capacitors);
        long count = 0;
        for (int shorted = 0; shorted < 1 << branches; shorted++)
        {
            // branches form a forest on the terminals, so that each joined pair takes one block away
            int joined = System.Numerics.BitOperations.PopCount((uint)shorted);
            count += (joined % 2 == 0 ? 1 : -1) * Bell(terminals - joined);
        }

        Assert.Equal(wirings, count);
        Assert.True(orbits < spaces);
    }

    private static long Bell(int n)
    {
        long[] row = [1];
        for (int i = 1; i < n; i++)
        {
            long[] next = new long[i + 1];
            next[0] = row[^1];
            for (int j = 1; j <= i; j++)
            {
                next[j] = next[j - 1] + row[j - 1];
            }

            row = next;
        }

        return row[^1];
    }
}
