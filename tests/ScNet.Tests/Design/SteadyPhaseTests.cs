using System.Numerics;
using ScNet.Design;
using ScNet.Kernel;

namespace ScNet.Tests.Design;

/// <summary>A load current of one that capacitors at the output deliver in proportion to their capacitance.</summary>
public sealed class SteadyPhaseTests
{
    // 1 F and 3 F, the second written from the reference: it is discharged by a current into its first terminal
    [Theory]
    [InlineData(false, -3)]
    [InlineData(true, 3)]
    public void Capacitors_in_parallel_share_a_current_by_their_capacitances(bool isTurned, int second)
    {
        Converter converter = Outputs(isTurned);
        SteadyPhase phase = Of(converter, 2, true, true)!;
        Assert.Equal([Ratio(-1, 4), Ratio(second, 4)], phase.Charge);
        Assert.Equal(2, phase.Number);
        Assert.Equal([true, true, false], phase.Closed);

        // round the loop both are passed once, against each other
        Rational<BigInteger>[] loop = Assert.Single(phase.Loops);
        Assert.Equal(Ratio(isTurned ? 1 : -1, 1), loop[0] * loop[1]);
        Assert.Equal(Ratio(1, 1), loop[0] * loop[0]);
    }

    [Fact]
    public void An_open_switch_leaves_the_current_to_what_is_left()
    {
        SteadyPhase phase = Of(Outputs(false), 1, false, false)!;
        Assert.Equal([Ratio(-1, 1), Ratio(0, 1)], phase.Charge);
        Assert.Empty(phase.Loops);
        Assert.NotEqual(phase.Key, Of(Outputs(false), 1, true, true)!.Key);

        // one of two switches in series open is as good as both
        Assert.Equal(phase.Key, Of(Outputs(false), 1, false, true)!.Key);
        Assert.Equal(phase.Key, Of(Outputs(false), 1, true, false)!.Key);
    }

    [Fact]
    public void A_current_without_a_path_has_no_phase()
    {
        Converter converter = Converter.Create("off").Input("vin").Output("vout", LoadKind.Current).Capacitor("a", "vout", "m", 1).Switch("s", "m", "gnd", 1).Switch("idle", "vin", "vout", 1).Build();
        Assert.Null(Of(converter, 1, false));
        Assert.Equal([Ratio(-1, 1)], Of(converter, 1, true)!.Charge);
    }

    // the source and the capacitor are a loop by themselves, in which no load current flows
    [Fact]
    public void A_capacitor_across_the_input_is_a_loop_without_current()
    {
        Converter converter = Converter.Create("in").Input("vin").Output("vout", LoadKind.Current).Capacitor("in", "vin", "gnd", 1).Capacitor("out", "vout", "gnd", 3).Switch("idle", "vin", "vout", 1).Build();
        SteadyPhase phase = Of(converter, 1)!;
        Assert.Equal([Ratio(0, 1), Ratio(-1, 1)], phase.Charge);
        Rational<BigInteger>[] loop = Assert.Single(phase.Loops);
        Assert.Equal([Ratio(1, 1), Ratio(0, 1)], [loop[0] * loop[0], loop[1]]);
    }

    // the capacitor and the output are a loop, the output and the input one without capacitors
    [Fact]
    public void An_output_that_is_joined_to_the_input_is_in_no_loop_of_its_own()
    {
        Converter converter = Converter.Create("through").Input("vin").Output("vout").Capacitor("out", "vout", "gnd", 1).Inductor("coil", "x", "vout").Switch("s", "vin", "x", 1).Switch("through", "vin", "vout", 1).Build();
        SteadyPhase phase = SteadyPhase.Of(converter.Network, Ones(1), Ones(1), 1, [true, true])!;
        Assert.Equal([Ratio(0, 1)], phase.Charge);
        Assert.Single(phase.Loops);
    }

    // the coil's current returns through the stiff output and the input: the capacitor at the output takes none
    [Fact]
    public void A_capacitor_across_a_stiff_output_is_a_loop_without_current()
    {
        Converter converter = Converter.Create("stiff").Input("vin").Output("vout").Capacitor("out", "vout", "gnd", 1).Inductor("coil", "x", "vout").Switch("s", "vin", "x", 1).Build();
        SteadyPhase phase = SteadyPhase.Of(converter.Network, Ones(1), Ones(1), 1, [true])!;
        Assert.Equal([Ratio(0, 1)], phase.Charge);
        Rational<BigInteger> once = Assert.Single(phase.Loops)[0];
        Assert.Equal(Ratio(1, 1), once * once);
    }

    // the coil of a current of two from "a" to "b": the capacitor back carries it, and half of it where a second of equal size stands beside
    [Fact]
    public void Currents_add_in_the_capacitors_through_which_they_return()
    {
        Converter converter = Converter.Create("coil").Input("vin").Output("vout", LoadKind.Current).Capacitor("out", "vout", "gnd", 1).Capacitor("c", "b", "a", 1)
            .Inductor("coil", "a", "b").Capacitor("d", "b", "n", 1).Switch("s", "n", "a", 1).Switch("t", "a", "vout", 1).Switch("idle", "vin", "vout", 1).Build();
        SwitchedNetwork network = converter.Network;
        Rational<BigInteger>[] currents = [.. network.HeldCurrents.AsSpan(0, network.HeldCurrentCount).ToArray().Select(b => Ratio(b == network.FirstInductorBranch ? 2 : 1, 1))];
        Assert.Equal([Ratio(-1, 1), Ratio(2, 1), Ratio(0, 1)], SteadyPhase.Of(network, Ones(3), currents, 1, [false, false, false])!.Charge);
        Assert.Equal([Ratio(-1, 1), Ratio(1, 1), Ratio(1, 1)], SteadyPhase.Of(network, Ones(3), currents, 1, [true, true, false])!.Charge);
    }

    private static Converter Outputs(bool isTurned) => Converter.Create("outputs").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("a", "vout", "gnd", 1).Capacitor("b", isTurned ? "n" : "m", isTurned ? "m" : "n", 3)
        .Switch("s", "m", "vout", 1).Switch("t", "n", "gnd", 1).Switch("idle", "vin", "vout", 1).Build();

    // the switch that joins the input is open throughout
    private static SteadyPhase? Of(Converter converter, int number, params bool[] closed) =>
        SteadyPhase.Of(converter.Network, [Ratio(1, 1), Ratio(1, 3)], [Ratio(1, 1)], number, [.. closed, false]);

    private static Rational<BigInteger>[] Ones(int count) => [.. Enumerable.Repeat(Ratio(1, 1), count)];

    private static Rational<BigInteger> Ratio(int numerator, int denominator) => Rational<BigInteger>.Of(numerator, denominator);
}
