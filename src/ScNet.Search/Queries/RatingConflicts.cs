using Fractions;

namespace ScNet.Search.Queries;

/// <summary>Why no network is within all ratings: the smallest sets of ratings that rule one another out.</summary>
internal static class RatingConflicts
{
    /// <summary>A sentence for each rating of each such set, the others of the set being held.</summary>
    /// <param name="ratings">The ratings.</param>
    /// <param name="front">The unbeaten networks, at least one, of which none is within all ratings.</param>
    /// <param name="covers">Whether what the networks tell of a measure holds of all networks.</param>
    public static IEnumerable<string> Of(Rating[] ratings, SearchedNetwork[] front, Func<NetworkMeasure, bool> covers)
    {
        for (int size = 1; size <= ratings.Length; size++)
        {
            string[] found = [.. Subsets(ratings, size).Where(set => !front.Any(n => set.All(r => r.Admits(n)))).SelectMany(set => Told(set, front, covers))];
            if (found.Length > 0)
            {
                return found;
            }
        }

        throw new ArgumentException("Expected that no network is within all ratings.", nameof(front));
    }

    private static IEnumerable<Rating[]> Subsets(Rating[] ratings, int size) => Enumerable.Range(0, 1 << ratings.Length)
        .Where(bits => int.PopCount(bits) == size)
        .Select(bits => ratings.Where((_, i) => (bits >> i & 1) == 1).ToArray());

    // some network keeps to the others, as no smaller set rules itself out
    private static IEnumerable<string> Told(Rating[] set, SearchedNetwork[] front, Func<NetworkMeasure, bool> covers) => set.Select(rating =>
    {
        Rating[] others = [.. set.Where(r => r != rating)];
        Fraction least = front.Where(n => others.All(r => r.Admits(n))).Min(n => n.Measures.Value(rating.Measure));
        string told = rating.Exceeded(least);
        bool ofAll = set.All(r => covers(r.Measure));
        return others.Length == 0 ? $"Of {(ofAll ? "all networks" : "the networks found")}, {told}." : $"{(ofAll ? "With" : "Of the networks found, with")} {string.Join(" and ", others.Select(r => r.ToString()))}, {told}.";
    });
}
