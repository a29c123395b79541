using Fractions;
using ScNet.Analysis;
using ScNet.Netlists;

namespace ScNet.Search.Tests.Queries;

public class AtlasAnswerTests
{
    private static readonly Lazy<Atlas> s_three = new(() => Atlas.Of(3)), s_four = new(() => Atlas.Of(4));

    public static TheoryData<string, string?, string?, int?, NetworkMeasure> Ratings => new()
    {
        { "1/2", null, null, null, NetworkMeasure.SwitchCount },
        { "1/2", "1/2", "1/3", 6, NetworkMeasure.SwitchCharge },
        { "1/3", "1/3", null, null, NetworkMeasure.PlateSwing },
        { "1/3", "2/3", "1/3", 7, NetworkMeasure.CapacitorChargeVoltage },
        { "1/3", "1/2", "1/3", 6, NetworkMeasure.CapacitorCharge },
        { "2/3", "1/3", "2/3", null, NetworkMeasure.HighestCapacitorVoltage },
        { "3", null, "1", 7, NetworkMeasure.HighestSwitchVoltage },
        { "-1", "1", "1", 4, NetworkMeasure.SwitchChargeVoltage },
        { "-1/2", "3/4", null, null, NetworkMeasure.SwitchChargeVoltage },
        { "3/4", null, null, null, NetworkMeasure.SwitchCount },
    };

    /// <summary>Every pair of wirings of one and two capacitors, both layouts, measured one by one.</summary>
    [Theory]
    [MemberData(nameof(Ratings))]
    public void An_answer_is_that_of_trying_all_wirings(string ratio, string? switchVoltage, string? capacitorVoltage, int? switches, NetworkMeasure objective)
    {
        AtlasQuery query = Query(ratio, 2, switchVoltage, capacitorVoltage, switches, objective);
        SearchedNetwork[] within = [.. EveryNetwork.Upto2.Where(n => n.Ratio == query.Ratios.Minimum && Admits(query, n))];
        AtlasAnswer answer = AtlasAnswer.Of(query);
        Assert.Equal(within.Length > 0, answer.Networks.Count > 0);
        Assert.Equal(within.Length == 0, answer.Reasons.Count > 0);
        Assert.All(answer.Networks, n => Assert.True(Admits(query, n.Network), n.Name));
        Assert.Equal(answer.Networks.Select(n => n.Network.Measures.Value(objective)).Order(), answer.Networks.Select(n => n.Network.Measures.Value(objective)));
        if (within.Length > 0)
        {
            Assert.Equal(within.Min(n => n.Measures.Value(objective)), answer.Networks[0].Network.Measures.Value(objective));
        }
    }

    [Fact]
    public void Without_ratings_the_answer_measures_as_the_front_does()
    {
        foreach (Fraction ratio in s_three.Value.Ratios)
        {
            AtlasAnswer answer = AtlasAnswer.Of(new AtlasQuery(ratio), s_three.Value);
            Assert.Equal(answer.UnbeatenCount, answer.Networks.Count);
            Assert.Equal(
                s_three.Value.Front(ratio).Select(n => n.Measures).ToHashSet(),
                answer.Networks.Select(n => n.Network.Measures).ToHashSet());
            Assert.All(answer.Networks, n => Assert.All(n.Network.CapacitorVoltages, v => Assert.True(v.IsPositive, n.Name)));
        }
    }

    [Fact]
    public void A_range_holds_the_networks_of_its_ratios()
    {
        AtlasAnswer answer = AtlasAnswer.Of(new AtlasQuery(new Interval<Fraction>(new(1, 3), new(1, 2))), s_three.Value);
        Assert.Equal(["1/3", "2/5", "1/2"], answer.Networks.Select(n => n.Network.Ratio).Distinct().Order().Select(r => $"{Quantity.Exact(r)}"));
        Assert.Equal(answer.UnbeatenCount, s_three.Value.Ratios.Where(answer.Query.Ratios.Contains).Sum(r => s_three.Value.Front(r).Count));
    }

