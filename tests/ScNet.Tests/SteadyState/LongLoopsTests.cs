using ScNet.Kernel;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Loops of more than four branches, of which a phase may have two, and loops that a held current closes; elastances are 1/farads.</summary>
public sealed class LongLoopsTests
{
    private const string Ground = Converter.ReferenceNode;

    // rows of four capacitors across the input, and beside them a capacitor that shares nothing with them
    [Theory]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(3, false)]
    [InlineData(4, false)]
    public void More_than_two_long_loops_are_too_many(int rows, bool isFound)
    {
        ConverterBuilder builder = Start().Switch("s", "vin", "f", on: 1).Capacitor("fly", "f", Ground);
        for (int row = 0; row < rows; row++)
        {
            builder.Switch($"s{row}", "vin", $"{row} top", on: 1)
                .Capacitor($"{row} a", $"{row} top", $"{row} m").Capacitor($"{row} b", $"{row} m", $"{row} n")
                .Capacitor($"{row} c", $"{row} n", $"{row} o").Capacitor($"{row} d", $"{row} o", Ground);
        }

        Assert.Equal(isFound, Loops(builder) is not null);
    }

    /// <summary>
    /// Three ways from "m" to the reference: one capacitor, and twice four. The loops of the first way with the second and the third run
    /// through it against one another, so that their sum leaves it out: 4 · 2 and 4 · 4.
    /// </summary>
    [Fact]
    public void Two_long_loops_that_run_against_one_another_are_added()
    {
        ChainLoops? loops = Loops(Start().Capacitor("a", "m", Ground)
            .Capacitor("b1", Ground, "x1", 0.5).Capacitor("b2", "x1", "x2", 0.5).Capacitor("b3", "x2", "x3", 0.5).Capacitor("b4", "x3", "m", 0.5)
            .Capacitor("c1", Ground, "z1", 0.25).Capacitor("c2", "z1", "z2", 0.25).Capacitor("c3", "z3", "z2", 0.25).Capacitor("c4", "z3", "m", 0.25));
        Assert.NotNull(loops);
        Assert.Equal([8 + 16], loops.Elastance);
        Assert.Equal(8, Assert.Single(loops.Shared));

        // the long one has a and the b, of which the sum takes its share: 1 + 8 - 8²/24
        Assert.Equal(1 + 8 - (64 / 24.0), loops.LongElastance, 1e-14);
    }

    [Fact]
    public void A_held_current_is_none_to_work_on_though_its_loop_shares_nothing() =>
        Assert.Null(Loops(Converter.Create("apart").Input("vin").Output("vout", LoadKind.Current)
            .Switch("s1", "vin", "p", on: 1).Capacitor("fly", "p", Ground).Switch("s2", "p", "vout", on: 2).Capacitor("out", "vout", Ground)));

    // both ports are touched in the other phase
    private static ConverterBuilder Start() => Converter.Create("loops").Input("vin").Output("vout")
        .Switch("off", "vin", "vout", on: 2).Switch("off out", "vout", Ground, on: 2);

    // every switch and every series resistance has a place
    private static ChainLoops? Loops(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return ChainLoops.TryOf(
            converter, PhaseForest.Of(converter.Network, converter.Network.ClosedIn(0, 0)), converter.Switches.Count + converter.Capacitors.Count, r => r);
    }
}
