using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Tests.Analysis;

/// <summary>
/// A divider in phases 1 and 2 onto a capacitor from which a coil takes its current in phase 3: by hand. The ratio is 1/4, the coil's
/// current 1, mid gives 1/2 in phase 3 and gets 1/4 in either of the others, from fly.
/// </summary>
public sealed class SteadyShareTests
{
    private readonly Converter _converter = Converter.Create("in turn").Input("vin").Output("vout").Duties(new Fraction(1, 4), new(1, 4), new(1, 2))
        .Capacitor("fly", "p", "n").Capacitor("mid", "m", "gnd", farads: 2)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "m", on: 1).Switch("s3", "p", "m", on: 2).Switch("s4", "n", "gnd", on: 2)
        .Switch("high", "m", "x", on: 3).Switch("low", "x", "gnd", on: [1, 2]).Inductor("coil", "x", "vout").Build();

    [Fact]
    public void What_no_loop_joins_with_a_held_current_shares_exactly()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(_converter);
        Assert.Equal("[1/4, -1/4, 0]", analysis.Capacitors["fly"].Charge.ToString());
        Assert.Equal("[1/4, 1/4, -1/2]", analysis.Capacitors["mid"].Charge.ToString());

        // half the squares of what impulses bring: a quarter twice to either, of fly into 1 and of mid into 2 farads
        Assert.Equal([Quantity.Exact(1, 16), Quantity.Exact(1, 16)], analysis.ChargeSharing!.Coefficients);
        Assert.Equal((1.0 / 16) + (1.0 / 32), analysis.ChargeSharing.OhmsAtOneHertz, 1e-16);
    }

    [Fact]
    public void The_steady_part_of_a_few_charges_is_what_the_coil_takes_from_the_middle()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(_converter);
        SwitchedNetwork network = _converter.Network;
        int coil = network.FirstInductorBranch * 3;
        SparseVector charges = SparseVector.Of([0, 3, 5, coil, coil + 1, coil + 2], [7, 7, 7, 0.25, 0.25, 0.5]);
        SparseVector steady = SteadyShare.Of(_converter, analysis.Topology, charges);
        Assert.Equal([(5, -0.5)], steady.Indices.ToArray().Zip(steady.Values.ToArray()));
    }
}
