using ScNet.Design.Requirements;

namespace ScNet.Design.Choice;

/// <summary>Which input assumption would change the winner of a choice, and from which factor on.</summary>
/// <remarks>
/// Every assumption is varied by itself, down and up to a quarter and four times, and all contenders are sized anew: the first three of the
/// ranking, the first of every other class, and of those rejected all whose ratios reach the outputs and whose devices withstand their voltages, so that a
/// larger area, a smaller load or a better process might admit them. Where the winner is another one the factor is found by halving its logarithm. Cost: some
/// ten choices of the contenders per assumption.
/// </remarks>
public sealed class ChoiceSensitivity
{
    /// <summary>The largest factor that is tried, and one over the least.</summary>
    public const double LargestFactor = 4;

    private const int Contenders = 3, FactorsEachWay = 2, Halvings = 4;

    private ChoiceSensitivity(RankedChoice choice, IReadOnlyList<ChangedAssumption> changes, bool isComplete)
    {
        Choice = choice;
        Changes = [.. changes];
        IsComplete = isComplete;
    }

    /// <summary>The choice.</summary>
    public RankedChoice Choice { get; }

    /// <summary>Per assumption the factors nearest to 1 below and above it that change the winner, or one entry that says that none does.</summary>
    public IReadOnlyList<ChangedAssumption> Changes { get; }

    /// <summary>Whether every assumption was varied; false where the work was stopped.</summary>
    public bool IsComplete { get; }

    /// <summary>Varies the assumptions of a choice.</summary>
    /// <param name="choice">The choice; where it has no winner nothing is varied.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1; may be null.</param>
    /// <param name="threads">The most threads; 0 for as many as the machine has. The answer does not depend on it.</param>
    /// <param name="cancellationToken">Stops the work; what is done until then stays.</param>
    public static ChoiceSensitivity Of(RankedChoice choice, IProgress<double>? progress = null, int threads = 0, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        if (choice.Winner is not { } winner)
        {
            return new ChoiceSensitivity(choice, [], isComplete: true);
        }

        Candidate[] contenders =
        [
            .. choice.Ranked.Where((r, i) => i < Contenders || choice.Ranked.First(o => o.Candidate.Kind == r.Candidate.Kind) == r).Select(r => r.Candidate),
            .. choice.Rejected.Where(r => r.IsOpen).Select(r => r.Candidate),
        ];
        (Assumption Assumption, int Sign)[] sides = [.. Assumptions.Of(choice.Requirement).SelectMany(a => new[] { (a, -1), (a, 1) })];
        var found = new (bool IsDone, ChangedAssumption? Change)[sides.Length];
        int done = 0;
        ParallelLoop.Run(() => Parallel.For(0, sides.Length, new ParallelOptions { MaxDegreeOfParallelism = threads == 0 ? -1 : threads }, s =>
        {
            try
            {
                found[s] = (true, Nearest(sides[s].Assumption, sides[s].Sign, contenders, winner.Candidate, cancellationToken));
                progress?.Report((double)Interlocked.Increment(ref done) / sides.Length);
            }
            catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
            {
                // it counts among what is not done
            }
        }));

        List<ChangedAssumption> changes = [];
        for (int s = 0; s < sides.Length; s += 2)
        {
            changes.AddRange(new[] { found[s].Change, found[s + 1].Change }.OfType<ChangedAssumption>());
            if (found[s] == (true, null) && found[s + 1] == (true, null))
            {
                changes.Add(new ChangedAssumption(sides[s].Assumption.Name, null, null));
            }
        }

        return new ChoiceSensitivity(choice, changes, found.All(f => f.IsDone));
    }

    /// <summary>The changes, one per line.</summary>
    public override string ToString() => string.Join("\n", Changes);

    private static ChangedAssumption? Nearest(Assumption assumption, int sign, Candidate[] contenders, Candidate winner, CancellationToken token)
    {
        double same = 0;
        for (int k = 1; k <= FactorsEachWay; k++)
        {
            double other = sign * Math.Log(LargestFactor) * k / FactorsEachWay;
            Candidate? first = WinnerAt(other);
            if (first == winner)
            {
                same = other;
                continue;
            }

            for (int halving = 0; halving < Halvings; halving++)
            {
                double middle = (same + other) / 2;
                if (WinnerAt(middle) is var between && between != winner)
                {
                    (other, first) = (middle, between);
                }
                else
                {
                    same = middle;
                }
            }

            return new ChangedAssumption(assumption.Name, Math.Exp(other), first);
        }

        return null;

        Candidate? WinnerAt(double logarithm)
        {
            Requirement changed = assumption.With(Math.Exp(logarithm));
            Candidate? best = null;
            double most = double.NegativeInfinity;
            foreach (Candidate candidate in contenders)
            {
                token.ThrowIfCancellationRequested();
                CandidateDesign design = CandidateDesign.Of(candidate, changed, token);
                if (design.IsAccepted && design.Merit > most)
                {
                    (best, most) = (candidate, design.Merit);
                }
            }

            return best;
        }
    }
}