    [Theory]
    [InlineData("3/7", 3, null, null, null, "No two-phase network of up to 3 flying capacitors makes 3/7. All 463 networks were tried. They make 28 ratios, whose numerators and denominators are at most 5. The nearest that is made: 2/5 below, 1/2 above.")]
    [InlineData("9", 3, null, null, null, "No two-phase network of up to 3 flying capacitors makes 9. All 463 networks were tried. They make 28 ratios, whose numerators and denominators are at most 5. The nearest that is made: 5 below.")]
    [InlineData("2/5", 3, "2/5", null, null, "No two-phase network of up to 3 flying capacitors makes 2/5 with every switch at or below 2/5 of the input. Of all networks, the lowest highest switch voltage is 3/5 of the input, above the 2/5 asked. This is said of all networks whose voltages, charges and potentials topology fixes and in which every capacitor moves charge.")]
    [InlineData("1/3", 1, null, null, null, "No two-phase network of one flying capacitor makes 1/3. All 4 networks were tried. They make 4 ratios, whose numerators and denominators are at most 2. The nearest that is made: -1 below, 1/2 above.")]
    public void None_is_a_statement_with_its_reason(string ratio, int capacitors, string? switchVoltage, string? capacitorVoltage, int? switches, string text)
    {
        Assert.Equal(text, AtlasAnswer.Of(Query(ratio, capacitors, switchVoltage, capacitorVoltage, switches)).ToString());
    }

    /// <summary>Each rating at what the ratio's best network for it needs: where they cannot be met together, what is told follows from the whole front.</summary>
    [Fact]
    public void Ratings_that_can_be_met_one_by_one_but_not_together_are_named_together()
    {
        int conflicts = 0;
        foreach (Fraction ratio in s_four.Value.Ratios.Where(r => r != Fraction.One))
        {
            IReadOnlyList<SearchedNetwork> front = s_four.Value.Front(ratio);
            AtlasQuery query = new(ratio) { CapacitorCount = 4, HighestSwitchVoltage = front.Min(n => n.Measures.HighestSwitchVoltage), MostSwitches = front.Min(n => n.Measures.SwitchCount) };
            AtlasAnswer answer = AtlasAnswer.Of(query, s_four.Value);
            if (answer.Networks.Count == 0)
            {
                conflicts++;
                int fewest = front.Where(n => n.Measures.HighestSwitchVoltage <= query.HighestSwitchVoltage).Min(n => n.Measures.SwitchCount);
                Fraction lowest = front.Where(n => n.Measures.SwitchCount <= query.MostSwitches).Min(n => n.Measures.HighestSwitchVoltage);
                string voltage = $"{Quantity.Exact(query.HighestSwitchVoltage!.Value)}", switches = FormattableString.Invariant($"{query.MostSwitches}");
                Assert.Equal(
                    [
                        $"With at most {switches} switches, the lowest highest switch voltage is {Quantity.Exact(lowest)} {(lowest < 1 ? "of" : "times")} the input, above the {voltage} asked.",
                        FormattableString.Invariant($"With every switch at or below {voltage} {(query.HighestSwitchVoltage < 1 ? "of" : "times")} the input, the fewest switches are {fewest}, more than the {switches} asked."),
                    ],
                    answer.Reasons.SkipLast(1));
            }
        }

        Assert.True(conflicts > 5, FormattableString.Invariant($"{conflicts} conflicts"));
    }

