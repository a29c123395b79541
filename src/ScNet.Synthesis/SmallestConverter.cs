using ScNet.Synthesis.Candidates;
using ScNet.Synthesis.Realising;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis;

/// <summary>
/// The reconfigurable converter of two phases with the least switches, devices or area that makes given ratios, proved
/// by an exact solver; and of all of them, or of all that cost a little more, the one that loses least.
/// </summary>
/// <remarks>
/// Every converter is considered whose capacitor voltages and potentials are determined in every phase of every ratio,
/// none of them zero: all networks of so many capacitors, those that leave some of them idle among them, with their
/// capacitors permuted and turned at will, and every set of switches between terminals. See
/// docs/theory/smallest-converters.md. The same request gives the same answer on every run.
/// </remarks>
public static class SmallestConverter
{
    /// <summary>Finds it.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="name">The name of the converter.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="ArgumentException">A ratio is zero or stands there twice, or there is none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static SynthesisResult Find(SynthesisRequest request, string name = "smallest", CancellationToken cancellationToken = default)
    {
        RequestCheck.Of(request);
        Guard.Named(name, nameof(name));
        RatioCandidates[] found = [.. RatioCandidates.Of(PhaseSpace.All(request.CapacitorCount), [.. request.Ratios.Select(r => r.Ratio)], cancellationToken)];
        ModeCandidates[] modes = [.. found.Zip(request.Ratios, (f, r) => new ModeCandidates(r, f.Groups, f.Pairs))];
        DeviceSteps steps = DeviceSteps.Of(request);
        if (ReasonOfNone.Without(request, modes, found) is { } missing)
        {
            return new SynthesisResult(request, SynthesisOutcome.NoneExists, missing, null, 0);
        }

        if (request.LeastLoss is not null && ReasonOfNone.Beyond(request) is { } beyond)
        {
            return new SynthesisResult(request, SynthesisOutcome.NoneExists, beyond, null, 0);
        }

        if (request.CapacitorRatingVolts is { } rating)
        {
            modes = [.. modes.Select(m => m.Within(rating))];
        }

        // each ratio alone: the dearest of them bounds them all; that with the fewest networks goes first, as it is most likely that one
        double effort = 0;
        int bound = 0;
        foreach (ModeCandidates mode in modes.OrderBy(m => m.Pairs.Count))
        {
            SynthesisModel alone = SynthesisModel.Of(request.CapacitorCount, [mode.OneOfEachKind()], steps, request.BlocksOneWay);
            SolvedModel solved = SolvedModel.Of(alone, bound, request.LargestEffort - effort, cancellationToken);
            effort += solved.Effort;
            if (solved is { IsSettled: true, Choice: null })
            {
                return new SynthesisResult(request, SynthesisOutcome.NoneExists, ReasonOfNone.Alone(request, mode, cancellationToken), null, effort);
            }

            bound = solved.Bound;
            if (effort >= request.LargestEffort)
            {
                return new SynthesisResult(request, SynthesisOutcome.BoundReached, null, bound, effort);
            }
        }

        return Together(request, name, modes, steps, bound, effort, cancellationToken);
    }

    private static SynthesisResult Together(
        SynthesisRequest request, string name, ModeCandidates[] modes, DeviceSteps steps, int bound, double effort, CancellationToken cancellation)
    {
        // names and directions of capacitors are free, so that one ratio takes one network of each kind: the one with fewest
        int rarest = Array.IndexOf(modes, modes.MinBy(m => m.Pairs.Count));
        ModeCandidates[] named = [.. modes.Select((m, i) => i == rarest ? m.OneOfEachKind() : m)];
        SynthesisModel model = SynthesisModel.Of(request.CapacitorCount, named, steps, request.BlocksOneWay, request.HoldsAtChanges && named.Length > 1);
        SolvedModel solved = SolvedModel.Of(model, bound, request.LargestEffort - effort, cancellation);
        effort += solved.Effort;
        if (solved.Choice is null)
        {
            return solved.IsSettled
                ? new SynthesisResult(request, SynthesisOutcome.NoneExists, ReasonOfNone.Together(request), null, effort)
                : new SynthesisResult(request, SynthesisOutcome.BoundReached, null, solved.Bound, effort);
        }

        return request.LeastLoss is not null && solved.IsSettled
            ? LeastLosingConverter.Of(request, name, named, steps, solved, effort, cancellation)
            : ChosenResult.Of(request, name, steps, solved.Choice.Thinned(), solved.Bound, solved.IsSettled ? solved.Bound : null, effort);
    }
}
