using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>Two capacitors that a change puts in parallel with each other alone, tied to nothing else.</summary>
public sealed class FloatingConflictTests
{
    // Mode a: fly = 1/2 with p at 1, 1/2, 1/2 and n at 1/2, 0, 0; more = 1 from q at 1 to m at 0. Phase 3 of mode b joins p–q and
    // n–m: 1 - 1/2 = 1/2 is shared, p - q = -1/2 to 0, n - m = 0 to 1/2. Each node lies where the charge of any of the
    // four puts it:
    //   p: own 1/2 to 1, from n 1/2 to 1, from q 1 - (0 to 1/2), from m 0 + (1/2 to 1): 1/2 to 1, and n 1/2 below;
    //   q: own 1, from p (1/2 to 1) + (0 to 1/2): 1/2 to 3/2, and m 1 below.
    [Fact]
    public void Each_node_lies_where_the_charge_of_any_other_puts_it()
    {
        Converter converter = RatedNetworks.HalfOfModes().Phases(3).Capacitor("more", "q", "m")
            .Switch("top", "vin", "q").Switch("low", "m", "gnd").Switch("up", "p", "q").Switch("down", "n", "m")
            .Mode("a", ("s1", 1), ("s2", 1), ("s3", [2, 3]), ("s4", [2, 3]), ("top", [1, 2, 3]), ("low", [1, 2, 3]))
            .Mode("b", ("s1", 1), ("s2", 1), ("s3", 2), ("s4", 2), ("up", 3), ("down", 3)).Build();
        ModeChange change = RatedNetworks.Stress(converter).Change("a", "b");
        Assert.Equal("0 to 1/2 (floating)", change.OpenSwitches["s1"].Phases[3].ToString());       // vin - p
        Assert.Equal("-1/2 to 0 (floating)", change.OpenSwitches["s2"].Phases[3].ToString());      // n - vout
        Assert.Equal("0 to 1/2 (floating)", change.OpenSwitches["s3"].Phases[3].ToString());       // p - vout
        Assert.Equal("0 to 1/2 (floating)", change.OpenSwitches["s4"].Phases[3].ToString());       // n
        Assert.Equal("-1/2 to 1/2 (floating)", change.OpenSwitches["top"].Phases[3].ToString());   // vin - q
        Assert.Equal("-1/2 to 1/2 (floating)", change.OpenSwitches["low"].Phases[3].ToString());   // m
        Assert.Equal("-1/2 to 0 (surge)", change.ClosedSwitches["up"].Phases[3].ToString());
        Assert.Equal("0 to 1/2 (surge)", change.ClosedSwitches["down"].Phases[3].ToString());
        LoopSurge surge = Assert.Single(change.Surges);
        Assert.Equal("1/2 in phase 3 round fly, more, taken by up, down", surge.ToString());
        Assert.True(change.IsExact);
    }
}