    /// <summary>The bounds of M. S. Makowski and D. Maksimovic, "Performance limits of switched-capacitor DC-DC converters", PESC 1995 (from memory).</summary>
    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 3)]
    [InlineData(3, 5)]
    [InlineData(4, 8)]
    public void The_largest_term_told_is_the_published_bound(int capacitors, int bound) => Assert.Contains(
        FormattableString.Invariant($"at most {bound}."),
        AtlasAnswer.Of(new AtlasQuery(new Fraction(100)) { CapacitorCount = capacitors }).Reasons[0],
        StringComparison.Ordinal);

    [Fact]
    public void What_is_asked_is_checked()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasQuery(Fraction.One) { CapacitorCount = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasQuery(Fraction.One) { CapacitorCount = Atlas.MaximumCapacitorCount + 1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasQuery(Fraction.One) { HighestSwitchVoltage = Fraction.Zero });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasQuery(Fraction.One) { HighestCapacitorVoltage = new Fraction(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasQuery(Fraction.One) { MostSwitches = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AtlasQuery(Fraction.One) { Objective = (NetworkMeasure)8 });
        Assert.Throws<ArgumentException>(() => new AtlasQuery(default(Interval<Fraction>)));
        Assert.Throws<ArgumentException>(() => AtlasAnswer.Of(new AtlasQuery(Fraction.One) { CapacitorCount = 2 }, s_three.Value));
    }

    [Theory]
    [InlineData("2/5", 3)]
    [InlineData("5", 3)]
    [InlineData("-1/4", 3)]
    [InlineData("3/7", 4)]
    public void A_netlist_that_is_written_is_read_again_and_analysed_to_the_same(string ratio, int capacitors)
    {
        foreach (FoundNetwork found in AtlasAnswer.Of(Query(ratio, capacitors), capacitors == 3 ? s_three.Value : s_four.Value).Networks)
        {
            Converter converter = NetlistReader.Read(found.ToToml(2e-9, 3)).GetConverter();
            Assert.Equal(found.Name, converter.Name);
            Assert.All(converter.Capacitors, c => Assert.Equal(2e-9, c.Farads));
            Assert.All(converter.Switches, s => Assert.Equal(3, s.Ohms));
            ModeAnalysis analysis = ModeAnalysis.Of(converter);
            NetworkMeasures measures = found.Network.Measures;
            Assert.Equal(Quantity.Exact(found.Network.Ratio), analysis.Ratio);
            Assert.Equal(measures.SwitchCount, converter.Switches.Count);
            Assert.Equal(measures.HighestCapacitorVoltage, converter.Capacitors.Select((_, c) => analysis.IdealPoint.CapacitorVoltages[c].ToFraction().Abs()).Max());
            Assert.Equal(measures.HighestSwitchVoltage, analysis.BlockingVoltages.Switches.Max(s => s.Max(v => v.ToFraction().Abs())));
            Assert.Equal(2 * measures.CapacitorCharge, Sum(analysis.ChargeFlow.Capacitors.SelectMany(c => c)));
            Assert.Equal(measures.SwitchCharge, Sum(analysis.ChargeFlow.Switches.SelectMany(s => s)));
        }
    }

    private static Fraction Sum(IEnumerable<Quantity> charges) => charges.Aggregate(Fraction.Zero, (sum, q) => sum + q.ToFraction().Abs());

    private static AtlasQuery Query(string ratio, int capacitors, string? switchVoltage = null, string? capacitorVoltage = null, int? switches = null, NetworkMeasure objective = NetworkMeasure.SwitchChargeVoltage) =>
        new(Fraction.FromString(ratio, System.Globalization.CultureInfo.InvariantCulture))
        {
            CapacitorCount = capacitors,
            HighestSwitchVoltage = switchVoltage is null ? null : Fraction.FromString(switchVoltage, System.Globalization.CultureInfo.InvariantCulture),
            HighestCapacitorVoltage = capacitorVoltage is null ? null : Fraction.FromString(capacitorVoltage, System.Globalization.CultureInfo.InvariantCulture),
            MostSwitches = switches,
            Objective = objective,
        };

    private static bool Admits(AtlasQuery query, SearchedNetwork network) =>
        (query.HighestSwitchVoltage is not { } ofSwitches || network.Switches.All(s => s.PeakVoltage <= ofSwitches))
        && (query.HighestCapacitorVoltage is not { } ofCapacitors || network.CapacitorVoltages.All(v => v.Abs() <= ofCapacitors))
        && (query.MostSwitches is not { } switches || network.Switches.Count <= switches);
}
