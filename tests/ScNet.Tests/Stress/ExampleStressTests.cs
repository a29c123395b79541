using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>Every converter of docs/examples, from an empty to a full cell.</summary>
public sealed class ExampleStressTests
{
    private static readonly Interval<double> s_cell = new(2.8, 4.2);

    // "blocks" as each file says for its modes
    [Theory]
    [InlineData("half", "1/2")]
    [InlineData("series-parallel-3", "2/3")]
    [InlineData("series-parallel-4", "3/4")]
    [InlineData("ladder-4", "1/4")]
    [InlineData("three-phase-4", "1/2")]
    [InlineData("dickson-5", "2/5")]
    [InlineData("fibonacci-5", "3/5")]
    [InlineData("memory-gears", "2/3")]
    [InlineData("core-gears", "4/5")]
    public void The_largest_fixed_stress_is_what_the_example_says(string name, string share)
    {
        ConverterStress stress = RatedNetworks.Stress(RatedNetworks.Example(name), s_cell);
        VoltageSpan[] spans = [.. stress.Modes.SelectMany(m => m.Switches).SelectMany(s => s.Phases).Where(p => p.Basis == VoltageBasis.Fixed)];
        Assert.Equal(share, Quantity.Exact(spans.Max(p => p.PerVoltOfInput.Maximum!.Value.Abs())).ToString());
        Assert.All(stress.Switches, s => Assert.True(s.IsDetermined));
        Assert.All(stress.Changes, c => Assert.True(c.IsExact));
        Assert.Empty(stress.ModesWithoutResult);
    }

    // 3 modes, 6 changes, each with a known stress; the best path is no worse than any order written down
    [Theory]
    [InlineData("memory-gears")]
    [InlineData("core-gears")]
    public void The_order_of_the_gears_is_no_worse_than_the_one_of_the_file(string name)
    {
        ConverterStress stress = RatedNetworks.Stress(RatedNetworks.Example(name), s_cell);
        Assert.Equal(6, stress.Changes.Count);
        ModeOrder order = stress.FindOrder();
        double ofFile = Enumerable.Range(0, 2).Max(k =>
        {
            ModeChange change = stress.Change(stress.Modes[k].Mode.Name, stress.Modes[k + 1].Mode.Name);
            return Math.Max(change.PeakStressVolts!.Value, change.PeakSurgeVolts!.Value);
        });
        Assert.True(order.PeakVolts <= ofFile);
        Assert.True(stress.FindOrder(isCycle: true).PeakVolts >= order.PeakVolts);
    }
}
