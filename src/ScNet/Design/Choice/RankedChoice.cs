using ScNet.Design.Requirements;

namespace ScNet.Design.Choice;

/// <summary>All candidates of a requirement, each with the sizes that lose least, in the order of what they make of the energy.</summary>
/// <remarks>
/// The order is by life where the requirement names the charge of a cell, else by average input power; of those that are equal to six digits the
/// first asked for comes first. Every candidate is worked out by itself and the order is made of the results, so the answer does not
/// depend on how many threads there are.
/// </remarks>
public sealed class RankedChoice
{
    private RankedChoice(Requirement requirement, IReadOnlyList<RankedCandidate> ranked, IReadOnlyList<RejectedCandidate> rejected, IReadOnlyList<Candidate> left)
    {
        Requirement = requirement;
        Ranked = [.. ranked];
        Rejected = [.. rejected];
        Left = [.. left];
    }

    /// <summary>What is required.</summary>
    public Requirement Requirement { get; }

    /// <summary>The candidates that do what is required, the best first.</summary>
    public IReadOnlyList<RankedCandidate> Ranked { get; }

    /// <summary>The candidates that do not, in the order asked for.</summary>
    public IReadOnlyList<RejectedCandidate> Rejected { get; }

    /// <summary>The candidates that were not worked out, as the choice was stopped or the requirement contradicts itself; empty else.</summary>
    public IReadOnlyList<Candidate> Left { get; }

    /// <summary>What in the requirement does not agree with the rest, as errors: nothing is worked out then; empty else.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics => Requirement.Contradictions;

    /// <summary>Whether every candidate was worked out.</summary>
    public bool IsComplete => Left.Count == 0;

    /// <summary>The best candidate; null where none does what is required.</summary>
    public RankedCandidate? Winner => Ranked.Count > 0 ? Ranked[0] : null;

    /// <summary>Works out and ranks candidates.</summary>
    /// <param name="requirement">What is required.</param>
    /// <param name="candidates">The candidates, each with a name of its own.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1; may be null.</param>
    /// <param name="threads">The most threads; 0 for as many as the machine has.</param>
    /// <param name="cancellationToken">Stops the work; what is done until then is ranked.</param>
    public static RankedChoice Of(
        Requirement requirement, IReadOnlyList<Candidate> candidates, IProgress<double>? progress = null, int threads = 0, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        if (requirement.Contradictions.Count > 0)
        {
            return new RankedChoice(requirement, [], [], candidates);
        }

        var designs = new CandidateDesign?[candidates.Count];
        int done = 0;
        ParallelLoop.Run(() => Parallel.For(0, designs.Length, new ParallelOptions { MaxDegreeOfParallelism = threads == 0 ? -1 : threads }, i =>
        {
            if (cancellationToken.IsCancellationRequested)
            {
                return;
            }

            try
            {
                designs[i] = CandidateDesign.Of(candidates[i], requirement, cancellationToken);
                progress?.Report((double)Interlocked.Increment(ref done) / designs.Length);
            }
            catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
            {
                // it counts among those that are left
            }
        }));

        CandidateDesign[] known = [.. designs.OfType<CandidateDesign>()];
        CandidateDesign[] order = [.. known.Where(d => d.IsAccepted).OrderByDescending(d => SixDigits.Of(d.Merit))];
        return new RankedChoice(
            requirement,
            [.. order.Select((d, i) => new RankedCandidate(i + 1, d, RankingReasons.Of(order, i)))],
            [.. known.Where(d => !d.IsAccepted).Select(d => new RejectedCandidate(d))],
            [.. candidates.Where((_, i) => designs[i] is null)]);
    }

    /// <summary>The order of the names.</summary>
    public override string ToString() => Diagnostics.Count > 0 ? $"{Requirement}: {string.Join("; ", Diagnostics)}"
        : Ranked.Count > 0 ? string.Join("; ", Ranked) : $"{Requirement}: no candidate does what is required";
}
