using ScNet.Design.Losses;
using ScNet.Design.Maps;

namespace ScNet.Design.Choice;

/// <summary>Why a candidate has its place, in words.</summary>
internal static class RankingReasons
{
    /// <summary>The reasons of one of the candidates in their order.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<CandidateDesign> order, int place)
    {
        CandidateDesign own = order[place];
        return
        [
            .. place == 0 && order.Count > 1 ? [Against("wins over", 1, order[1], own)] : Array.Empty<string>(),
            .. place > 0 ? [Against("loses to", place - 1, own, order[place - 1])] : Array.Empty<string>(),
            .. place > 1 ? [Against("loses to", 0, own, order[0])] : Array.Empty<string>(),
            .. own.Notes,
        ];
    }

    private static string Against(string verb, int other, CandidateDesign worse, CandidateDesign better) =>
        SixDigits.Of(worse.Merit) == SixDigits.Of(better.Merit)
            ? $"does as well as {Ordinal(other + 1)}"
            : $"{verb} {Ordinal(other + 1)} by {Largest(worse, better)}";

    // where the worse one loses most beyond the better one: "plates in sleep, 1.2 µW against 0.3 µW, of 2 µW more on average"
    private static string Largest(CandidateDesign worse, CandidateDesign better)
    {
        (double More, LossKind Kind, int Load)[] all =
        [
            .. worse.Life.Loads.SelectMany((load, i) => Enum.GetValues<LossKind>()
                .Select(k => (load.Load.Share * (load.WattsOf(k) - better.Life.Loads[i].WattsOf(k)), k, i))),
        ];
        (double more, LossKind kind, int state) = all.MaxBy(d => d.More);
        LoadBudget own = worse.Life.Loads[state], other = better.Life.Loads[state];
        double total = worse.Life.InputWatts!.Value - better.Life.InputWatts!.Value;
        return $"{LossFormulas.NameOf(kind)} in {own.Load.Name}: {EngineeringNumber.Of(own.WattsOf(kind), "W")} against {EngineeringNumber.Of(other.WattsOf(kind), "W")}, "
            + $"{EngineeringNumber.Of(more, "W")} on average{(total > 0 ? $" of {EngineeringNumber.Of(total, "W")} more in all" : string.Empty)}";
    }

    private static string Ordinal(int number) => (number % 100 is >= 11 and <= 13 ? 0 : number % 10) switch
    {
        1 => FormattableString.Invariant($"{number}st"),
        2 => FormattableString.Invariant($"{number}nd"),
        3 => FormattableString.Invariant($"{number}rd"),
        _ => FormattableString.Invariant($"{number}th"),
    };
}
