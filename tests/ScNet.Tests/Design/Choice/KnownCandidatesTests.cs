using Fractions;
using ScNet.Design.Choice;
using ScNet.Reconfiguration;

namespace ScNet.Tests.Design.Choice;

/// <summary>What is tried without a request, at the ratios at which it changes: families of fractions by hand.</summary>
public sealed class KnownCandidatesTests
{
    // of a third: fed ladders and Dickson networks by three reach only what is below it, a ladder by two what is below a half
    [Theory]
    [InlineData(5, true, true, true, true)]
    [InlineData(4, false, true, true, true)]
    [InlineData(3, false, false, false, true)]
    [InlineData(2, false, false, false, false)]
    public void A_stage_is_tried_where_it_reaches_more_than_the_largest_ratio(int n, bool seriesCapacitor, bool seriesCharged, bool byThree, bool byTwo)
    {
        string[] names = Names(new(1, n), new(1, n));
        Assert.Contains("Linear regulator", names);
        Assert.Equal(seriesCapacitor, names.Contains("Series-capacitor stage"));
        Assert.Equal(seriesCharged, names.Contains("Series-charged stage"));
        Assert.Equal(byThree, names.Contains("Ladder 3:1 before an inductor"));
        Assert.Equal(byThree, names.Contains("Dickson 3:1 before an inductor"));
        Assert.Equal(byTwo, names.Contains("Ladder 2:1 before an inductor"));
        Assert.Equal(
            ["Flying-capacitor stage, 3 levels", "Flying-capacitor stage, 4 levels", "Flying-capacitor stage, 5 levels"],
            names.Where(name => name.StartsWith("Flying", StringComparison.Ordinal)));
    }

    // fractions of terms up to five from a quarter to a third are these two; next above are 2/5 and 1/2
    [Fact]
    public void Gears_are_those_in_the_range_below_each_of_the_two_least_above_it() =>
        Assert.Equal(
            ["Gears 2/5, 1/3", "Gears 2/5, 1/3, 1/4", "Gears 1/2, 1/3", "Gears 1/2, 1/3, 1/4"],
            Names(new(1, 4), new(1, 3)).Where(name => name.StartsWith("Gears", StringComparison.Ordinal)));

    // two cells have 1/4 and 1/2 for it, three 1/4 and 3/8, four 1/4, 5/16 and 3/8
    [Fact]
    public void Recursive_cascades_have_the_gears_in_the_range_and_one_above() =>
        Assert.Equal(
            ["Recursive 1/4 to 3/4, gears 1/4, 1/2", "Recursive 1/8 to 7/8, gears 1/4, 3/8", "Recursive 1/16 to 15/16, gears 1/4, 5/16, 3/8"],
            Names(new(1, 4), new(1, 3)).Where(name => name.StartsWith("Recursive", StringComparison.Ordinal)));

    // above a third each of them has one gear alone, which families of one ratio have as well
    [Fact]
    public void A_cascade_of_a_single_gear_is_not_tried() =>
        Assert.DoesNotContain(Names(new(1, 3), new(1, 3)), name => name.StartsWith("Recursive", StringComparison.Ordinal));

    // a ratio that is asked for itself has no room for drops: of a third 1/2 remains, which all families have in one and the same network
    [Fact]
    public void Single_ratios_lie_above_what_is_asked_for()
    {
        Candidate[] all = [.. KnownCandidates.Of(new(new(1, 3), new(1, 3)), OverlayHeuristic.Default)];
        Fraction[] ratios = [.. all.Where(c => c.Kind == CandidateKind.SwitchedCapacitor && c.Analysis!.Modes.Count == 1).Select(c => c.Analysis!.Results.Single().Ratio.ToFraction())];
        Assert.Equal([new Fraction(1, 2)], ratios);
    }

    [Fact]
    public void Of_a_ratio_of_one_and_more_a_step_up_stage_is_tried_and_none_that_steps_down()
    {
        Candidate[] all = [.. KnownCandidates.Of(new(new(1, 1), new(1, 1)), OverlayHeuristic.Default)];
        Assert.Equal(["Stacked inductive step-up"], all.Where(c => c.HasDuty).Select(c => c.Name));
        Assert.DoesNotContain(all, c => c.Name.StartsWith("Recursive", StringComparison.Ordinal));
    }

    [Fact]
    public void Cascades_that_step_down_are_not_tried_where_as_much_as_the_input_is_asked_for()
    {
        Assert.DoesNotContain(Names(new(1, 4), new(1, 1)), name => name.StartsWith("Recursive", StringComparison.Ordinal));
        Assert.Contains(Names(new(1, 4), new(15, 16)), name => name.StartsWith("Recursive", StringComparison.Ordinal));
    }

    private static string[] Names(Fraction least, Fraction most) => [.. KnownCandidates.Of(new(least, most), OverlayHeuristic.Default).Select(c => c.Name)];
}
