using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Maps;

/// <summary>What a load costs on average over the time in which it is on.</summary>
public sealed class LoadSumTests
{
    // 2 s at 3 W and losses of 1, 2, …; 6 s at 5 W and ten times the losses
    [Fact]
    public void Energies_add_up_over_time()
    {
        LoadSum sum = new(new("on", 1, 0.25, 1));
        sum.Add(2, Point(3, 1));
        sum.Add(6, Point(5, 10));
        Assert.Equal((8, 36), (sum.Seconds, sum.OutputJoules));
        for (int kind = 0; kind < LossModel.KindCount; kind++)
        {
            Assert.Equal((2 + 60) * (kind + 1), sum.LossJoules[kind]);
        }
    }

    // states of one name are one load of the sum of their shares; one that was never on is none
    [Fact]
    public void States_of_one_name_share_a_budget()
    {
        LoadSum first = new(new("on", 1, 0.25, 1)), second = new(new("on", 1, 0.5, 2)), other = new(new("off", 1, 0.125, 1)), never = new(new("never", 1, 0.125, 1));
        first.Add(2, Point(3, 1));
        second.Add(6, Point(5, 10));
        other.Add(1, Point(7, 2));
        LoadBudget[] budgets = [.. LoadSum.Budgets([first, other, second, never])];
        Assert.Equal(["on", "off"], budgets.Select(b => b.Load.Name));
        Assert.Equal(0.75, budgets[0].Load.Share);
        Assert.Equal(36 / 8.0, budgets[0].OutputWatts);
        double[] expected = [.. Enumerable.Range(1, LossModel.KindCount).Select(k => 62 * k / 8.0)];
        Assert.Equal(expected, Enumerable.Range(0, LossModel.KindCount).Select(k => budgets[0].WattsOf((LossKind)k)));
        Assert.Equal(expected.Sum(), budgets[0].LossWatts);
        Assert.Equal(4.5 / (4.5 + expected.Sum()), budgets[0].Efficiency, 1e-15);
        Assert.Equal("off: 4.294 %, 156 W lost", budgets[1].ToString());
    }

    private static RegulatedPoint Point(double outputWatts, double scale) => new(
        RegulationOutcome.Held, 1, 1, outputWatts, [.. Enumerable.Range(1, LossModel.KindCount).Select(k => k * scale)]);
}
