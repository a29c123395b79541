using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

public sealed class FamilyCatalogueTests
{
    // a member of each form, with the ratio that its factory documents
    private static readonly Dictionary<string, (int[] Numbers, Quantity Ratio)> s_members = new()
    {
        ["series-parallel N"] = ([3], Quantity.Exact(1, 3)),
        ["ladder N"] = ([4], Quantity.Exact(1, 4)),
        ["dickson N"] = ([5], Quantity.Exact(1, 5)),
        ["cockcroft-walton K"] = ([3], Quantity.Exact(1, 4)),
        ["fibonacci K"] = ([4], Quantity.Exact(1, 8)),
        ["doubler K"] = ([2], Quantity.Exact(1, 4)),
        ["fraction P Q"] = ([2, 3], Quantity.Exact(2, 3)),
        ["binary N K"] = ([3, 3], Quantity.Exact(3, 8)),
        ["binary N"] = ([2], Quantity.Exact(1, 4)),
        ["recursive N K"] = ([3, 5], Quantity.Exact(5, 8)),
        ["recursive N"] = ([2], Quantity.Exact(1, 4)),
        ["inverter N"] = ([2], Quantity.Exact(-1, 2)),
        ["inverter P Q"] = ([2, 3], Quantity.Exact(-2, 3)),
        ["inductive P Q"] = ([2, 3], Quantity.Exact(2, 3)),
        ["inductive-up P Q"] = ([2, 3], Quantity.Exact(3)),
        ["inductive-inverter P Q"] = ([2, 3], Quantity.Exact(-2)),
        ["flying-capacitor N P Q"] = ([4, 2, 9], Quantity.Exact(2, 9)),
        ["series-charged P Q"] = ([2, 9], Quantity.Exact(2, 9)),
        ["series-capacitor P Q"] = ([2, 7], Quantity.Exact(1, 7)),
    };

    [Fact]
    public void Every_form_builds_the_ratio_that_it_names_and_its_reciprocal_the_other_way()
    {
        Assert.Equal(s_members.Keys, FamilyCatalogue.All.Select(f => f.Usage));
        foreach (Family family in FamilyCatalogue.All)
        {
            (int[] numbers, Quantity ratio) = s_members[family.Usage];
            Assert.True(family.Accepts(numbers), family.Usage);
            Assert.Equal(ratio, RatioOf(family.Build(numbers)));
            if (family.StepUpRatio is not null)
            {
                Fractions.Fraction down = ratio.ToFraction();
                Assert.Equal(Quantity.Exact(1 / down), RatioOf(family.Build(numbers, new FamilyOptions(IsStepUp: true))));
            }
            else
            {
                Assert.Throws<ArgumentException>(() => family.Build(numbers, new FamilyOptions(IsStepUp: true)));
            }
        }
    }

    [Fact]
    public void Values_and_load_are_those_asked_for()
    {
        foreach (Family family in FamilyCatalogue.All)
        {
            Converter converter = family.Build(s_members[family.Usage].Numbers, new FamilyOptions(Farads: 2e-9, Ohms: 0.5, Load: LoadKind.Current));
            Assert.Equal(LoadKind.Current, converter.Load);
            Assert.All(converter.Capacitors, c => Assert.Equal(2e-9, c.Farads));
            Assert.All(converter.Switches, s => Assert.Equal(0.5, s.Ohms));
        }
    }

    [Theory]
    [InlineData("ladder", new[] { 1 })]
    [InlineData("ladder", new[] { 1001 })]
    [InlineData("ladder", new int[0])]
    [InlineData("fraction", new[] { 2, 4 })]
    [InlineData("fraction", new[] { 6, 5 })]
    [InlineData("fraction", new[] { 0, 1 })]
    [InlineData("binary", new[] { 3, 8 })]
    [InlineData("inverter", new[] { 2, 2 })]
    [InlineData("inverter", new[] { int.MaxValue, int.MaxValue - 1 })]
    public void Numbers_out_of_range_have_no_member(string name, int[] numbers)
    {
        Assert.All(FamilyCatalogue.Named(name), f => Assert.False(f.Accepts(numbers)));
        Assert.All(FamilyCatalogue.Named(name), f => Assert.Contains(f.Ranges, Assert.Throws<ArgumentException>(() => f.Build(numbers)).Message, StringComparison.Ordinal));
    }

    [Fact]
    public void The_bounds_of_every_parameter_are_the_first_and_last_that_are_taken()
    {
        foreach (Family family in FamilyCatalogue.All.Where(f => f.Parameters.Count == 1))
        {
            (string Name, int Minimum, int Maximum) only = family.Parameters[0];
            Assert.Equal([false, true, true, false], new[] { only.Minimum - 1, only.Minimum, only.Maximum, only.Maximum + 1 }.Select(n => family.Accepts(n)));
        }
    }

    [Fact]
    public void A_name_that_is_none_has_no_forms() => Assert.Empty(FamilyCatalogue.Named("tower"));

    private static Quantity RatioOf(Converter converter) => ModeAnalysis.Of(converter, converter.Modes[0]).Ratio;
}
