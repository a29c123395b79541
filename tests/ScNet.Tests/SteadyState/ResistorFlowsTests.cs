using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Charges of dividers by two, derived by hand; duties of 1/4 and 3/4, so that charges dissipate 4 and 4/3 times as much as over a whole period.</summary>
public sealed class ResistorFlowsTests
{
    private const double Tolerance = 1e-14;

    [Fact]
    public void A_divider_sends_half_of_the_charge_through_every_resistor()
    {
        ResistorFlows flows = Of(Switched().Capacitor("fly", "p", "n", 1, esrOhms: 25).Switch("self", "p", "p", on: 1).Switch("never", "p", "n").Build());
        Assert.Equal([0, 1, 6], flows.Resistors[0]);
        Assert.Equal([2, 3, 6], flows.Resistors[1]);
        Assert.Equal([1, 4, 9, 16, 25], new[] { 0, 1, 2, 3, 6 }.Select(flows.Ohms));
        Assert.Equal([0, 1, -1, -1, -1, -1, 2], Enumerable.Range(0, 7).Select(r => flows.Position(0, r)));
        Assert.Equal([-1, -1, 0, 1, -1, -1, 2], Enumerable.Range(0, 7).Select(r => flows.Position(1, r)));

        // times the root of 1, 4, 25 and of 9, 16, 25 Ω; s4 points away from the capacitor that discharges through it
        AssertEqual([[0.5, 1, 2.5], [1.5, -2, -2.5]], flows.Particular);
        Assert.Equal(0.5, flows.ParticularInput);
        Assert.Empty(flows.Directions);
        Assert.Empty(flows.DirectionInputs);
    }

    // As constant currents 4 and 9 Ω side by side share 1/2 as 9 to 4. What circulates, ±a, dissipates 13 a² (4 + 4/3) = 1.
    [Fact]
    public void Two_capacitors_side_by_side_share_the_charge_as_their_series_resistances_and_one_charge_circulates()
    {
        ResistorFlows flows = Of(Switched().Capacitor("one", "p", "n", 1, esrOhms: 4).Capacitor("none", "p", "q", 1).Capacitor("two", "p", "n", 5, esrOhms: 9).Build());
        Assert.Equal([0, 1, 4, 6], flows.Resistors[0]);
        double first = 0.5 * 9 / 13, second = 0.5 * 4 / 13;
        AssertEqual([[0.5, 1, 2 * first, 3 * second], [1.5, -2, -2 * first, -3 * second]], flows.Particular);
        double amount = Math.Sqrt(1 / (13 * (4 + (4.0 / 3)))), sign = Math.Sign(Assert.Single(flows.Directions)[0][2]);
        AssertEqual([[0, 0, 2 * amount * sign, -3 * amount * sign], [0, 0, -2 * amount * sign, 3 * amount * sign]], flows.Directions[0]);
        Assert.Equal([0.0], flows.DirectionInputs);
        Assert.Equal(0.5, flows.ParticularInput);
    }

    [Fact]
    public void Directions_dissipate_one_each_and_independently_of_one_another_and_of_the_particular_flow()
    {
        ResistorFlows flows = Of(Switched()
            .Capacitor("a", "p", "n", 1, esrOhms: 1).Capacitor("b", "p", "n", 5, esrOhms: 4).Capacitor("c", "p", "n", 2, esrOhms: 9).Capacitor("d", "p", "n", 2, esrOhms: 16).Build());
        Assert.Equal(3, flows.Directions.Count);
        for (int k = 0; k < 3; k++)
        {
            Assert.Equal(0, Product(flows.Particular, flows.Directions[k]), Tolerance);
            for (int l = 0; l < 3; l++)
            {
                Assert.Equal(k == l ? 1 : 0, Product(flows.Directions[k], flows.Directions[l]), Tolerance);
            }

            // what circulates through 1, 4, 9 and 16 Ω, of charges times 1, 2, 3 and 4, passes no switch, and each capacitor gives what it took
            double[] first = flows.Directions[k][0], second = flows.Directions[k][1];
            Assert.Equal(0, first[2] + (first[3] / 2) + (first[4] / 3) + (first[5] / 4), Tolerance);
            Assert.Equal((0, 0, 0, 0), (first[0], first[1], second[0], second[1]));
            Assert.Equal(first[2..], second[2..].Select(q => -q), (a, b) => Math.Abs(a - b) < Tolerance);
        }

        // shares as the conductances 1, 1/4, 1/9 and 1/16 of 205/144
        double unit = 0.5 * 144 / 205;
        AssertEqual([[0.5, 1, unit, unit / 2, unit / 3, unit / 4], [1.5, -2, -unit, -unit / 2, -unit / 3, -unit / 4]], flows.Particular);
    }

