using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis.Realising;

/// <summary>Which of some converters loses least where losses count, each with the sizes that suit it best.</summary>
/// <param name="Choice">The one; null where none holds the output at every point.</param>
/// <param name="Sizes">Its sizes; null as it is.</param>
/// <param name="Obstacle">What stands against the last of those that do not; null where all hold.</param>
internal sealed record LeastLoss(Choice? Choice, SizedDesign? Sizes, string? Obstacle)
{
    /// <summary>Sizes converters, on all cores, and takes the first of those that lose least.</summary>
    /// <param name="name">The name of the converter.</param>
    /// <param name="request">The request.</param>
    /// <param name="choices">The converters.</param>
    /// <param name="points">The points, see <see cref="LossPoints"/>.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <remarks>Cost: some tens of milliseconds for each.</remarks>
    public static LeastLoss Of(string name, SynthesisRequest request, IReadOnlyList<Choice> choices, IReadOnlyList<SizingPoint> points, CancellationToken cancellation)
    {
        var outcomes = new SizingOutcome[choices.Count];
        Parallel.For(0, choices.Count, new ParallelOptions { CancellationToken = cancellation }, c => outcomes[c] = Sized(ChosenConverter.Of(name, request, choices[c]), request, points));
        int best = -1;
        for (int c = 0; c < outcomes.Length; c++)
        {
            if (Holds(outcomes[c]) && (best < 0 || outcomes[c].Design!.WeightedLossWatts < outcomes[best].Design!.WeightedLossWatts))
            {
                best = c;
            }
        }

        string? obstacle = outcomes.LastOrDefault(o => !Holds(o)) switch
        {
            { Unreachable: [var point, ..] } => point.ToString(),
            { Findings: [var finding, ..] } => finding.Message,
            _ => null,
        };
        return best < 0 ? new LeastLoss(null, null, obstacle) : new LeastLoss(choices[best], outcomes[best].Design, obstacle);
    }

    private static SizingOutcome Sized(Converter converter, SynthesisRequest request, IReadOnlyList<SizingPoint> points) => SizedDesign.Try(
        ConverterAnalysis.Of(converter), request.LeastLoss!.Requirement.Process, points, AreaBudget.Of(request.LeastLoss.Requirement), request.LeastLoss.Requirement.FrequencyHz);

    private static bool Holds(SizingOutcome outcome) => outcome.Design is { Unreachable.Count: 0 };
}
