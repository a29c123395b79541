using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Tests.Design.Choice;

namespace ScNet.Tests.Design.Maps;

/// <summary>Sets of invented modes that hold some of the loads 1, 2, 3 … A at 1 V.</summary>
public sealed class GearCountsOfSetsTests
{
    // four loads, three and three: the last two together hold six, the first with another five at most
    [Fact]
    public void The_best_two_need_not_be_with_the_best_one()
    {
        RegulatedMode most = Mode("most", 1, [1, 2, 3, 4]), left = Mode("left", 1, [1, 2, 5]), right = Mode("right", 1, [3, 4, 6]);
        IReadOnlyList<GearCount> counts = GearCounts.Of(Map(6, most, left, right));
        Assert.Equal([most], counts[0].Modes);
        Assert.Equal([left, right], counts[1].Modes);
        Assert.Equal([4 / 6.0, 1, 1], counts.Select(c => c.HeldShare));

        // half of all input is lost
        Assert.Equal([0.5, 0.5, 0.5], counts.Select(c => c.AverageEfficiency!.Value));
    }

    // 1 W from 2 W and 2 W from 8 W
    [Fact]
    public void Efficiency_is_that_of_the_energies_held()
    {
        GearCount count = GearCounts.Of(Map(3, Mode("low", 1, [1]), Mode("high", 3, [2])))[1];
        Assert.Equal(2 / 3.0, count.HeldShare);
        Assert.Equal(0.3, count.AverageEfficiency!.Value, 1e-15);
    }

    [Fact]
    public void Of_equal_sets_the_first_counts()
    {
        RegulatedMode first = Mode("first", 1, [1]), second = Mode("second", 1, [1]), worse = Mode("worse", 2, [1]);
        Assert.Equal([first], GearCounts.Of(Map(1, worse, first, second))[0].Modes);
    }

    [Fact]
    public void Modes_that_hold_nothing_are_counted_without_an_efficiency()
    {
        OperatingMap map = Map(2, Mode("a", 1, []), Mode("b", 1, []));
        IReadOnlyList<GearCount> counts = GearCounts.Of(map);
        Assert.Equal([1, 2], counts.Select(c => c.Modes.Count));
        Assert.All(counts, c => Assert.Equal(0, c.HeldShare));
        Assert.All(counts, c => Assert.Null(c.AverageEfficiency));
        Assert.Null(map.AverageEfficiency);
        Assert.Equal(0, map.HeldShare);
    }

    // of 19 modes 19!/(7! 12!) = 50388 sets of seven are too many
    [Fact]
    public void Where_sets_are_too_many_another_mode_joins_those_before_in_the_order_of_the_map()
    {
        RegulatedMode[] modes = [.. Enumerable.Range(0, 19).Select(k => Mode($"m{k}", 1, k % 2 == 0 ? [1] : [2]))];
        OperatingMap map = Map(2, modes);
        IReadOnlyList<GearCount> counts = GearCounts.Of(map);
        Assert.Equal([true, false], [counts[3].IsCertain, counts[6].IsCertain]);
        foreach (GearCount count in counts.Where(c => !c.IsCertain))
        {
            int[] places = [.. count.Modes.Select(m => Array.IndexOf(modes, m))];
            Assert.Equal(places.Distinct().Order(), places);
        }

        Assert.Equal(modes, counts[18].Modes);
        Assert.Equal(Enumerable.Range(1, 19), counts.Select(c => c.Modes.Count));
    }

    // "wide" holds two of the three loads of each of six others: with four of them 12 + 2 · 2 loads of 18, with five 15 + 2, while all six without it hold every load;
    // of 19 modes 19!/(6! 13!) = 27132 sets of six are too many to find that
    [Fact]
    public void Where_sets_are_too_many_the_modes_of_the_best_set_before_stay()
    {
        RegulatedMode wide = Mode("wide", 1, [1, 2, 4, 5, 7, 8, 10, 11, 13, 14, 16, 17]);
        RegulatedMode[] triples = [.. Enumerable.Range(0, 6).Select(k => Mode($"t{k}", 1, [(3 * k) + 1, (3 * k) + 2, (3 * k) + 3]))];
        RegulatedMode[] none = [.. Enumerable.Range(0, 12).Select(k => Mode($"n{k}", 1, []))];
        IReadOnlyList<GearCount> counts = GearCounts.Of(Map(18, [wide, .. triples, .. none]));
        Assert.Equal([true, false, false], counts.Skip(4).Take(3).Select(c => c.IsCertain));
        Assert.Equal([16 / 18.0, 17 / 18.0, 1], counts.Skip(4).Take(3).Select(c => c.HeldShare));
        Assert.Contains(wide, counts[5].Modes);
    }

    [Fact]
    public void Work_can_be_ended()
    {
        using CancellationTokenSource ended = new();
        ended.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => GearCounts.Of(Map(1, Mode("a", 1, [1])), ended.Token));
    }

    private static OperatingMap Map(int loads, params RegulatedMode[] modes) =>
        OperatingMap.Of(modes, [2], [1], [.. Enumerable.Range(1, loads).Select(l => (double)l)]);

    // loses so many times the output
    private static InventedMode Mode(string name, double lossPerOutput, double[] loads) => new(
        name,
        amperes => loads.Contains(amperes) ? new(RegulationOutcome.Held, 1e6, double.NaN, amperes, LossesOf(lossPerOutput * amperes)) : InventedMode.Lost);

    private static double[] LossesOf(double watts)
    {
        var losses = new double[LossModel.KindCount];
        losses[0] = watts;
        return losses;
    }
}
