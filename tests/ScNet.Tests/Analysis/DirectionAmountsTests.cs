using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Tests.Analysis;

/// <summary>
/// Flows of both limits by hand, as totals: topology's flow with the amounts of all directions, whichever directions were found.
/// </summary>
public sealed class DirectionAmountsTests
{
    private const double Tolerance = 1e-14;

    [Fact]
    public void Without_series_resistance_capacitors_side_by_side_share_by_capacitance_in_the_fast_limit_too()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("side by side").Input("vin").Output("vout")
            .Capacitor("a", "p", "n", farads: 1).Capacitor("b", "p", "n", farads: 3)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build());

        // charges of 1/8 and 3/8 in phases of a half
        Assert.Equal(4 / 64.0, analysis.FastSwitchingLimit.CapacitorCoefficients["a"].ToDouble(), Tolerance);
        Assert.Equal(4 * 9 / 64.0, analysis.FastSwitchingLimit.CapacitorCoefficients["b"].ToDouble(), Tolerance);
        Assert.Equal(2, analysis.FastSwitchingLimit.Ohms, Tolerance);
    }

    // A divider in phases 1 and 2 with two capacitors side by side, then two coils side by side: 1/4 of charge by capacitance, a current
    // of 1 by inverse inductance, of whatever size. The coils have no windings' resistance, and slowly they are one to their capacitors.
    [Theory]
    [InlineData(1)]
    [InlineData(1e-7)]
    [InlineData(1e-16)]
    public void Coils_share_by_inductance_beside_capacitors_that_share_by_capacitance(double henries)
    {
        Converter converter = Converter.Create("twins").Input("vin").Output("vout").Duties(0.25, 0.25, 0.5)
            .Capacitor("a", "p", "n", farads: 1).Capacitor("b", "p", "n", farads: 3).Capacitor("mid", "m", "gnd")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "m", on: 1).Switch("s3", "p", "m", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("high", "m", "x", on: 3).Switch("low", "x", "gnd", on: [1, 2])
            .Inductor("c1", "x", "vout", henries: henries).Inductor("c2", "x", "vout", henries: 3 * henries).Build();
        double[] capacitors = [1 / 16.0, -1 / 16.0, 0, 3 / 16.0, -3 / 16.0, 0, 0.25, 0.25, -0.5], output = [0.25, 0.25, 0.5], input = [-0.25, 0, 0];
        AssertFlows(converter, [.. capacitors, .. output, .. input, 3 / 16.0, 3 / 16.0, 3 / 8.0, 1 / 16.0, 1 / 16.0, 1 / 8.0], null);
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        Assert.Equal("[1/4, 1/4, -1/2]", analysis.ChargeFlow.Capacitors["mid"].ToString());
        foreach (string name in (string[])["a", "b"])
        {
            double[] charges = [.. analysis.ChargeFlow.Capacitors[name].Select(q => q.ToDouble())];
            AssertNear(name == "a" ? capacitors[..3] : capacitors[3..6], charges);

            // by capacitance in the fast limit too: twice the square of the charge over a quarter
            Assert.Equal(8 * charges[0] * charges[0], analysis.FastSwitchingLimit.CapacitorCoefficients[name].ToDouble(), Tolerance);
        }
    }

    // Fast: two windings of 16 Ω beside 1/D1 + 3/D2 = 8 Ω of switched capacitor. Slow: all takes the windings, which are soft.
    [Fact]
    public void Windings_beside_a_capacitor_take_its_charge_at_low_frequency() => AssertFlows(
        Converter.Create("windings").Input("vin").Output("vout").Duties(0.25, 0.75)
            .Capacitor("fly", "vout", "x", farads: 2).Inductor("c1", "vin", "vout", ohms: 16).Inductor("c2", "vin", "vout", ohms: 16)
            .Switch("s1", "x", "vin", on: 1).Switch("s2", "x", "vout", on: 2, ohms: 3).Build(),
        [-0.5, 0.5, 0.625, 0.375, -0.625, -0.375, 1 / 16.0, 3 / 16.0, 1 / 16.0, 3 / 16.0],
        [0, 0, 0.25, 0.75, -0.25, -0.75, 0.125, 0.375, 0.125, 0.375]);

    // two dividers by three in opposite phases, the second of twice the capacitance and of four times the resistance
    [Fact]
    public void Two_dividers_share_by_conductance_and_by_capacitance()
    {
        double[] Flow(double first)
        {
            double a = first / 3, b = (1 - first) / 3;
            return [a, -a, a, -a, -b, b, -b, b, a + (2 * b), (2 * a) + b, -a, -b];
        }

        AssertFlows(
            Converter.Create("thirds").Input("vin").Output("vout")
                .Capacitor("a1", "p", "n").Capacitor("a2", "q", "r")
                .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "q", on: 1).Switch("s3", "r", "vout", on: 1)
                .Switch("s4", "p", "vout", on: 2).Switch("s5", "n", "gnd", on: 2).Switch("s6", "q", "vout", on: 2).Switch("s7", "r", "gnd", on: 2)
                .Capacitor("b1", "v", "w", farads: 2).Capacitor("b2", "y", "z", farads: 2)
                .Switch("t1", "vin", "v", on: 2, ohms: 4).Switch("t2", "w", "y", on: 2, ohms: 4).Switch("t3", "z", "vout", on: 2, ohms: 4)
                .Switch("t4", "v", "vout", on: 1, ohms: 4).Switch("t5", "w", "gnd", on: 1, ohms: 4)
                .Switch("t6", "y", "vout", on: 1, ohms: 4).Switch("t7", "z", "gnd", on: 1, ohms: 4).Build(),
            Flow(4 / 5.0),
            Flow(1 / 3.0));
    }

    [Fact]
    public void A_direction_that_nothing_drives_moves_where_an_inductor_does()
    {
        SwitchedNetwork network = Converter.Create("any").Input("vin").Output("vout").Capacitor("c", "vin", "x").Inductor("l", "x", "vout")
            .Switch("s", "x", "gnd", on: 1).Build().Network;
        SparseVector capacitor = SparseVector.Of([0, 1], [1, -1]);
        FlowDirection still = new(capacitor, default) { IsStillWhenSlow = true };
        Assert.False(DirectionAmounts.IsMoving(network, still));
        Assert.True(DirectionAmounts.IsMoving(network, still with { IsStillWhenSlow = false }));
        Assert.True(DirectionAmounts.IsMoving(network, still with { Branches = capacitor.Followed(SparseVector.Unit(0), network.FirstInductorBranch * 2) }));
        Assert.False(DirectionAmounts.IsMoving(network, still with { Branches = capacitor.Followed(SparseVector.Unit(0), (network.FirstInductorBranch * 2) - 1) }));
        Assert.False(DirectionAmounts.IsMoving(network, new FlowDirection(SparseVector.Unit(network.FirstInductorBranch * 2), default)));
        Assert.False(DirectionAmounts.IsMoving(network, new FlowDirection(default, default) { IsStillWhenSlow = true }));
    }

    // 0.1 + 0.2 - 0.3 is 2⁻⁵⁴ in doubles; a trillionth of its terms is a current, and the bound goes with them
    [Theory]
    [InlineData(1)]
    [InlineData(1.0 / (1 << 30))]
    [InlineData(1 << 30)]
    public void A_mixture_is_without_what_rounding_leaves_of_its_terms(double size)
    {
        SparseVector[] flows =
        [
            .. new[] { new double[] { 1, 1, 1, 0, 5 }, [2, 2, 2, 3, 0] }.Select(f => SparseVector.OfDense(Array.ConvertAll(f, v => size * v))),
            SparseVector.OfDense([size, size * (1 - 1e-12), size * (1 + 1e-3)]),
        ];
        SparseVector mixed = DirectionAmounts.Mixed(flows, SparseVector.OfDense([0.1, 0.1, -0.3]), 1e-13);
        Assert.Equal([1, 2, 3, 4], mixed.Indices);
        Assert.Equal(3e-13, mixed[1] / size, 1e-16);
        Assert.Equal(-3e-4, mixed[2] / size, 1e-16);
        Assert.Equal(0.3, mixed[3] / size, 1e-15);
        Assert.Equal(0.5, mixed[4] / size, 1e-15);
        Assert.Equal(0, DirectionAmounts.Mixed(flows, SparseVector.OfDense([0.1, 0.1, -0.3]))[0] / size, 1e-15);
        Assert.NotEqual(0, DirectionAmounts.Mixed(flows, SparseVector.OfDense([0.1, 0.1, -0.3]))[0]);
    }

    // charges of every branch in every phase: capacitors, output, input, inductors
    private static void AssertFlows(Converter converter, double[] fast, double[]? slow)
    {
        TopologySolution topology = ModeAnalysis.Of(converter).Topology;
        AssertNear(fast, Total(DirectionAmounts.Ways(topology), DirectionAmounts.FastWays(converter, topology)));
        FlowDirection[] directions = [topology.Own!, .. topology.Directions];
        AssertNear(fast, Total(directions, [1, .. DirectionAmounts.Fast(converter, topology)]));
        Assert.Equal(1, DirectionAmounts.Delivered(topology).Zip(DirectionAmounts.SlowWays(converter, topology), (d, a) => d * a).Sum(), Tolerance);
        if (slow is not null)
        {
            AssertNear(slow, Total(DirectionAmounts.Ways(topology), DirectionAmounts.SlowWays(converter, topology)));
            AssertNear(slow, Total(directions, [1, .. DirectionAmounts.Slow(converter, topology)]));
        }

        double[] Total(FlowDirection[] flows, double[] amounts) =>
            [.. Enumerable.Range(0, fast.Length).Select(e => flows.Zip(amounts, (flow, amount) => flow.Branches[e] * amount).Sum())];
    }

    private static void AssertNear(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        Assert.All(expected.Zip(actual), p => Assert.Equal(p.First, p.Second, Tolerance));
    }
}
