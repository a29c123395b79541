using ScNet.Search.Queries;

namespace ScNet.Search;

/// <summary>What the atlas says to a query: the networks in the order of the objective, or that there is none, and why.</summary>
/// <remarks>
/// The atlas holds the networks that no other beats. Ratings and objective only fall where measures fall, so that some
/// network is within the ratings exactly when an unbeaten one is, and the first of the answer has the least of the objective
/// of all networks within the ratings (docs/theory/atlas-queries.md). Of networks that measure the same in everything one stands for
/// all: the member of a standard family where there is one.
/// </remarks>
public sealed class AtlasAnswer
{
    private AtlasAnswer(AtlasQuery query, Atlas atlas)
    {
        SearchedNetwork[] front = [.. atlas.Ratios.Where(query.Ratios.Contains).SelectMany(atlas.Front)];
        Rating[] ratings = Rating.Of(query);
        Query = query;
        Atlas = atlas;
        UnbeatenCount = front.Length;
        IOrderedEnumerable<SearchedNetwork> ordered = front.Where(n => ratings.All(r => r.Admits(n))).OrderBy(n => n.Measures.Value(query.Objective));
        foreach (NetworkMeasure measure in Enum.GetValues<NetworkMeasure>())
        {
            ordered = ordered.ThenBy(n => n.Measures.Value(measure));
        }

        Networks = Array.AsReadOnly<FoundNetwork>([.. ordered.Select(n => new FoundNetwork(ShownNetwork.Of(n, query.CapacitorCount)))]);
        Statement = AnswerWords.Statement(query, ratings, UnbeatenCount, Networks.Count);
        Reasons = Array.AsReadOnly<string>(
            Networks.Count > 0 ? [] : front.Length == 0 ? [.. AnswerWords.WhyNoRatio(query, atlas)] : [.. RatingConflicts.Of(ratings, front), AnswerWords.Scope]);
    }

    /// <summary>What was asked.</summary>
    public AtlasQuery Query { get; }

    /// <summary>Where it was looked up.</summary>
    public Atlas Atlas { get; }

    /// <summary>The networks within the ratings that no other beats, the one with the least of the objective first; none where no network is.</summary>
    public IReadOnlyList<FoundNetwork> Networks { get; }

    /// <summary>The networks of the ratios asked for that no other beats, within the ratings or not.</summary>
    public int UnbeatenCount { get; }

    /// <summary>The answer in a sentence, which holds for every network there is and not only for those listed.</summary>
    public string Statement { get; }

    /// <summary>Why there is none, a sentence each; none where there are networks.</summary>
    public IReadOnlyList<string> Reasons { get; }

    /// <summary>Searches all networks of the size asked for, and answers.</summary>
    /// <param name="query">What is asked.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static AtlasAnswer Of(AtlasQuery query, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        return new AtlasAnswer(query, Atlas.Of(query.CapacitorCount, progress, cancellationToken));
    }

    /// <summary>Answers from an atlas at hand.</summary>
    /// <param name="query">What is asked.</param>
    /// <param name="atlas">The atlas of the number of capacitors asked for.</param>
    /// <exception cref="ArgumentException">The atlas is of another number of capacitors.</exception>
    public static AtlasAnswer Of(AtlasQuery query, Atlas atlas)
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(atlas);
        return atlas.CapacitorCount == query.CapacitorCount
            ? new AtlasAnswer(query, atlas)
            : throw new ArgumentException(FormattableString.Invariant($"Expected an atlas of up to {query.CapacitorCount} capacitors, but it is of up to {atlas.CapacitorCount}."), nameof(atlas));
    }

    /// <summary>The statement and the reasons.</summary>
    public override string ToString() => string.Join(' ', [Statement, .. Reasons]);
}
