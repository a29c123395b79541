using ScNet.Stress;

namespace ScNet.Tests.Stress;

public sealed class ModeOrderTests
{
    // c has -1, -1/2, 1/2 or 1, so that the surge of a change is how far these are apart. As a path their order is the best, with
    // steps of 1/2, 1, 1/2; closed, its last step is 2. -1, -1/2, 1, 1/2 and back has no step above 3/2, and less cannot be: from
    // either end two steps lead away.
    [Fact]
    public void The_best_cycle_is_another_one_than_the_best_path()
    {
        (string, PhaseSet)[] half = RatedNetworks.HalfSwitching;
        PhaseSet always = PhaseSet.Of(1, 2);
        Converter converter = RatedNetworks.HalfOfModes().Capacitor("c", "x", "y")
            .Switch("xv", "x", "vin").Switch("xo", "x", "vout").Switch("xg", "x", "gnd").Switch("yv", "y", "vin").Switch("yo", "y", "vout").Switch("yg", "y", "gnd")
            .Mode("1", [.. half, ("xv", always), ("yg", always)]).Mode("-1/2", [.. half, ("xg", always), ("yo", always)])
            .Mode("1/2", [.. half, ("xo", always), ("yg", always)]).Mode("-1", [.. half, ("xg", always), ("yv", always)]).Build();
        ConverterStress stress = RatedNetworks.Stress(converter, new Interval<double>(1, 2));

        ModeOrder path = stress.FindOrder(ModeOrderCriterion.Surge);
        Assert.Contains(path.ToString(), (string[])["-1, -1/2, 1/2, 1: 2 V", "1, 1/2, -1/2, -1: 2 V"]);
        Assert.False(path.IsCycle);

        ModeOrder cycle = stress.FindOrder(ModeOrderCriterion.Surge, isCycle: true);
        Assert.Contains(cycle.ToString(), (string[])["1, -1/2, -1, 1/2, and back: 3 V", "1, 1/2, -1, -1/2, and back: 3 V"]);
        Assert.Equal(cycle.Changes.Skip(1).Select(c => c.From), cycle.Changes.SkipLast(1).Select(c => c.To));
        Assert.Equal((ModeOrderCriterion.Surge, true, 4), (cycle.Criterion, cycle.IsCycle, cycle.Changes.Count));
    }

    [Fact]
    public void One_mode_is_an_order_without_a_change()
    {
        ModeOrder order = RatedNetworks.Stress(RatedNetworks.Half().Build()).FindOrder(isCycle: true);
        Assert.Equal("default, and back: 0 V", order.ToString());
        Assert.Empty(order.Changes);
    }

    // there and back again 1/2 is left over, of up to 4 V
    [Fact]
    public void Two_modes_lead_to_each_other()
    {
        ModeOrder order = RatedNetworks.Stress(RatedNetworks.HalfAndFull().Build(), new Interval<double>(2, 4)).FindOrder(isCycle: true);
        Assert.Equal("half, full, and back: 2 V", order.ToString());
        Assert.Equal(["half", "full"], order.Changes.Select(c => c.From.Name));
    }
}
