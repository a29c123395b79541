using System.Collections.ObjectModel;
using Google.OrTools.Sat;
using ScNet.Synthesis.Candidates;

namespace ScNet.Synthesis.Solving;

/// <summary>The choice of one ratio's network: a pair of loop spaces, and a wiring of each.</summary>
internal sealed class ModeVariables
{
    private ModeVariables(IReadOnlyList<(PhaseState, BoolVar)>[] states) => States = states;

    /// <summary>Per phase the states that can be chosen.</summary>
    public IReadOnlyList<IReadOnlyList<(PhaseState State, BoolVar Chosen)>> States { get; }

    /// <summary>Adds the choice to a model.</summary>
    public static ModeVariables Of(CpModel model, ModeCandidates candidates)
    {
        BoolVar[] pairs = [.. candidates.Pairs.Select(_ => model.NewBoolVar(""))];
        model.AddExactlyOne(pairs);
        return new ModeVariables([
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
