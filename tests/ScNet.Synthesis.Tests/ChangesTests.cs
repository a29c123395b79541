using Fractions;
using ScNet.Stress;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis.Tests;

/// <summary>What holds right after a change of ratio.</summary>
public class ChangesTests
{
    // the rating of the switches decides how many devices the surges of a change cost
    [Theory]
    [InlineData("1/2", "2", 2.1)]
    [InlineData("1/2", "-1", 3.5)]
    public void No_converter_of_one_capacitor_takes_fewer_devices_at_changes(string first, string second, double ratingVolts)
    {
        SynthesisRequest request = Requests.Of(1, $"{first} {second}") with { Cost = SynthesisCost.Devices, SwitchRatingVolts = ratingVolts, LargestStack = 6 };
        Fraction[] ratios = Requests.Ratios($"{first} {second}");
        foreach (bool holdsAtChanges in new[] { false, true })
        {
            SynthesisResult result = SmallestConverter.Find(request with { HoldsAtChanges = holdsAtChanges });
            Assert.Equal(SynthesisOutcome.Proved, result.Outcome);
            Assert.Equal(EveryControl.LeastDevices(ratios[0], ratios[1], 4.2, ratingVolts, 6, holdsAtChanges), result.Cost);
        }
    }

    [Fact]
    public void Changes_cost_more_where_capacitors_must_move_between_unlike_voltages()
    {
        SynthesisRequest request = Requests.Of(1, "1/2 2") with { Cost = SynthesisCost.Devices, SwitchRatingVolts = 2.1, LargestStack = 4 };
        Assert.Equal((12, 16), (SmallestConverter.Find(request).Cost!.Value, SmallestConverter.Find(request with { HoldsAtChanges = true }).Cost!.Value));
    }

    // solved for the catalogue too
    [Theory]
    [InlineData("1/2 1/3", 1.5)]
    public void The_ordinary_stress_finds_every_switch_within_its_devices_at_every_change(string ratios, double ratingVolts) =>
        ExpectWithinDevices(ratios, ratingVolts);

    [Theory]
    [Trait("Length", "Long")]
    [InlineData("1/3 1/2 2/3", 1.5)]
    [InlineData("1/2 1/3", 1.8)]
    [InlineData("1/3 1/2 2/3", 1.4)]
    public void It_does_so_of_other_ratings(string ratios, double ratingVolts) => ExpectWithinDevices(ratios, ratingVolts);

    [Fact]
    public void A_stack_that_serves_in_every_ratio_may_not_serve_at_changes()
    {
        SynthesisRequest request = Requests.Of(2, "1/3 1/2 2/3") with { SwitchRatingVolts = 1.4, LargestStack = 2, Cost = SynthesisCost.Devices };
        Assert.Equal(SynthesisOutcome.Proved, SmallestConverter.Find(request).Outcome);
        SynthesisResult none = SmallestConverter.Find(request with { HoldsAtChanges = true });
        Assert.Equal(SynthesisOutcome.NoneExists, none.Outcome);
        Assert.EndsWith("and holds at changes between them", none.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "1/2 1")]
    [InlineData(2, "1/2 1/3")]
    [InlineData(2, "2 3")]
    public void Switches_block_one_way_at_changes_too(int capacitors, string ratios)
    {
        SynthesisResult held = SmallestConverter.Find(Requests.Of(capacitors, ratios) with { BlocksOneWay = true, HoldsAtChanges = true });
        Assert.Equal(SynthesisOutcome.Proved, held.Outcome);
        Assert.All(held.Converter!.Switches.Select(s => s.Name), name =>
        {
            SwitchStress[] open = [held.Stress!.Switches[name], .. held.Stress.Changes.Select(c => c.OpenSwitches[name])];
            Assert.True(open.All(s => s.PeakPositive is null) || open.All(s => s.PeakNegative is null), name);
        });
    }

    // two capacitors in parallel between input and output after a third: docs/theory/stress.md, "The instant of a change"
    [Fact]
    public void A_way_over_closed_switches_adds_up_the_voltages_held()
    {
        SwitchPlace[] places = [new(1, 3), new(2, 4), new(1, 5), new(2, 6), new(4, 5)];
        ChangePath[] ways = [.. ChangePath.All(2, places, [4], [], [0, 1, 2, 3])];
        Fraction[] volts = [.. ways.Select(w => w.Volts([3, 1, 1, 1], 1))];
        Assert.Equal(new Fraction(-2, 3), volts.Min());
        Assert.Equal(new Fraction(0), volts.Max());
        Assert.Equal(4, ways.Length);
    }

    [Fact]
    public void A_wire_joins_what_it_leads_to_and_is_no_way_of_its_own()
    {
        // the bottom plate wired to the reference: all is one piece, whatever is closed
        SwitchPlace[] places = [new(0, 4), new(1, 3), new(2, 3)];
        ChangePath way = Assert.Single(ChangePath.All(1, places, [2], [0], [1]));
        Assert.Equal(new Fraction(-1, 2), way.Volts([2, 1, 2], 1));
        Assert.Equal([0], way.Joined);
    }

    private static void ExpectWithinDevices(string ratios, double ratingVolts)
    {
        SynthesisRequest request = Requests.Of(2, ratios) with { Cost = SynthesisCost.Devices, SwitchRatingVolts = ratingVolts, LargestStack = 3 };
        SynthesisResult free = Solved.Of(request), held = Solved.Of(request with { HoldsAtChanges = true });
        Assert.Equal(SynthesisOutcome.Proved, held.Outcome);
        Assert.True(held.Cost >= free.Cost, $"{held.Cost} against {free.Cost}");
        Assert.All(held.Stress!.Changes, change =>
        {
            Assert.True(change.IsExact);
            Assert.All(change.OpenSwitches.Concat(change.ClosedSwitches), s =>
                Assert.True(Math.Abs(s.Peak?.Volts ?? 0) <= (ratingVolts * held.Devices![s.Switch.Name]) + 1e-9, $"{change}: {s}"));
        });
    }
}