    // A bottom plate at n lets x through s1, -x through s2, x through s3 and s4, which takes x from the input. It dissipates
    // 4 (1 + 4) + 4/3 (9 + 16) = 160/3 per x², and with the flow of halves 4 (1 - 4)/2 + 4/3 (9 - 16)/2 = -32/3, so that
    // a fifth of it is added to that flow.
    [Fact]
    public void A_bottom_plate_adds_a_direction_that_takes_charge_from_the_input()
    {
        ResistorFlows flows = Of(Switched().Capacitor("fly", "p", "n", 1, plates: new CapacitorPlates(BottomFarads: 0.1)).Build());
        AssertEqual([[0.7, 0.6], [2.1, -1.2]], flows.Particular);
        Assert.Equal(0.7, flows.ParticularInput, Tolerance);
        double input = Assert.Single(flows.DirectionInputs);
        Assert.Equal(Math.Sqrt(3.0 / 160), Math.Abs(input), Tolerance);
        AssertEqual([[input, -2 * input], [3 * input, 4 * input]], Assert.Single(flows.Directions));
    }

    // as above, with a second capacitor of 4 Ω beside one of 1 Ω: a direction with an input and one without
    [Fact]
    public void Directions_keep_what_each_takes_from_the_input_while_made_orthogonal()
    {
        ResistorFlows flows = Of(Switched()
            .Capacitor("fly", "p", "n", 1, esrOhms: 1, plates: new CapacitorPlates(BottomFarads: 0.1, TopFarads: 0.2)).Capacitor("two", "p", "n", 1, esrOhms: 4).Build());
        Assert.True(flows.Directions.Count >= 2);

        // phase 1 alone joins the input, through s1 of 1 Ω
        Assert.Equal(flows.Particular[0][0], flows.ParticularInput, Tolerance);
        Assert.All(flows.Directions.Zip(flows.DirectionInputs), d => Assert.Equal(d.First[0][0], d.Second, Tolerance));
        Assert.True(flows.DirectionInputs.Max(Math.Abs) > 0.01);
    }

    // A switch beside s1 and one beside s3, closed with them: in each phase a charge circulates in a pair of its own. Per square of the
    // charge the leader of the first dissipates 1 Ω · 4, that of the second 9 Ω · 4/3 = 12 Ω or 2.9 Ω · 4/3 = 3.87 Ω.
    [Theory]
    [InlineData(9, 0)]
    [InlineData(2.9, 1)]
    public void Of_directions_the_one_led_by_what_dissipates_least_comes_first(double ohms, int first)
    {
        ResistorFlows flows = Of(Converter.Create("half").Input("vin").Output("vout").Duties(0.25, 0.75).Capacitor("fly", "p", "n", 1)
            .Switch("s1", "vin", "p", on: 1, ohms: 1).Switch("b1", "vin", "p", on: 1, ohms: 1).Switch("s2", "n", "vout", on: 1, ohms: 4)
            .Switch("s3", "p", "vout", on: 2, ohms).Switch("b3", "p", "vout", on: 2, ohms: 1).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms: 16).Build());
        Assert.Equal(2, flows.Directions.Count);
        for (int phase = 0; phase < 2; phase++)
        {
            Assert.Equal(phase == first, flows.Directions[0][phase].Any(charge => charge != 0));
            Assert.Equal(phase != first, flows.Directions[1][phase].Any(charge => charge != 0));
        }
    }

    private static double Product(double[][] left, double[][] right) =>
        (4 * left[0].Zip(right[0], (a, b) => a * b).Sum()) + (4.0 / 3 * left[1].Zip(right[1], (a, b) => a * b).Sum());

    private static void AssertEqual(double[][] expected, double[][] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int phase = 0; phase < expected.Length; phase++)
        {
            Assert.Equal(expected[phase], actual[phase], (a, b) => Math.Abs(a - b) < Tolerance);
        }
    }

    private static ConverterBuilder Switched() => Converter.Create("half").Input("vin").Output("vout").Duties(0.25, 0.75)
        .Switch("s1", "vin", "p", on: 1, ohms: 1).Switch("s2", "n", "vout", on: 1, ohms: 4)
        .Switch("s3", "p", "vout", on: 2, ohms: 9).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms: 16);

    private static ResistorFlows Of(Converter converter)
    {
        FullTopology topology = FullTopology.Of(converter, ModeAnalysis.Of(converter, converter.Modes[0]).Topology);
        return ResistorFlows.Of(FullConverter.Of(converter, topology), topology);
    }
}
