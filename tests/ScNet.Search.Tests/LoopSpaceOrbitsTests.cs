using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Tests;

public class LoopSpaceOrbitsTests
{
    [Theory]
    [InlineData(1, 10, 6, 18)]
    [InlineData(2, 78, 19, 272)]
    [InlineData(3, 910, 57, 6064)]
    [InlineData(4, 15298, 175, 183856)]
    public void The_orbits_hold_every_space_and_every_wiring_in_one_piece(int capacitors, int spaces, int orbits, int wirings)
    {
        LoopSpaceOrbits all = LoopSpaceOrbits.Of(capacitors);
        Assert.Equal(orbits, all.Orbits.Count);
        Assert.Equal(spaces, all.Orbits.Sum(o => o.Size));
        Assert.Equal(wirings, all.Orbits.Sum(o => o.Size * o.Wirings.Count));
    }

    [Theory]
    [InlineData(1, 4, 8, 8)]
    [InlineData(2, 13, 60, 92)]
    [InlineData(3, 38, 704, 1560)]
    [InlineData(4, 118, 12088, 39040)]
    [InlineData(5, 370, 290080, 1302848)]
    public void The_orbits_that_use_all_capacitors_are_found_alone(int capacitors, int orbits, int spaces, int wirings)
    {
        LoopSpaceOrbits all = LoopSpaceOrbits.Of(capacitors, usingAll: true);
        Assert.Equal((orbits, spaces, wirings), (all.Orbits.Count, all.Orbits.Sum(o => o.Size), all.Orbits.Sum(o => o.Size * o.Wirings.Count)));
    }
}
