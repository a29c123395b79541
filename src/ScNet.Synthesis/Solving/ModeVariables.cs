using System.Collections.ObjectModel;
using Google.OrTools.Sat;
using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>The choice of one ratio's network: a pair of loop spaces, and a wiring of each.</summary>
internal sealed class ModeVariables
{
    private ModeVariables(ModeCandidates candidates, BoolVar[] pairs, IReadOnlyList<(PhaseState, BoolVar)>[] states)
    {
        Candidates = candidates;
        Pairs = Array.AsReadOnly(pairs);
        States = states;
    }

    /// <summary>The networks of the ratio.</summary>
    public ModeCandidates Candidates { get; }

    /// <summary>Per pair of loop spaces whether it is chosen.</summary>
    public IReadOnlyList<BoolVar> Pairs { get; }

    /// <summary>Per phase the states that can be chosen.</summary>
    public IReadOnlyList<IReadOnlyList<(PhaseState State, BoolVar Chosen)>> States { get; }

    /// <summary>Adds the choice to a model.</summary>
    public static ModeVariables Of(CpModel model, ModeCandidates candidates)
    {
        BoolVar[] pairs = [.. candidates.Pairs.Select(_ => model.NewBoolVar(""))];
        model.AddExactlyOne(pairs);
        return new ModeVariables(candidates, pairs, [
            StatesOf(model, candidates, [.. candidates.Pairs.Select(p => p.First)], pairs),
            StatesOf(model, candidates, [.. candidates.Pairs.Select(p => p.Second)], pairs)]);
    }

    private static ReadOnlyCollection<(PhaseState, BoolVar)> StatesOf(CpModel model, ModeCandidates candidates, int[] groupOfPair, BoolVar[] pairs)
    {
        List<(PhaseState, BoolVar)> states = [];
        foreach (IGrouping<int, BoolVar> group in pairs.Select((pair, p) => (pair, p)).GroupBy(x => groupOfPair[x.p], x => x.pair))
        {
            IReadOnlyList<PhaseState> own = candidates.Groups[group.Key].States;
            BoolVar[] chosen = [.. own.Select(_ => model.NewBoolVar(""))];
            model.Add(LinearExpr.Sum(chosen) == LinearExpr.Sum(group));
            states.AddRange(own.Zip(chosen));
        }

        return states.AsReadOnly();
    }
}
