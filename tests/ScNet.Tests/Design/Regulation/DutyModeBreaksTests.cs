using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Where the pieces of a range of duties begin and end: a stage of straight lines is asked at 17 duties of each, rising.</summary>
public sealed class DutyModeBreaksTests
{
    private const int Points = 17;
    private const double Inset = 1.0 / (1L << 30);

    private readonly List<double> _asked = [];

    [Fact]
    public void A_piece_ends_just_below_a_break_and_the_next_one_begins_just_above_it()
    {
        Prepare(0.25, 0.75, 0.5);
        Assert.Equal(2 * Points, _asked.Count);
        Assert.Equal((0.25, 0.5 - Inset, 0.5 + Inset, 0.75), (_asked[0], _asked[Points - 1], _asked[Points], _asked[^1]));
    }

    [Fact]
    public void Breaks_may_come_in_any_order_and_twice()
    {
        Prepare(0.25, 0.75, 0.625, 0.375, 0.625);
        Assert.Equal(3 * Points, _asked.Count);
        Assert.Equal(_asked.Order(), _asked);
        Assert.Equal((0.375 - Inset, 0.625 + Inset), (_asked[Points - 1], _asked[2 * Points]));
    }

    [Fact]
    public void Breaks_outside_of_the_range_and_within_four_insets_of_its_ends_part_nothing()
    {
        Prepare(0.25, 0.75, 0.1, 0.25 + (4 * Inset), 0.75 - (4 * Inset), 0.9);
        Assert.Equal(Points, _asked.Count);
        Assert.Equal((0.25, 0.75), (_asked[0], _asked[^1]));
    }

    [Fact]
    public void A_break_at_an_end_of_the_range_is_kept_clear_of_and_parts_nothing()
    {
        Prepare(0.25, 0.75, 0.25, 0.75);
        Assert.Equal(Points, _asked.Count);
        Assert.Equal((0.25 + Inset, 0.75 - Inset), (_asked[0], _asked[^1]));
    }

    [Fact]
    public void A_range_of_four_insets_is_refused_before_any_stage_is_built_and_one_of_eight_is_not()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Prepare(0.5, 0.5 + (4 * Inset)));
        Assert.Empty(_asked);
        Prepare(0.5, 0.5 + (8 * Inset));
        Assert.NotEmpty(_asked);
    }

    private void Prepare(double low, double high, params double[] breaks) => RegulatedModes.OfDuty("step-down", Stage, new(low, high), 1e6, breaks);

    private LossModel Stage(Fraction duty)
    {
        _asked.Add(duty.ToDouble());
        Converter converter = InductiveStage.StepDown(duty, 2.2e-6, 0.05, 0.03);
        return LossModel.Of(Sized.Of(converter, capacitor: Sized.BareCapacitor), ModeAnalysis.Of(converter));
    }
}
