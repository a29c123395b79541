namespace ScNet.Search.Queries;

/// <summary>Which parts of an answer hold of all networks: in two phases all, in three those that are about measures the search is complete over.</summary>
/// <param name="Covers">Whether the search is complete over a measure.</param>
/// <param name="CoversNone">Where no network is within the ratings: that there is none at all.</param>
/// <param name="CoversFirst">Where some are: that no network within the ratings has less of the objective than the first.</param>
internal sealed record Proof(Func<NetworkMeasure, bool> Covers, bool CoversNone, bool CoversFirst)
{
    /// <summary>What is proved of an answer.</summary>
    /// <param name="query">What is asked.</param>
    /// <param name="ratings">Its ratings.</param>
    /// <param name="front">The networks that no other beats.</param>
    /// <param name="threePhases">The atlas of three phases; null where they are not asked for.</param>
    public static Proof Of(AtlasQuery query, Rating[] ratings, SearchedNetwork[] front, ThreePhaseAtlas? threePhases)
    {
        bool Covers(NetworkMeasure measure) => threePhases is null || threePhases.CompleteMeasures.Contains(measure);

        // where nothing is within the ratings of such measures alone, nothing is within more
        Rating[] covered = [.. ratings.Where(r => Covers(r.Measure))];
        return new Proof(
            Covers,
            !front.Any(n => covered.All(r => r.Admits(n))),
            Covers(query.Objective) && covered.Length == ratings.Length);
    }
}
