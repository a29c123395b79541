using ScNet.Search.LoopSpaces;
using ScNet.Search.Pairs;

namespace ScNet.Search.Tests;

public class PairWalkTests(Xunit.Abstractions.ITestOutputHelper output)
{
    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(2, 0, 0)]
    [InlineData(3, 0, 0)]
    [InlineData(4, 0, 0)]
    [InlineData(5, 0, 0)]
    public void Pairs(int capacitors, long pairs, long networks)
    {
        long t0 = Environment.TickCount64;
        LoopSpaceOrbits orbits = LoopSpaceOrbits.Of(capacitors, usingAll: true);
        long t1 = Environment.TickCount64;
        SignedPermutations group = new(capacitors);
        PairWalk walk = new(group);
        PairCounter counter = new(new PairCharges(capacitors));
        long count = 0;
        foreach (LoopSpaceOrbit smaller in orbits.Orbits)
        {
            MovingOrbit moving = MovingOrbit.Of(smaller, group);
            foreach (LoopSpaceOrbit larger in orbits.Orbits.SkipWhile(o => o != smaller))
            {
                if (larger.Space.Dimension + smaller.Space.Dimension == capacitors + 1)
                {
                    walk.Run(larger, moving, counter);
                }
            }
        }

        count = counter.Count;
        output.WriteLine($"k={capacitors} pairs {walk.PairCount} networks {count} orbits {t1 - t0} ms, walk {Environment.TickCount64 - t1} ms");
        Assert.Equal((pairs, networks), (walk.PairCount, count));
    }
}
