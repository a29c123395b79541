using System.Numerics;
using ScNet.Design;
using ScNet.Kernel;

namespace ScNet.Tests.Design;

/// <summary>
/// The ways to split phases in which switches join capacitors to an output with a load current. Of two such switches three
/// parts are left: either open, or both.
/// </summary>
public sealed class PhaseSplitsTests
{
    private static readonly Converter s_converter = Converter.Create("outputs").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("a", "vout", "gnd", 1).Capacitor("b", "m", "gnd", 1).Capacitor("c", "n", "gnd", 1)
        .Switch("s", "m", "vout", 1).Switch("t", "n", "vout", 1).Switch("idle", "vin", "vout", 1).Build();

    private static readonly Rational<BigInteger>[] s_ones = [.. Enumerable.Repeat(Rational<BigInteger>.One, 3)];

    // one cut: each of three parts before or after; two: the last part and one of the first two before or after, or two of three around
    [Fact]
    public void A_phase_is_split_in_all_ways_fewest_cuts_first()
    {
        string[] ways = Ways([true, true]);
        Assert.Equal("11", ways[0]);
        Assert.Equal(["01 11", "11 01", "10 11", "11 10", "00 11", "11 00"], ways[1..7]);
        Assert.Equal(["00 01 11", "11 01 00", "00 10 11", "11 10 00"], ways[7..11]);
        string[] parts = ["01", "10", "00"];
        Assert.Equal(parts.SelectMany(a => parts.Select(b => $"{a} 11 {b}")), ways[11..]);
    }

    [Fact]
    public void A_phase_without_loops_is_not_split()
    {
        Assert.Equal(["00"], Ways([false, false]));
        Assert.Equal(20, Ways([false, false], [true, true]).Length);
        Assert.All(Ways([false, false], [true, true]), way => Assert.StartsWith("00 ", way, StringComparison.Ordinal));
    }

    // 1 whole, 6 + 6 with one cut, 13 + 36 + 13 with two, 6 · 13 twice with three and 13 · 13 with four
    [Fact]
    public void Ways_of_two_phases_are_combined_by_their_cuts()
    {
        string[] ways = Ways([true, true], [true, true]);
        Assert.Equal(400, ways.Length);
        int[] counts = [1, 12, 62, 156, 169];
        Assert.Equal(counts.SelectMany((count, cuts) => Enumerable.Repeat(cuts + 2, count)), ways.Select(w => w.Split(' ').Length));
        Assert.Equal("11 01 11", ways[1]);
        Assert.Equal("01 11 11", ways[7]);
    }

    // what hangs at the second switch carries nothing and is in no loop: only the first makes a part
    [Fact]
    public void A_switch_that_leads_nowhere_makes_no_part()
    {
        Converter hanging = Converter.Create("hanging").Input("vin").Output("vout", LoadKind.Current).Capacitor("a", "vout", "gnd", 1).Capacitor("b", "m", "gnd", 1)
            .Capacitor("c", "n", "apart", 1).Switch("s", "m", "vout", 1).Switch("t", "n", "vout", 1).Switch("idle", "vin", "vout", 1).Build();
        Assert.Equal(["11", "01 11", "11 01", "01 11 01"], Told(new PhaseSplits(
            [[true, true, false]], (number, closed) => SteadyPhase.Of(hanging.Network, s_ones, s_ones[..1], number, closed))));
    }

    [Fact]
    public void A_thousand_ways_are_tried_at_most() => Assert.Equal(1000, Ways([true, true], [true, true], [true, true]).Length);

    // of eight switches in a ring any three may be open, or more that are neighbours: 8 + 28 + 56 + 8 = 100 parts up to four, each before or after the whole
    [Fact]
    public void Beyond_a_hundred_parts_no_more_switches_are_opened()
    {
        const int Count = 8;
        ConverterBuilder builder = Converter.Create("ring").Input("vin").Output("vout", LoadKind.Current).Capacitor("out", "vout", "gnd", 1);
        for (int k = 0; k < Count; k++)
        {
            builder.Capacitor($"c{k}", $"n{k}", "gnd", 1).Switch($"s{k}", $"n{k}", "vout", 1);
        }

        Converter ring = builder.Switch("idle", "vin", "vout", 1).Build();
        Rational<BigInteger>[] ones = [.. Enumerable.Repeat(Rational<BigInteger>.One, Count + 1)];
        Dictionary<string, SteadyPhase?> made = [];
        PhaseSplits splits = new([[.. Enumerable.Repeat(true, Count), false]], (number, closed) =>
        {
            string key = string.Concat(closed.Select(c => c ? '1' : '0'));
            if (!made.TryGetValue(key, out SteadyPhase? phase))
            {
                int edges = Enumerable.Range(0, Count).Count(k => closed[k] != closed[(k + 1) % Count]), open = closed.Take(Count).Count(c => !c);
                made[key] = phase = open > 3 && edges > 2 ? null : SteadyPhase.Of(ring.Network, ones, ones[..1], number, closed);
            }

            return phase;
        });
        Assert.Equal(200, splits.All().Count(way => way.Count == 2));
    }

    [Fact]
    public void The_whole_is_every_phase_as_it_is()
    {
        Assert.Equal([1, 2], Splits([true, true], [false, false]).Whole!.Select(p => p.Number));
        Assert.Null(new PhaseSplits([[true], [true]], (number, _) => number == 1 ? null : Phase(number, [true, true, false])).Whole);
        Assert.Empty(new PhaseSplits([[true], [true]], (number, _) => number == 1 ? null : Phase(number, [true, true, false])).All());
    }

    private static string[] Ways(params bool[][] closed) => Told(Splits(closed));

    private static string[] Told(PhaseSplits splits) =>
        [.. splits.All().Select(way => string.Join(' ', way.Select(p => string.Concat(p.Closed[..2].Select(c => c ? '1' : '0')))))];

    // the switch that joins the input is open throughout
    private static PhaseSplits Splits(params bool[][] closed) => new([.. closed.Select(c => (bool[])[.. c, false])], Phase);

    private static SteadyPhase? Phase(int number, bool[] closed) => SteadyPhase.Of(s_converter.Network, s_ones, s_ones[..1], number, closed);
}
