using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Tests.Analysis;

/// <summary>Loops in words: Kirchhoff's voltage law round each, written down here by hand.</summary>
public sealed class LoopDescriptionsTests
{
    /// <summary>
    /// Nine phases. Two capacitors side by side close a loop in each; c1 to c7 hang from the input in series, of which phase 1
    /// grounds the end of six, phase 2 that of all seven, and phase 3 stacks c1 on a capacitor that stands on its head.
    /// </summary>
    private static readonly Converter s_converter = Row();
    private static readonly PhaseForest[] s_forests =
        [.. Enumerable.Range(0, 9).Select(p => PhaseForest.Of(s_converter.Network, s_converter.Network.ClosedIn(0, p)))];

    private readonly LoopSet _loops = LoopSet.Of(s_converter.Network, s_forests);
    private readonly LoopDescriptions _descriptions;

    public LoopDescriptionsTests()
    {
        _descriptions = new(s_converter, s_forests, _loops);
    }

    [Fact]
    public void A_loop_is_solved_for_its_first_capacitor_with_what_adds_first_and_later_branches_before_earlier_ones()
    {
        Assert.Equal("phase 1 (six) through top, end6: c1 = vin - c6 - c5 - c4 - c3 - c2", _descriptions.Demands([Loop(0, "c1")]));
        Assert.Equal("phase 2 (seven) through top, end7: c1 = vin - c7 - c6 - c5 - c4 - c3 and 1 more terms", _descriptions.Demands([Loop(1, "c1")]));
        Assert.Equal("phase 3 (head) through top, foot: c1 = vin + head", _descriptions.Demands([Loop(2, "c1")]));
        Assert.Equal("phase 4 (4th): a = b", _descriptions.Demands([Loop(3, "a")]));
    }

    [Fact]
    public void Eight_loops_are_told_and_of_more_their_number()
    {
        int[] twins = [.. Enumerable.Range(0, 9).Select(p => Loop(p, "a"))];
        string eight = "phase 1 (six): a = b; phase 2 (seven): a = b; phase 3 (head): a = b; phase 4 (4th): a = b; phase 5 (5th): a = b; "
            + "phase 6 (6th): a = b; phase 7 (7th): a = b; phase 8 (8th): a = b";

        Assert.Equal(eight, _descriptions.Demands(twins[..8]));
        Assert.Equal(eight + "; and 1 more", _descriptions.Demands(twins));
    }

    [Fact]
    public void Elements_are_capacitors_inductors_and_switches_each_once_and_in_the_order_of_the_converter()
    {
        int coil = Enumerable.Range(_loops.VoltageLoopCount, _loops.Count - _loops.VoltageLoopCount).First(l => _loops.Phase(l) == 0);

        Assert.Equal(["c1", "c2", "c3", "c4", "c5", "c6", "coil", "top", "end6"], _descriptions.Elements([coil, Loop(0, "c1")]));
        Assert.Equal(["c1", "head", "coil", "top", "foot"], _descriptions.Elements([Loop(2, "c1"), coil]));
        Assert.Equal(["a", "b"], _descriptions.Elements([Loop(0, "a"), Loop(1, "a")]));
    }

    private int Loop(int phase, string capacitor) => Enumerable.Range(0, _loops.VoltageLoopCount).Single(l =>
        _loops.Phase(l) == phase && _loops.Branches(l).Contains(Array.FindIndex([.. s_converter.Capacitors], c => c.Name == capacitor)));

    private static Converter Row()
    {
        ConverterBuilder builder = Converter.Create("row").Input("vin").Output("vout")
            .PhaseNames("six", "seven", "head", "4th", "5th", "6th", "7th", "8th", "9th")
            .Capacitor("c1", "p0", "p1");
        for (int k = 2; k <= 7; k++)
        {
            builder.Capacitor($"c{k}", $"p{k - 1}", $"p{k}");
        }

        return builder.Capacitor("head", "gnd", "h").Capacitor("a", "q", "r").Capacitor("b", "q", "r")
            .Switch("top", "vin", "p0", on: [1, 2, 3, 4, 5, 6, 7, 8, 9])
            .Switch("foot", "p1", "h", on: 3).Switch("end6", "p6", "gnd", on: 1).Switch("end7", "p7", "gnd", on: 2)
            .Inductor("coil", "p0", "vout").Build();
    }
}
