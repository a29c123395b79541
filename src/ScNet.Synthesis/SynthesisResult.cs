using ScNet.Design.Sizing;
using ScNet.Search;
using ScNet.Stress;

namespace ScNet.Synthesis;

/// <summary>The smallest converter for a request, and what is proved of it.</summary>
public sealed class SynthesisResult
{
    internal SynthesisResult(SynthesisRequest request, SynthesisOutcome outcome, string? reason, int? bound, double effort)
    {
        Request = request;
        Outcome = outcome;
        Reason = reason;
        Bound = bound;
        Effort = effort;
    }

    /// <summary>What was asked.</summary>
    public SynthesisRequest Request { get; }

    /// <summary>What came of it.</summary>
    public SynthesisOutcome Outcome { get; }

    /// <summary>Why there is none; null unless <see cref="SynthesisOutcome.NoneExists"/>.</summary>
    public string? Reason { get; }

    /// <summary>What every converter costs at least; null where none exists.</summary>
    public int? Bound { get; }

    /// <summary>The work that was done, in deterministic units of the solver, roughly seconds of one core.</summary>
    public double Effort { get; }

    /// <summary>
    /// The converter, a mode per ratio that bears its name; capacitances and on-resistances are 1. Null where none
    /// exists or none was found.
    /// </summary>
    public Converter? Converter { get; internal init; }

    /// <summary>
    /// Where <see cref="SynthesisRequest.LeastLoss"/> is asked for, kinds, stacks, sizes and frequencies with which the converter loses least, and the
    /// loss: <see cref="SizedDesign.WeightedLossWatts"/>, its weights adding up to 1. Null elsewhere, and without a converter.
    /// </summary>
    public SizedDesign? Sizes { get; internal init; }

    /// <summary>How many different converters cost little enough and were sized; null where no losses count.</summary>
    public int? SizedCount { get; internal init; }

    /// <summary>
    /// What every converter of these ratios loses at least in watts (W), weighted like <see cref="Sizes"/>: where all that cost little enough were sized, the loss of the best, and else the
    /// voltage left over times the current, which no network saves. Null where no losses count, or none exists.
    /// </summary>
    public double? LossBoundWatts { get; internal init; }

    /// <summary>What it costs, in the unit of <see cref="SynthesisRequest.Cost"/>; null without a converter.</summary>
    public int? Cost { get; internal init; }

    /// <summary>Its stress at the highest input voltage of each ratio, by which ratings were checked; null without a converter.</summary>
    public ConverterStress? Stress { get; internal init; }

    /// <summary>The devices of each switch, by position and by name as in <see cref="Converter.Switches"/>; null without a converter.</summary>
    public NamedList<int>? Devices { get; internal init; }

    /// <summary>Per ratio the wirings of its phases that were chosen, over the converter's capacitors; null without a converter.</summary>
    public IReadOnlyList<IReadOnlyList<Wiring>>? Wirings { get; internal init; }

    internal SynthesisResult WithSizes(SizedDesign sizes, int sizedCount, double lossBoundWatts, bool isProved) =>
        new(Request, isProved ? SynthesisOutcome.Proved : SynthesisOutcome.BoundReached, null, Bound, Effort)
        {
            Converter = Converter,
            Cost = Cost,
            Stress = Stress,
            Devices = Devices,
            Wirings = Wirings,
            Sizes = sizes,
            SizedCount = sizedCount,
            LossBoundWatts = lossBoundWatts,
        };

    /// <summary>The outcome in a line.</summary>
    public override string ToString()
    {
        string ratios = string.Join(", ", Request.Ratios.Select(r => r.Ratio));
        string found = Converter is null
            ? "none found"
            : $"{UnitText.Count(Converter.Switches.Count, "switch", "switches")}, {UnitText.Count(Devices!.Sum(), "device", "devices")}";
        if (Sizes is { } sizes)
        {
            found += $", {EngineeringNumber.Of(sizes.WeightedLossWatts, "W")} lost";
        }

        return Outcome switch
        {
            SynthesisOutcome.Proved when SizedCount is { } count => $"{ratios}: {found}, least of all {UnitText.Count(count, "converter", "converters")} of at most {CostText.Of(Request.Cost, Bound + Request.LeastLoss!.FurtherCost)}",
            SynthesisOutcome.Proved => $"{ratios}: {found}, proved least",
            SynthesisOutcome.BoundReached when SizedCount is { } count => $"{ratios}: {found}, least of {UnitText.Count(count, "converter", "converters")}, not all; at least {EngineeringNumber.Of(LossBoundWatts, "W")}",
            SynthesisOutcome.NoneExists => $"{ratios}: {Reason}",
            _ => $"{ratios}: {found}, at least {CostText.Of(Request.Cost, Bound)}",
        };
    }
}
