using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Netlists;

namespace ScNet.Tests.Design.Sizing;

/// <summary>A halver of one capacitor, or of two in parallel that share the charge by their capacitances.</summary>
public sealed class DecidedByValuesTests
{
    private static readonly ConverterAnalysis s_gears = ConverterAnalysis.Of(NetlistReader.Read("""
        name = "weak and strong"
        input = "vin"
        output = "vout"
        [capacitors]
        c1 = { between = ["p", "n"] }
        c2 = { between = ["p", "x"] }
        [switches]
        a = { between = ["vin", "p"] }
        d = { between = ["vout", "p"] }
        e = { between = ["vout", "n"] }
        g = { between = ["gnd", "n"] }
        h = { between = ["x", "n"] }
        [modes.weak]
        a = 1
        d = 2
        e = 1
        g = 2
        [modes.strong]
        a = 1
        d = 2
        e = 1
        g = 2
        h = [1, 2]
        """).GetConverter());

    private static readonly SizingPoint s_weak = new("weak", 2, 0.9, 1e-4), s_strong = s_weak with { Mode = "strong" };

    [Fact]
    public void Topology_decides_only_where_it_does_in_every_mode()
    {
        Assert.True(Certificate(s_weak).IsTopologyDecided);
        Assert.False(Certificate(s_strong).IsTopologyDecided);
        Assert.False(Certificate(s_weak, s_strong).IsTopologyDecided);
        Assert.False(Certificate(s_strong, s_weak).IsTopologyDecided);
    }

    // sizes move the flow, so that each program finds others: what one of them was certified with is kept
    [Fact]
    public void A_search_that_does_not_settle_ends_after_25_programs_with_the_gap_that_it_has()
    {
        OptimalityCertificate certificate = Certificate(s_strong);
        Assert.InRange(certificate.Rounds, 1, 25);
        Assert.InRange(certificate.RelativeGap, 0, 0.01);
    }

    private static OptimalityCertificate Certificate(params SizingPoint[] points) =>
        SizedDesign.Of(s_gears, InventedSizing.Process(), points, new AreaBudget(1e-7), InventedSizing.Frequencies).Certificate!;
}
