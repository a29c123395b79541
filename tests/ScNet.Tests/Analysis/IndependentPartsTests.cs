using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>What falls apart at nodes of given voltage, with the place of each element.</summary>
public sealed class IndependentPartsTests
{
    [Fact]
    public void Two_cells_that_meet_at_given_voltages_only_are_two_parts()
    {
        Converter converter = Cells().Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        IndependentParts found = analysis.Topology.PartsOf(converter);
        Assert.Same(found, analysis.Topology.PartsOf(converter));
        Assert.Equal(2, found.Parts.Length);
        Assert.Equal([0, 2], found.Parts[0].Capacitors);
        Assert.Equal([1], found.Parts[1].Capacitors);
        Assert.Equal([0, 2, 4, 6, 8], found.Parts[0].Switches);
        Assert.Equal([1, 3, 5, 7], found.Parts[1].Switches);
        Assert.All(found.Parts, p => Assert.True(p.Delivers));
        Assert.Equal([(0, 0), (1, 0), (0, 1)], found.CapacitorPlaces);
        Assert.Equal([(0, 0), (1, 0), (0, 1), (1, 1), (0, 2), (1, 2), (0, 3), (1, 3), (0, 4)], found.SwitchPlaces);
        Assert.Equal([0, 0, 1, 1, 0], new[] { "p1", "n1", "p2", "n2", "m" }.Select(found.PartOf));
        Assert.Equal(["b", "b3"], found.Parts[1].With(converter) is { } part ? [part.Capacitors[0].Name, part.Switches[2].Name] : []);
    }

    [Fact]
    public void What_may_hold_all_together_leaves_one_part()
    {
        Converter loaded = Cells(LoadKind.Current).Build(), joined = Cells().Parasitic("stray", "p1", "p2", 1e-12).Build(), plain = Cells().Build();
        AssertWhole(loaded);
        AssertWhole(joined);

        // one topology serves a converter with parasitic capacitances and one without
        ModeAnalysis analysis = ModeAnalysis.Of(plain);
        Assert.Single(analysis.Topology.PartsOf(joined).Parts);
        Assert.Equal(2, analysis.Topology.PartsOf(plain).Parts.Length);
        Assert.Single(analysis.Topology.PartsOf(joined).Parts);
    }

    // one cell of 5 elements and capacitors across the input: 64 are few, 65 are not
    [Fact]
    public void One_way_to_the_load_is_a_part_of_its_own_beside_many_elements_only()
    {
        AssertWhole(Across(59));
        Converter many = Across(60);
        IndependentParts found = ModeAnalysis.Of(many).Topology.PartsOf(many);
        Assert.Equal(61, found.Parts.Length);
        Assert.Equal(1, found.Parts.Count(p => p.Delivers));
        Assert.Equal(Enumerable.Range(0, 61).Select(k => (k, 0)), found.CapacitorPlaces);
    }

    [Fact]
    public void Many_elements_that_hang_together_are_the_converter_itself()
    {
        ConverterBuilder builder = Cell(Converter.Create("side by side").Input("vin").Output("vout"), "a", "p1", "n1");
        for (int k = 0; k < 70; k++)
        {
            builder.Capacitor($"beside{k}", "p1", "n1");
        }

        AssertWhole(builder.Build());
    }

    private static void AssertWhole(Converter converter)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        IndependentParts found = analysis.Topology.PartsOf(converter);
        ConverterPart part = Assert.Single(found.Parts);
        Assert.Same(analysis.Topology, part.Topology);
        Assert.Same(converter, part.With(converter));
        Assert.Equal(Enumerable.Range(0, converter.Capacitors.Count).Select(i => (0, i)), found.CapacitorPlaces);
        Assert.Equal(Enumerable.Range(0, converter.Switches.Count).Select(s => (0, s)), found.SwitchPlaces);
        Assert.Equal(0, found.PartOf("p1"));
    }

    // two cells that halve, element after element in turn; the first with a capacitor m - n1 at its side and a switch to it
    private static ConverterBuilder Cells(LoadKind load = LoadKind.Stiff) => Converter.Create("cells").Input("vin").Output("vout", load)
        .Capacitor("a", "p1", "n1").Capacitor("b", "p2", "n2").Capacitor("side", "m", "n1")
        .Switch("a1", "vin", "p1", on: 1).Switch("b1", "vin", "p2", on: 1).Switch("a2", "n1", "vout", on: 1).Switch("b2", "n2", "vout", on: 1)
        .Switch("a3", "p1", "vout", on: 2).Switch("b3", "p2", "vout", on: 2).Switch("a4", "n1", "gnd", on: 2).Switch("b4", "n2", "gnd", on: 2)
        .Switch("a5", "m", "p1", on: 2);

    private static Converter Across(int count)
    {
        ConverterBuilder builder = Cell(Converter.Create("across").Input("vin").Output("vout"), "a", "p1", "n1");
        for (int k = 0; k < count; k++)
        {
            builder.Capacitor($"across{k}", "vin", "gnd");
        }

        return builder.Build();
    }

    private static ConverterBuilder Cell(ConverterBuilder builder, string name, string top, string bottom) => builder.Capacitor(name, top, bottom)
        .Switch($"{name}1", "vin", top, on: 1).Switch($"{name}2", bottom, "vout", on: 1).Switch($"{name}3", top, "vout", on: 2).Switch($"{name}4", bottom, "gnd", on: 2);
}
