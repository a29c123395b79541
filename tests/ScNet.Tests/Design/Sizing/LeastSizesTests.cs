using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Netlists;

namespace ScNet.Tests.Design.Sizing;

/// <summary>Sizes of one step each, where the area is hardly more or an element is of little use.</summary>
public sealed class LeastSizesTests
{
    private static readonly ConverterAnalysis s_parallel = ConverterAnalysis.Of(NetlistReader.Read("""
        name = "two in parallel"
        input = "vin"
        output = "vout"
        [capacitors]
        c1 = { between = ["p", "n"] }
        c2 = { between = ["p", "x"] }
        [switches]
        a = { between = ["vin", "p"], on = [1] }
        d = { between = ["vout", "p"], on = [2] }
        e = { between = ["vout", "n"], on = [1] }
        g = { between = ["gnd", "n"], on = [2] }
        h = { between = ["x", "n"], on = [1, 2] }
        """).GetConverter());

    // with c2 as small as can be the search would lead on below it
    [Theory]
    [InlineData(0.99)]
    [InlineData(0.98)]
    [InlineData(0.97)]
    public void No_size_is_less_than_one_step(double outputVolts)
    {
        SizingTask task = InventedSizing.Task(s_parallel, [InventedSizing.Point(2, outputVolts, 1e-4)], new AreaBudget(1e-8));
        double[] values = new SizingSearch(task).Run()!.Values;
        Assert.All(values.Select((value, e) => (value, e)), v => Assert.True(v.value >= task.LeastValue(v.e, 0) * (1 - 1e-12), $"{v.e}: {v.value}"));
    }

    // a capacitor of one step of 10⁻⁹ m², 10 pF, leaves 4·10⁻¹¹ m² of 1.04·10⁻⁹ m² to four switches: 100 Ω each. At 1 GHz 1/(4 C f) is 25 Ω, and R_out = 25 Ω ·
    // coth(25/200). A larger capacitor would take what switches need
    [Fact]
    public void An_area_of_little_more_than_one_step_is_not_exceeded()
    {
        SizingPoint point = InventedSizing.Point(2, 1 - (100 * 1e-3), 1e-3);
        SizingSearch search = new(InventedSizing.Task(
            InventedSizing.Halver, [point], new AreaBudget(1.04e-9), frequencyHz: new(1e5, 1e9), how: new() { Grid = new(0.1, 1e-9) }));
        Assert.Null(search.Run());
        double expected = 25 / Math.Tanh(25.0 / 200);
        Assert.Equal(expected, Assert.Single(search.Unreachable).LeastOhms!.Value, 1e-4 * expected);
    }
}
