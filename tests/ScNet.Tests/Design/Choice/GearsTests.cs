using Fractions;
using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>The gears of a recursive cascade of two cells, quarters, that a range of ratios leaves.</summary>
public sealed class GearsTests
{
    private static readonly Fraction s_quarter = new(1, 4), s_half = new(1, 2), s_third = new(1, 3);

    [Fact]
    public void What_lies_in_the_range_stays_and_what_reaches_its_end_is_enough()
    {
        Assert.Equal(["1/4", "1/2"], Names(s_quarter, s_half));
        Assert.Equal(["1/2"], Names(s_third, s_half));
        Assert.Equal(["1/2", "3/4"], Names(s_third, new(3, 5)));
        Assert.Equal(["3/4"], Names(new(3, 5), new(4, 5)));
        Assert.Null(Gears.Within(RecursiveCascade.Reconfigurable(2), new(new(4, 5), new(9, 10))));
    }

    [Fact]
    public void Gears_keep_their_ratios_and_switches_that_stay_open_are_left_out()
    {
        Converter all = RecursiveCascade.Reconfigurable(2, farads: 3e-9, ohms: 2), kept = Gears.Within(all, new(s_quarter, s_half))!, one = Gears.Within(all, new(s_half, s_half))!;
        Assert.Equal([s_quarter, s_half], ConverterAnalysis.Of(kept).Results.Select(m => m.Ratio.ToFraction()));
        Assert.Equal(s_half, ModeAnalysis.Of(one).Ratio.ToFraction());
        Assert.True(one.Switches.Count < all.Switches.Count);
        foreach (Converter converter in new[] { kept, one })
        {
            Assert.All(Enumerable.Range(0, converter.Switches.Count), s => Assert.Contains(converter.Modes, m => m.ClosedPhases[s].Count > 0));
            Assert.All(converter.Capacitors, c => Assert.Equal(3e-9, c.Farads));
            Assert.All(converter.Switches, s => Assert.Equal(2, s.Ohms));
            Assert.Equal(all.Capacitors.Count, converter.Capacitors.Count);
        }
    }

    private static IEnumerable<string> Names(Fraction least, Fraction most) => Gears.Within(RecursiveCascade.Reconfigurable(2), new(least, most))!.Modes.Select(m => m.Name);
}
