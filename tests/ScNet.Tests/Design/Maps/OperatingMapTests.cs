using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Maps;

public sealed class OperatingMapTests
{
    private static readonly double[] s_inputs = InventedGears.Range(2.6, 4.2, 17);
    private static readonly double[] s_outputs = InventedGears.Range(0.6, 2.2, 9);
    private static readonly double[] s_loads = [1e-6, 1e-3, 3e-2];
    private static readonly OperatingMap s_map = OperatingMap.Of(InventedGears.All, s_inputs, s_outputs, s_loads);

    [Fact]
    public void Each_point_is_the_best_of_the_modes_asked_one_by_one()
    {
        for (int i = 0; i < s_inputs.Length; i++)
        {
            for (int o = 0; o < s_outputs.Length; o++)
            {
                for (int l = 0; l < s_loads.Length; l++)
                {
                    MapPoint point = s_map.At(i, o, l);
                    Assert.Equal((s_inputs[i], s_outputs[o], s_loads[l]), (point.InputVolts, point.OutputVolts, point.LoadAmperes));
                    RegulatedPoint[] each = [.. InventedGears.All.Select(m => m.Hold(s_inputs[i], s_outputs[o], s_loads[l]))];
                    Assert.Equal(each.Select(p => p.Outcome), Enumerable.Range(0, 4).Select(point.OutcomeOf));
                    Assert.Equal(InventedGears.All.Where((_, m) => each[m].IsHeld), point.UsableModes);
                    Assert.Equal(each.Where(p => p.IsHeld).Min(p => p.InputWatts), point.Best.InputWatts);
                    Assert.Same(InventedGears.All[point.BestModeIndex!.Value], point.BestMode);
                    Assert.Equal(point.Best.Efficiency, point.Efficiency);
                    Assert.Equal(s_outputs[o] / s_inputs[i], point.LinearEfficiency!.Value, 1e-15);
                }
            }
        }
    }

    [Fact]
    public void No_efficiency_is_above_the_ideal_and_modes_without_parasitics_reach_it()
    {
        Assert.All(s_map.Points, p => Assert.True(p.Efficiency <= p.IdealEfficiency + 1e-12));
        OperatingMap ideal = OperatingMap.Of([InventedGears.IdealHalf], [3, 4], [1, 1.4], [1e-3]);
        Assert.All(ideal.Points, p => Assert.Equal(2 * p.OutputVolts / p.InputVolts, p.Efficiency!.Value, 1e-9));
        Assert.All(ideal.Points, p => Assert.Equal(p.IdealEfficiency!.Value, p.Efficiency!.Value, 1e-9));
    }

    [Fact]
    public void The_ideal_takes_the_lowest_ratio_that_reaches()
    {
        MapPoint At(double input, double output) => OperatingMap.Of(InventedGears.All, [input], [output], [1e-3]).At(0, 0);
        Assert.Equal(1.0 / (4 * 0.25), At(4, 1).IdealEfficiency!.Value, 1e-15);
        Assert.Equal(1.01 / (4 * (1.0 / 3)), At(4, 1.01).IdealEfficiency!.Value, 1e-15);
        Assert.Equal(0.75, At(4, 3).IdealEfficiency!.Value, 1e-15);
        Assert.Null(At(4, 4.1).IdealEfficiency);
        Assert.Null(At(4, 4.1).LinearEfficiency);
    }

    [Fact]
    public void The_average_weighs_by_energy()
    {
        double output = s_map.Points.Sum(p => p.Best.OutputWatts), loss = s_map.Points.Sum(p => p.Best.TotalLossWatts);
        Assert.Equal(output / (output + loss), s_map.AverageEfficiency!.Value, 1e-12);
        Assert.Equal(1, s_map.HeldShare);
    }

    [Fact]
    public void Any_number_of_threads_gives_the_same_to_the_byte()
    {
        OperatingMap single = OperatingMap.Of(InventedGears.All, s_inputs, s_outputs, s_loads, threads: 1);
        OperatingMap many = OperatingMap.Of(InventedGears.All, s_inputs, s_outputs, s_loads, threads: 7);
        for (int k = 0; k < single.Count; k++)
        {
            Assert.Equal(single.BestModeAt(k), many.BestModeAt(k));
            Assert.Equal(BitConverter.DoubleToInt64Bits(single.BestAt(k).FrequencyHz), BitConverter.DoubleToInt64Bits(many.BestAt(k).FrequencyHz));
            Assert.All(Enum.GetValues<LossKind>(), kind =>
                Assert.Equal(BitConverter.DoubleToInt64Bits(single.BestAt(k).LossOf(kind)), BitConverter.DoubleToInt64Bits(many.BestAt(k).LossOf(kind))));
        }
    }

    [Fact]
    public void Stress_is_that_of_the_element_next_to_its_rating()
    {
        // every switch of a half blocks half of the input or all of it, the capacitor holds half; two devices of 2 V in series withstand 4 V
        MapPoint point = OperatingMap.Of([InventedGears.Half], [3], [1.2], [1e-3]).At(0, 0);
        RatedStress stress = point.Stress!.Value;
        Assert.Equal(1.5 / 2, stress.Share, 1e-15);
        Assert.Contains(stress.Element, SeriesParallel.StepDown(2).Switches.Select(s => s.Name));
        Assert.Null(OperatingMap.Of([InventedGears.Linear], [3], [1.2], [1e-3]).At(0, 0).Stress);
    }

    [Fact]
    public void A_point_that_is_not_held_says_why()
    {
        MapPoint point = OperatingMap.Of([InventedGears.Half], [3], [1.6], [1e-3]).At(0, 0);
        Assert.False(point.IsHeld);
        Assert.Null(point.Efficiency);
        Assert.Empty(point.UsableModes);
        Assert.Equal("a ratio of 1/2 gives at most 1.5 V without load, and 1.6 V is wanted", point.ReasonOf(0));
    }

    [Fact]
    public void Work_can_be_ended_and_misuse_is_refused()
    {
        using CancellationTokenSource ended = new();
        ended.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => OperatingMap.Of(InventedGears.All, s_inputs, s_outputs, s_loads, cancellationToken: ended.Token));
        Assert.Throws<ArgumentException>(() => OperatingMap.Of([], s_inputs, s_outputs, s_loads));
        Assert.Throws<ArgumentException>(() => OperatingMap.Of(InventedGears.All, [], s_outputs, s_loads));
        Assert.Throws<ArgumentOutOfRangeException>(() => OperatingMap.Of(InventedGears.All, [-1], s_outputs, s_loads));
        Assert.Throws<ArgumentOutOfRangeException>(() => s_map.At(17, 0));
    }
}
