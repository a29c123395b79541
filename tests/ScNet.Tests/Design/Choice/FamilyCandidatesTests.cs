using Fractions;
using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Reconfiguration;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

public sealed class FamilyCandidatesTests
{
    private static readonly Interval<Fraction> s_down = new(new(1, 4), new(1, 3)), s_one = new(new(1, 4), new(1, 1)), s_up = new(new(3, 2), new(5, 2));

    // of the sorts that the catalogue has under one name only that with one number counts as sized
    [Fact]
    public void Every_name_is_told_once_and_families_of_one_ratio_have_one_before_an_inductor()
    {
        Assert.Equal(FamilyCandidates.Names.Distinct(), FamilyCandidates.Names);
        string[] fed = [.. FamilyCandidates.Names.Where(n => n.EndsWith("-fed", StringComparison.Ordinal))];
        Assert.Equal(
            ["series-parallel-fed", "ladder-fed", "dickson-fed", "cockcroft-walton-fed", "fibonacci-fed", "doubler-fed", "inverter-fed"], fed);
    }

    // p/q of q = 3, 4: 1/3, 2/3, 1/4, 3/4, and upside down where more than the input is asked for
    [Fact]
    public void Fractions_are_those_whose_larger_term_is_the_size_in_the_direction_of_the_ratios()
    {
        Fraction[] down = [new(1, 3), new(2, 3), new(1, 4), new(3, 4)];
        Assert.Equal(down, RatiosOf("fraction", new(3, 4), s_down));
        Assert.Equal(down, RatiosOf("fraction", new(3, 4), s_one));
        Assert.Equal(down.Select(r => Fraction.One / r), RatiosOf("fraction", new(3, 4), s_up));
        Assert.Empty(RatiosOf("fraction", new(6, 9), s_down));
    }

    [Fact]
    public void Families_step_up_where_more_than_the_input_is_asked_for()
    {
        Assert.Equal([new Fraction(1, 2), new(1, 3)], RatiosOf("ladder", new(1, 3), s_one));
        Assert.Equal([new Fraction(2), new(3)], RatiosOf("ladder", new(1, 3), s_up));
        Assert.Empty(FamilyCandidates.Networks("recursive", new(2, 2), s_up));
        Assert.Empty(FamilyCandidates.Networks("ladder", default, s_down));
    }

    [Fact]
    public void A_flying_capacitor_stage_has_three_levels_up_to_the_most_that_there_are()
    {
        Assert.Equal(["Flying-capacitor stage, 3 levels", "Flying-capacitor stage, 4 levels"], Names("flying-capacitor", new(1, 4)));
        Assert.Equal(
            [$"Flying-capacitor stage, {FlyingCapacitorStage.MaximumLevels} levels"],
            Names("flying-capacitor", new(FlyingCapacitorStage.MaximumLevels, FlyingCapacitorStage.MaximumLevels + 1)));
        Assert.Empty(Names("flying-capacitor", new(FlyingCapacitorStage.MaximumLevels + 1, FlyingCapacitorStage.MaximumLevels + 2)));
    }

    // the middle one of three capacitors of five levels averages to one half either way; its controller states the even steps of all
    [Fact]
    public void Flying_capacitors_hold_even_steps_of_the_input()
    {
        Assert.Equal([new Fraction(1, 2)], HeldBy(3));
        Assert.Equal([new Fraction(2, 3), new(1, 3)], HeldBy(4));
        Assert.Equal([new Fraction(3, 4), new(1, 2), new(1, 4)], HeldBy(5));
        Assert.All(StageCandidates.FlyingCapacitor(4).Converter!.Capacitors, c => Assert.Null(c.Controlled));
        Assert.All(StageCandidates.FlyingCapacitor(5).Converter!.Capacitors, c => Assert.NotNull(c.Controlled));

        static IEnumerable<Fraction> HeldBy(int levels) =>
            StageCandidates.FlyingCapacitor(levels).Duties.AnalysisAt(50).IdealPoint.CapacitorVoltages.Select(v => v.ToFraction());
    }

    private static IEnumerable<string> Names(string family, Interval<int> sizes) => FamilyCandidates.Of(family, sizes, s_down, OverlayHeuristic.Default).Select(c => c.Name);

    private static IEnumerable<Fraction> RatiosOf(string family, Interval<int> sizes, Interval<Fraction> ratios) =>
        FamilyCandidates.Networks(family, sizes, ratios).Select(n => ModeAnalysis.Of(n).Ratio.ToFraction());
}
