using Fractions;
using ScNet.Analysis;

namespace ScNet.Synthesis.Tests;

public class SmallestConverterTests
{
    [Fact]
    public void A_ratio_beyond_so_many_capacitors_is_said_to_be()
    {
        SynthesisResult result = SmallestConverter.Find(Requests.Of(2, "2/5 1/2"));
        Assert.Equal(SynthesisOutcome.NoneExists, result.Outcome);
        Assert.Null(result.Converter);
        Assert.Null(result.Bound);
        Assert.Equal(
            "no network of 2 flying capacitors makes 2/5 in two phases: of so many, no ratio has a numerator or denominator above 3",
            result.Reason);
    }

    [Theory]
    [InlineData(1.5, 1, SynthesisOutcome.NoneExists)]
    [InlineData(2.0999, 1, SynthesisOutcome.NoneExists)]
    [InlineData(2.1, 1, SynthesisOutcome.Proved)]
    [InlineData(0.7, 3, SynthesisOutcome.Proved)]
    [InlineData(0.69999, 3, SynthesisOutcome.NoneExists)]
    public void A_half_needs_switches_that_block_half_of_the_input(double ratingVolts, int stack, SynthesisOutcome outcome)
    {
        // common practice, no source: every switch of a doubler run backwards blocks the output's voltage
        SynthesisResult result = SmallestConverter.Find(Requests.Of(1, "1/2") with { SwitchRatingVolts = ratingVolts, LargestStack = stack });
        Assert.Equal(outcome, result.Outcome);
        Assert.Equal(outcome == SynthesisOutcome.NoneExists, result.Reason?.Contains("has a switch that blocks 2.1 V or more", StringComparison.Ordinal) ?? false);
    }

    [Fact]
    public void The_rating_is_held_at_the_input_voltage_of_each_ratio()
    {
        SynthesisRequest request = new([new(new Fraction(1, 2), 3), new(new Fraction(1, 3), 4.2)], 2) { SwitchRatingVolts = 1.5 };
        Assert.Equal(SynthesisOutcome.NoneExists, SmallestConverter.Find(request with { Ratios = [.. request.Ratios.Select(r => r with { HighestInputVolts = 4.2 })] }).Outcome);
        SynthesisResult stacked = SmallestConverter.Find(request with { LargestStack = 2, Cost = SynthesisCost.Devices });
        Assert.Equal(SynthesisOutcome.Proved, stacked.Outcome);
        Assert.All(stacked.Converter!.Switches.Select(s => s.Name), name => Assert.Equal(
            (int)Math.Ceiling((Math.Abs(stacked.Stress!.Switches[name].Peak!.Volts) / 1.5) - 1e-9), stacked.Devices![name]));
        Assert.Equal(stacked.Devices!.Sum(), stacked.Cost);
    }

    [Theory]
    [InlineData(SynthesisCost.Switches)]
    [InlineData(SynthesisCost.Devices)]
    [InlineData(SynthesisCost.Area)]
    public void Every_mode_makes_its_ratio_and_no_result_has_less_of_what_another_has_least(SynthesisCost cost)
    {
        SynthesisRequest request = Requests.Of(2, "1/2 1/3") with { SwitchRatingVolts = 1.5, LargestStack = 3, Cost = cost };
        SynthesisResult result = Solved.Of(request);
        ConverterAnalysis analysis = ConverterAnalysis.Of(result.Converter!);
        Assert.Equal(["1/2", "1/3"], analysis.Results.Select(m => m.Ratio.ToString()));
        foreach (SynthesisCost other in Enum.GetValues<SynthesisCost>())
        {
            SynthesisResult least = Solved.Of(request with { Cost = other });
            Assert.True(CostOf(result, other) >= least.Cost, $"{other}");
            Assert.Equal(least.Cost, CostOf(least, other));
        }
    }

    [Theory]
    [InlineData("1/2 1/3")]
    [InlineData("1/3 1/2 2/3")]
    [InlineData("2 3")]
    public void Switches_that_block_one_way_only_cost_no_fewer(string ratios)
    {
        SynthesisResult free = Solved.Of(Requests.Of(2, ratios));
        SynthesisResult oneWay = SmallestConverter.Find(Requests.Of(2, ratios) with { BlocksOneWay = true });
        Assert.Equal(SynthesisOutcome.Proved, oneWay.Outcome);
        Assert.DoesNotContain(oneWay.Stress!.Switches, s => s.BlocksBothWays);
        Assert.True(oneWay.Cost >= free.Cost, $"{oneWay.Cost} against {free.Cost}");
    }

    [Fact]
    public void Capacitors_stay_within_their_rating()
    {
        SynthesisRequest request = Requests.Of(2, "1/3 1/2");
        SynthesisResult within = SmallestConverter.Find(request with { CapacitorRatingVolts = 2.8 });
        Assert.Equal(SynthesisOutcome.Proved, within.Outcome);
        Assert.All(within.Stress!.Capacitors, c => Assert.True(Math.Abs(c.Peak!.Volts) <= 2.8, $"{c}"));

        // a third takes a capacitor at a third or two of the input at least
        SynthesisResult none = SmallestConverter.Find(request with { CapacitorRatingVolts = 1.3 });
        Assert.Equal(SynthesisOutcome.NoneExists, none.Outcome);
        Assert.Equal("every network of 2 flying capacitors that makes 1/3 from 4.2 V has a capacitor above 1.3 V", none.Reason);
    }

    [Fact]
    public void The_same_request_gives_the_same_converter_and_effort()
    {
        SynthesisResult first = SmallestConverter.Find(Requests.Of(2, "1/2 1/3 2/3")), second = SmallestConverter.Find(Requests.Of(2, "1/2 1/3 2/3"));
        Assert.Equal(ScNet.Netlists.NetlistWriter.ToToml(first.Converter!), ScNet.Netlists.NetlistWriter.ToToml(second.Converter!));
        Assert.Equal(first.Effort, second.Effort);
    }

    [Fact]
    public void Where_the_work_is_up_the_bound_is_told()
    {
        SynthesisResult result = SmallestConverter.Find(Requests.Of(2, "1/2 1/3 2/3") with { LargestEffort = 1e-6 });
        Assert.Equal(SynthesisOutcome.BoundReached, result.Outcome);
        Assert.True(result.Bound <= 7, $"{result.Bound}");
    }

    [Fact]
    public void A_search_can_be_stopped()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => SmallestConverter.Find(Requests.Of(2, "1/2"), cancellationToken: stop.Token));
    }

    [Fact]
    public void Requests_without_sense_are_refused()
    {
        SynthesisRequest request = Requests.Of(2, "1/2");
        Assert.Throws<ArgumentException>(() => SmallestConverter.Find(request with { Ratios = [] }));
        Assert.Throws<ArgumentException>(() => SmallestConverter.Find(Requests.Of(2, "1/2 2/4")));
        Assert.Throws<ArgumentException>(() => SmallestConverter.Find(Requests.Of(2, "0")));
        Assert.Throws<ArgumentException>(() => SmallestConverter.Find(request with { Cost = SynthesisCost.Devices }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { CapacitorCount = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { CapacitorCount = SynthesisRequest.MostCapacitors + 1 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { SwitchRatingVolts = double.NaN }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { SwitchRatingVolts = 1, LargestStack = 9 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { LargestEffort = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(Requests.Of(2, "1/2", inputVolts: -1)));
    }

    private static int CostOf(SynthesisResult result, SynthesisCost cost) => result.Devices!.Sum(d => cost switch
    {
        SynthesisCost.Switches => 1,
        SynthesisCost.Devices => d,
        _ => d * d,
    });
}
