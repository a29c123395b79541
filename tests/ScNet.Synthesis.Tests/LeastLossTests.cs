using ScNet.Analysis;
using ScNet.Design.Requirements;
using ScNet.Design.Sizing;
using ScNet.Netlists;

namespace ScNet.Synthesis.Tests;

public class LeastLossTests
{
    // the invented requirement of the documentation
    private static readonly Requirement s_core = RequirementReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml")).Requirement!;

    [Theory]
    [InlineData("1/2", 0)]
    [InlineData("1/2", 1)]
    [InlineData("1/2 -1", 0)]
    public void Of_one_capacitor_no_converter_and_no_way_to_close_its_switches_loses_less(string ratios, int further) => LosesLeast(ratios, further);

    [Theory]
    [Trait("Length", "Long")]
    [InlineData("1/2 2", 0)]
    [InlineData("1/2 2", 1)]
    public void Of_one_capacitor_for_two_ratios_none_loses_less_either(string ratios, int further) => LosesLeast(ratios, further);

    private static void LosesLeast(string ratios, int further)
    {
        SynthesisRequest request = Asked(1, ratios, further);
        SynthesisResult result = SmallestConverter.Find(request);
        Assert.Equal(SynthesisOutcome.Proved, result.Outcome);
        double[] losses = [.. EveryControl.Converters([.. request.Ratios.Select(r => r.Ratio)], result.Bound!.Value + further)
            .Select(c => Sized(c, result)).Where(o => o.Design is { Unreachable.Count: 0 }).Select(o => o.Design!.WeightedLossWatts)];
        Assert.NotEmpty(losses);
        Assert.Equal(losses.Min(), result.Sizes!.WeightedLossWatts, result.Sizes.WeightedLossWatts * 1e-5);
    }

