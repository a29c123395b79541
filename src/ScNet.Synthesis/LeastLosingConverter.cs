using ScNet.Design.Sizing;
using ScNet.Synthesis.Candidates;
using ScNet.Synthesis.Realising;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis;

/// <summary>Lists every converter that costs little, and takes the one that loses least (docs/theory/smallest-converters.md, "Least loss").</summary>
internal static class LeastLosingConverter
{
    /// <summary>What the sizes of one converter count as effort, so that the same effort does the same everywhere.</summary>
    public const double EffortOfSizes = 0.02;

    private const int LongestList = 1_000_000;

    /// <summary>Finds it.</summary>
    /// <param name="request">The request.</param>
    /// <param name="name">The name of the converter.</param>
    /// <param name="modes">The candidates of each ratio, those of one without others of the same kind.</param>
    /// <param name="steps">How many devices switches need.</param>
    /// <param name="least">The converter of least cost, settled.</param>
    /// <param name="effort">The work that was done.</param>
    /// <param name="cancellation">Stops it.</param>
    public static SynthesisResult Of(
        SynthesisRequest request, string name, IReadOnlyList<ModeCandidates> modes, DeviceSteps steps, SolvedModel least, double effort, CancellationToken cancellation)
    {
        int allowed = least.Bound + request.LeastLoss!.FurtherCost;
        IReadOnlyList<SizingPoint> points = LossPoints.Of(request);

        // half of what is left for the list, half for the sizes
        double half = Math.Max((request.LargestEffort - effort) / 2, EffortOfSizes);
        ChoiceList all = ChoiceList.Of(
            SynthesisModel.ForListing(request.CapacitorCount, modes, steps, request.BlocksOneWay), allowed, half, (int)Math.Min(half / EffortOfSizes, LongestList), cancellation);
        IReadOnlyList<Choice> choices = all.Choices.Count > 0 ? all.Choices : [least.Choice!];
        effort += all.Effort + (EffortOfSizes * choices.Count);
        LeastLoss found = LeastLoss.Of(name, request, choices, points, cancellation);
        if (found.Choice is null)
        {
            return all.IsComplete
                ? new SynthesisResult(request, SynthesisOutcome.NoneExists, ReasonOfNone.Held(request, choices.Count, allowed, found.Obstacle!), null, effort) { SizedCount = choices.Count }
                : new SynthesisResult(request, SynthesisOutcome.BoundReached, null, least.Bound, effort)
                {
                    SizedCount = choices.Count,
                    LossBoundWatts = LossPoints.LeastWatts(request, points),
                };
        }

        return ChosenResult.Of(request, name, steps, found.Choice, least.Bound, allowed, effort)
            .WithSizes(found.Sizes!, choices.Count, all.IsComplete ? found.Sizes!.WeightedLossWatts : LossPoints.LeastWatts(request, points), all.IsComplete);
    }
}
