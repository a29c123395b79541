using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Tests.Analysis;

/// <summary>Voltages of inductors by hand, those included that meet at pieces of the network which nothing else touches.</summary>
public sealed class InductorVoltagesTests
{
    /// <remarks>
    /// Phase 1: vin = 1 and vout = 1/2 on one side, and two pieces: m with n a quarter below it, p with q an eighth below it. With the
    /// slopes of currents v/L, inverse inductances 1, 2, 3, 4 of a, b, d, e, at the first piece (1 - m) + 3 (q - m) = 2 (n - 1/2), at the
    /// second 3 (q - m) + 4 p = 0: m = 16/33 and p = 23/88. The resting inductor f takes no part, nor does g, which lies within the
    /// first piece, nor an idle capacitor on its own. Phase 2 holds m and p at vout.
    /// </remarks>
    [Fact]
    public void Pieces_that_inductors_alone_reach_settle_where_their_currents_stay_in_balance()
    {
        Converter converter = Converter.Create("pieces").Input("vin").Output("vout").Phases(2)
            .Capacitor("idle", "u", "w").Capacitor("c1", "m", "n").Capacitor("c2", "p", "q")
            .Switch("idle1", "u", "vin", on: 2).Switch("idle2", "w", "gnd", on: 2)
            .Switch("s", "m", "vout", on: 2).Switch("t", "p", "vout", on: 2)
            .Inductor("a", "vin", "m").Inductor("b", "n", "vout").Inductor("d", "q", "m").Inductor("e", "p", "gnd")
            .Inductor("f", "vin", "p", untilZero: 2).Inductor("g", "m", "n")
            .Build();
        SwitchedNetwork network = converter.Network;
        PhaseForest[] forests = [.. Enumerable.Range(0, 2).Select(phase => PhaseForest.Of(network, network.ClosedIn(0, phase)))];
        LoopSet loops = LoopSet.Of(network, forests, RestingCurrents.Of(network, forests, converter.Modes[0]));
        Assert.True(loops.HasMeshes);

        var branches = new Rational<long>[network.BranchCount];
        (branches[0], branches[1], branches[2]) = (Rational<long>.One, Rational<long>.Of(1, 4), Rational<long>.Of(1, 8));
        (branches[network.InputBranch], branches[network.OutputBranch]) = (Rational<long>.One, Rational<long>.Of(1, 2));
        Rational<long>[] voltages = new InductorVoltages<long>(network, forests, loops, [1, 2, 3, 4, 5, 7]).Of(branches);
        Fraction[] expected =
        [
            new(17, 33), new(1, 2),
            new(-35, 132), new(-1, 4),
            new(-23, 66), new(-1, 8),
            new(23, 88), new(1, 2),
            0, new(1, 2),
            new(1, 4), new(1, 4),
        ];
        Assert.Equal(expected, voltages.Select(v => new Fraction(v.Numerator, v.Denominator)));
    }
}
