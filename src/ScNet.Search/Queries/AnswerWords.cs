using System.Globalization;
using System.Numerics;
using Fractions;

namespace ScNet.Search.Queries;

/// <summary>Answers in sentences.</summary>
internal static class AnswerWords
{
    /// <summary>Which networks a statement about ratings is about.</summary>
    public const string Scope = "This is said of all networks whose voltages, charges and potentials topology fixes and in which every capacitor moves charge.";

    /// <summary>How many networks there are, or that there is none.</summary>
    /// <param name="query">What is asked.</param>
    /// <param name="ratings">Its ratings.</param>
    /// <param name="unbeaten">The networks that no other beats.</param>
    /// <param name="within">Those within the ratings.</param>
    /// <param name="coversNone">Whether it is proved of all networks that there is none.</param>
    public static string Statement(AtlasQuery query, Rating[] ratings, int unbeaten, int within, bool coversNone)
    {
        string ratios = query.Ratios.IsPoint ? QueryWords.Ratios(query.Ratios) : $"a ratio from {QueryWords.Ratios(query.Ratios)}";
        string with = unbeaten == 0 || ratings.Length == 0 ? string.Empty : $" with {Listed([.. ratings.Select(r => r.ToString())])}";
        string number = within.ToString(CultureInfo.InvariantCulture), networks = QueryWords.Networks(query, within < 2);
        return within == 0 && coversNone ? $"No {networks} makes {ratios}{with}."
            : within == 0 ? $"No {networks} was found that makes {ratios}{with}."
            : $"{number} {networks} that no other{(query.PhaseCount == 2 ? string.Empty : " found")} beats {(within == 1 ? "makes" : "make")} {ratios}{with}.";
    }

    /// <summary>What of an answer is not proved of all networks of three phases.</summary>
    public static IEnumerable<string> Unproved(AtlasQuery query, Rating[] ratings, Proof proof, int within)
    {
        if (within == 0 ? !proof.CoversNone : !proof.CoversFirst)
        {
            string[] open = [.. ratings.Select(r => r.Measure).Append(query.Objective).Where(m => (within > 0 || m != query.Objective) && !proof.Covers(m)).Distinct().Select(QueryWords.Of)];
            string compared = proof.Covers(NetworkMeasure.SwitchCount)
                ? "they were compared by what their capacitors ask for and by number and highest voltage of their switches"
                : "they were compared by what their capacitors ask for, and those that no other beats are wired with the fewest switches that each can have";
            yield return $"Not proved of all networks of three phases: {compared}; in {Listed(open)} another may be better.";
        }
    }

    /// <summary>What the search found instead of the ratio.</summary>
    public static IEnumerable<string> WhyNoRatio(AtlasQuery query, Atlas atlas, ThreePhaseAtlas? threePhases)
    {
        Fraction[] made = [.. atlas.Ratios.Union(threePhases?.Ratios ?? []).Order()];
        BigInteger largest = made.Max(r => BigInteger.Max(BigInteger.Abs(r.Numerator), r.Denominator));
        yield return FormattableString.Invariant($"All {atlas.NetworkCount} networks{(threePhases is null ? string.Empty : FormattableString.Invariant($" of two phases and all {threePhases.TripleCount} ways to put three phases together"))} were tried. They make {made.Length} ratios, whose numerators and denominators are at most {largest}.");
        Fraction[] below = [.. made.Where(r => r < query.Ratios.Minimum!.Value)], above = [.. made.Where(r => r > query.Ratios.Maximum!.Value)];
        string[] nearest =
        [
            .. below.Length > 0 ? [$"{Quantity.Exact(below[^1])} below"] : Array.Empty<string>(),
            .. above.Length > 0 ? [$"{Quantity.Exact(above[0])} above"] : Array.Empty<string>(),
        ];
        yield return $"The nearest that is made: {string.Join(", ", nearest)}.";
    }

    private static string Listed(string[] words) => words.Length == 1 ? words[0] : $"{string.Join(", ", words[..^1])} and {words[^1]}";
}
