using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Tests.Analysis;

/// <summary>The equations of ripple by hand, for two inductors that see four capacitors in turn.</summary>
public sealed class StraightLineRippleTests
{
    /// <remarks>
    /// Phases of weight 1, 1, 1, 2. The first inductor sees c1, c2, c3, c4, the second c3, c2, c1, c4. Twice v w (p + w v / 2) has, with the
    /// charges w (2 p + w v): of V = 1 2 -1 -1, 1 4 5 4 and (in the second's order -1 2 1 -1) -1 0 3 4; of G = 0 2 0 -1, 0 2 4 4 in both.
    /// F = 1 -1 0 0 (0 -1 1 0) takes off them 1 - 4 = -3 and 0 + 3 = 3 of V, -2 and -2 + 4 = 2 of G; G takes 8 - 4 = 4 and 0 - 4 = -4 of V.
    /// With 1/L = 2 and 5: F on G is -4 + 10, F on V -6 + 15, G on V 8 - 20.
    /// </remarks>
    [Fact]
    public void Each_inductor_counts_with_its_own_voltages_and_its_inverse_inductance()
    {
        Converter converter = Converter.Create("in turn").Input("vin").Output("vout").Duties(0.2, 0.2, 0.2, 0.4)
            .Capacitor("c1", "a", "gnd").Capacitor("c2", "b", "gnd").Capacitor("c3", "c", "gnd").Capacitor("c4", "d", "gnd")
            .Switch("through", "vin", "vout", on: 1)
            .Inductor("first", "x", "gnd").Switch("xa", "x", "a", on: 1).Switch("xb", "x", "b", on: 2).Switch("xc", "x", "c", on: 3).Switch("xd", "x", "d", on: 4)
            .Inductor("second", "y", "gnd").Switch("yc", "y", "c", on: 1).Switch("yb", "y", "b", on: 2).Switch("ya", "y", "a", on: 3).Switch("yd", "y", "d", on: 4)
            .Build();
        SwitchedNetwork network = converter.Network;
        PhaseForest[] forests = [.. Enumerable.Range(0, 4).Select(phase => PhaseForest.Of(network, network.ClosedIn(0, phase)))];
        long[] inverseHenries = [2, 5];
        InductorVoltages<long> inductors = new(network, forests, LoopSet.Of(network, forests), inverseHenries);
        VoltageSpace<long> space = new(Voltages(1, 2, -1, -1), [Voltages(1, -1, 0, 0), Voltages(0, 2, 0, -1)]);

        Rational<long>[][] equations = StraightLineRipple.Equations(space, inductors, inverseHenries, [1, 1, 1, 2]);
        Assert.Equal([[0, 6, 9], [-6, 0, -12]], equations.Select(e => e.Select(v => v.Denominator == 1 ? v.Numerator : throw new InvalidOperationException("a fraction")).ToArray()));

        Rational<long>[] Voltages(params long[] capacitors)
        {
            var branches = new Rational<long>[network.BranchCount];
            Array.ConvertAll(capacitors, Rational<long>.Of).CopyTo(branches, 0);
            return branches;
        }
    }
}
