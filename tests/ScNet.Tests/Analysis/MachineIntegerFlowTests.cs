using System.Numerics;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Tests.Analysis;

/// <summary>Where machine integers do not hold a flow or its squares this is told, and with room for any integer the sums are exact.</summary>
public sealed class MachineIntegerFlowTests
{
    private const long Large = 4_000_000_000;

    [Fact]
    public void Squares_that_do_not_fit_are_refused()
    {
        Assert.Throws<OverflowException>(() => LimitCoefficients.Fast<long>([Rational<long>.Of(Large)], 1, [Rational<long>.One]));
        Assert.Throws<OverflowException>(() => LimitCoefficients.Fast<long>([Rational<long>.Of(1, Large), Rational<long>.Of(1, 3)], 1, [Rational<long>.One, Rational<long>.One]));
        Assert.Throws<OverflowException>(() => LimitCoefficients.Slow<long>([Rational<long>.Of(Large), Rational<long>.Of(1, 3)], 1, 2));
        Assert.Equal(
            [Quantity.Exact(new Fractions.Fraction(new BigInteger(Large) * Large))],
            LimitCoefficients.Fast<BigInteger>([Rational<BigInteger>.Of(Large)], 1, [Rational<BigInteger>.One]));
    }

    // 1/4 · 1/2 + 1/9 · 3 + 0 + 1/4 · 5, and a second element that carries nothing
    [Fact]
    public void Squares_of_unlike_denominators_add_exactly() => Assert.Equal(
        [Quantity.Exact(41, 24), Quantity.Zero],
        LimitCoefficients.Fast<long>(
            [Rational<long>.Of(1, 2), Rational<long>.Of(-1, 3), Rational<long>.Zero, Rational<long>.Of(-1, 2), default, default, default, default],
            2,
            [Rational<long>.Of(1, 2), Rational<long>.Of(3), Rational<long>.Of(7), Rational<long>.Of(5)]));

    /// <summary>
    /// Two loops of two capacitors each, closed over one switch from n to the reference in both phases: what goes up through a1
    /// and a2 comes through the switch, which has to carry both.
    /// </summary>
    [Fact]
    public void Charges_that_do_not_fit_through_a_switch_are_refused_in_however_many_phases()
    {
        SwitchedNetwork network = Converter.Create("two loops").Input("vin").Output("vout")
            .Capacitor("a1", "m", "n").Capacitor("c1", "m", "gnd").Capacitor("a2", "k", "n").Capacitor("c2", "k", "gnd")
            .Switch("s", "n", "gnd", on: [1, 2]).Switch("feed", "vin", "vout", on: 1).Build().Network;
        PhaseForest[] forests = [.. Enumerable.Range(0, 2).Select(p => PhaseForest.Of(network, network.ClosedIn(0, p)))];
        LoopSet loops = LoopSet.Of(network, forests);
        Rational<long>[] Charges(long first, long second) =>
            [.. Enumerable.Range(0, loops.Count).Select(l => Rational<long>.Of(loops.Branches(l)[0] >= 4 ? 0 : loops.Phase(l) == 0 ? first : second))];

        BranchFlow<long> flow = BranchFlow<long>.Of(network, forests, loops, Charges(3, 1));
        Assert.Equal([-3, -1, 3, 1, -3, -1, 3, 1, 0, 0, 0, 0], flow.Branches.Select(c => c.Numerator));
        Assert.Equal([-6, -2, 0, 0], flow.Switches.Select(c => c.Numerator));
        Assert.Throws<OverflowException>(() => BranchFlow<long>.Of(network, forests, loops, Charges(long.MaxValue, 0)));
        Assert.Throws<OverflowException>(() => BranchFlow<long>.Of(network, forests, loops, Charges(0, long.MaxValue)));
        Assert.Throws<OverflowException>(() => BranchFlow<long>.Of(network, forests, loops, Charges(long.MaxValue, long.MaxValue)));
    }
}