    [Fact]
    public void Any_of_as_few_switches_loses_more_than_the_one_that_is_taken()
    {
        SynthesisResult best = SmallestConverter.Find(Asked(2, "1/3 1/2")), any = SmallestConverter.Find(Asked(2, "1/3 1/2") with { LeastLoss = null });
        Assert.Equal((SynthesisOutcome.Proved, 63, 7, 7), (best.Outcome, best.SizedCount, best.Cost, best.Bound));
        Assert.Equal(7, any.Cost);
        Assert.True(Sized(any.Converter!, best).Design!.WeightedLossWatts > 1.2 * best.Sizes!.WeightedLossWatts);
        Assert.Equal(best.Sizes.WeightedLossWatts, best.LossBoundWatts);
        Assert.EndsWith("W lost, least of all 63 converters of at most 7 switches", best.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Length", "Long")]
    public void What_is_told_is_what_the_ordinary_sizing_makes_of_the_netlist()
    {
        SynthesisResult result = SmallestConverter.Find(Asked(2, "1/3 1/2"));
        Converter read = NetlistReader.Read(NetlistWriter.ToToml(result.Converter!)).GetConverter();
        Assert.Equal(result.Sizes!.WeightedLossWatts, Sized(read, result).Design!.WeightedLossWatts, 1e-12);
        Assert.Equal(1, result.Sizes.Points.Sum(p => p.Point.Weight), 1e-12);

        // the ends and the middle of each range with each of three states of the load
        Assert.Equal(2 * 3 * 3, result.Sizes.Points.Count);
    }

    [Fact]
    public void The_least_loss_is_concave_in_the_weights_of_ratios_and_falls_with_what_may_be_spent()
    {
        // the least of sums that are straight lines in the weights
        double Loss(double first, double second, int further = 0)
        {
            SynthesisRequest request = Asked(1, "1/2 2", further);
            return SmallestConverter.Find(request with { Ratios = [request.Ratios[0] with { Weight = first }, request.Ratios[1] with { Weight = second }] }).Sizes!.WeightedLossWatts;
        }

        double equal = Loss(1, 1);
        Assert.True(equal >= (Loss(1, 3) + Loss(3, 1)) / 2);
        Assert.Equal(equal, Loss(5, 5), 1e-12);
        Assert.True(Loss(1, 1, further: 1) <= equal);
        Assert.True(Loss(1, 1, further: 2) <= Loss(1, 1, further: 1));
    }

    [Fact]
    public void A_ratio_without_room_above_the_output_is_said_to_be()
    {
        SynthesisRequest request = Asked(2, "1/3 1/2");
        SynthesisResult result = SmallestConverter.Find(request with { Ratios = [request.Ratios[0], request.Ratios[1] with { LowestInputVolts = 1.5 }] });
        Assert.Equal((SynthesisOutcome.NoneExists, "1/2 makes no 0.8 V from 1.5 V, even without load"), (result.Outcome, result.Reason));
    }

    [Fact]
    public void Where_no_sizes_hold_the_output_the_reason_says_what_is_missing()
    {
        SynthesisResult result = SmallestConverter.Find(Asked(1, "1/2") with { LeastLoss = new LossAim(s_core with { AreaSquareMetres = 1e-9 }) });
        Assert.Equal((SynthesisOutcome.NoneExists, 1), (result.Outcome, result.SizedCount));
        Assert.StartsWith("the only converter of at most 4 switches does not hold the output at every point, for this reason: mode 1/2, 1.76 V to 0.8 V", result.Reason, StringComparison.Ordinal);
        Assert.Null(result.LossBoundWatts);
    }

    [Fact]
    public void Where_the_work_is_up_the_bound_is_what_no_network_saves()
    {
        SynthesisRequest request = Asked(2, "1/3 1/2", further: 1);
        SynthesisResult result = SmallestConverter.Find(request with { LargestEffort = 0.4 });
        Assert.Equal(SynthesisOutcome.BoundReached, result.Outcome);
        Assert.Contains(", not all; at least ", result.ToString(), StringComparison.Ordinal);

        // 10, 15 and 20 % above 0.8 V, or above 0.5 V while asleep, are left over
        double active = 0.8 * 0.15 * ((2e-3 * 0.035) + (1e-2 * 0.005)), asleep = ((0.8 * 1.15) - 0.5) * 2e-5 * 0.96;
        Assert.Equal(active + asleep, result.LossBoundWatts!.Value, 1e-12);
        Assert.True(result.Sizes!.WeightedLossWatts > result.LossBoundWatts);
    }

    [Fact]
    public void What_makes_no_sense_is_refused()
    {
        SynthesisRequest request = Asked(1, "1/2");
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { Ratios = [request.Ratios[0] with { LowestInputVolts = null }] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { Ratios = [request.Ratios[0] with { LowestInputVolts = 3 }] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { Ratios = [request.Ratios[0] with { Weight = 0 }] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { Ratios = [request.Ratios[0] with { Weight = double.NaN }] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestConverter.Find(request with { LeastLoss = new LossAim(s_core) { FurtherCost = -1 } }));
        Assert.Throws<ArgumentException>(() => SmallestConverter.Find(request with { LeastLoss = new LossAim(null!) }));
        Assert.Throws<ArgumentException>(() => SmallestConverter.Find(request with { LeastLoss = new LossAim(s_core with { AreaSquareMetres = null }) }));
        Assert.Throws<ArgumentException>(() => SmallestConverter.Find(request with { HoldsAtChanges = true }));
    }

    private static SynthesisRequest Asked(int capacitors, string ratios, int further = 0) =>
        new([.. Requests.Ratios(ratios).Select(r => new WantedRatio(r, 0.8 * 1.2 / Math.Abs(r.ToDouble())) { LowestInputVolts = 0.8 * 1.1 / Math.Abs(r.ToDouble()) })], capacitors)
        {
            LeastLoss = new LossAim(s_core) { FurtherCost = further },
        };

    // another converter at the points of a result, mode by mode
    private static SizingOutcome Sized(Converter converter, SynthesisResult result)
    {
        string[] modes = [.. result.Converter!.Modes.Select(m => m.Name)];
        return SizedDesign.Try(
            ConverterAnalysis.Of(converter), s_core.Process, [.. result.Sizes!.Points.Select(p => p.Point with { Mode = converter.Modes[Array.IndexOf(modes, p.Point.Mode)].Name })], AreaBudget.Of(s_core), s_core.FrequencyHz);
    }
}
