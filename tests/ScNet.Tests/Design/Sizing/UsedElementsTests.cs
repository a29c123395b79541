using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Netlists;

namespace ScNet.Tests.Design.Sizing;

/// <summary>A halver of two capacitors in parallel, one of them behind a switch that is always closed.</summary>
public sealed class UsedElementsTests
{
    // the last of five switches; capacitors first
    private const int SwitchOfSecond = 2 + 4;

    // between phases charge has no time to reach the second capacitor where the first has no resistance at all
    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    public void A_switch_beside_a_capacitor_carries_some_of_its_charge_where_that_has_a_series_resistance(double esrOhms, bool isUsed)
    {
        SizingTask task = InventedSizing.Task(Of(esrOhms), [InventedSizing.Point(2, 0.9, 1e-4)], new AreaBudget(1e-7));
        Assert.Equal(isUsed, task.Uses(0, SwitchOfSecond));
        Assert.All(Enumerable.Range(0, SwitchOfSecond), e => Assert.True(task.Uses(0, e)));
    }

    private static ConverterAnalysis Of(double esrOhms) => ConverterAnalysis.Of(NetlistReader.Read(FormattableString.Invariant($$"""
        name = "two in parallel"
        input = "vin"
        output = "vout"
        [capacitors]
        c1 = { between = ["p", "n"], esr_ohms = {{esrOhms}} }
        c2 = { between = ["p", "x"] }
        [switches]
        a = { between = ["vin", "p"], on = [1] }
        d = { between = ["vout", "p"], on = [2] }
        e = { between = ["vout", "n"], on = [1] }
        g = { between = ["gnd", "n"], on = [2] }
        h = { between = ["x", "n"], on = [1, 2] }
        """)).GetConverter());
}
