using ScNet.Search.Queries;

namespace ScNet.Search;

/// <summary>What the atlas says to a query: the networks in the order of the objective, or that there is none, and why.</summary>
/// <remarks>
/// The atlas holds the networks that no other beats. Ratings and objective only fall where measures fall, so that some
/// network is within the ratings exactly when an unbeaten one is, and the first of the answer has the least of the objective
/// of all networks within the ratings (docs/theory/atlas-queries.md). Of networks that measure the same in everything one stands for
/// all: the member of a standard family where there is one. Of three phases the same holds in <see cref="ThreePhaseAtlas.CompleteMeasures"/>; what is said of
/// others is said of the networks found, see <see cref="Unproved"/>.
/// </remarks>
public sealed class AtlasAnswer
{
    private AtlasAnswer(AtlasQuery query, Atlas atlas, ThreePhaseAtlas? threePhases)
    {
        SearchedNetwork[] front = [.. UnbeatenNetworks.Of(query.Ratios, atlas, threePhases)];
        Rating[] ratings = Rating.Of(query);
        Query = query;
        Atlas = atlas;
        ThreePhases = threePhases;
        UnbeatenCount = front.Length;
        IOrderedEnumerable<SearchedNetwork> ordered = front.Where(n => ratings.All(r => r.Admits(n))).OrderBy(n => UnbeatenNetworks.Compared(n, query.Objective));
        foreach (NetworkMeasure measure in Enum.GetValues<NetworkMeasure>())
        {
            ordered = ordered.ThenBy(n => UnbeatenNetworks.Compared(n, measure));
        }

        Networks = Array.AsReadOnly<FoundNetwork>([.. ordered.ThenBy(n => n.Phases.Count).Select(n => new FoundNetwork(ShownNetwork.Of(n, query.CapacitorCount)))]);
        Proof proof = Proof.Of(query, ratings, front, threePhases);
        Statement = AnswerWords.Statement(query, ratings, UnbeatenCount, Networks.Count, proof.CoversNone);
        Reasons = Array.AsReadOnly<string>(Networks.Count > 0 ? []
            : front.Length == 0 ? [.. AnswerWords.WhyNoRatio(query, atlas, threePhases)]
            : [.. RatingConflicts.Of(ratings, front, proof.Covers), .. proof.CoversNone ? [AnswerWords.Scope] : Array.Empty<string>()]);
        Unproved = Array.AsReadOnly<string>([.. AnswerWords.Unproved(query, ratings, proof, Networks.Count)]);
    }

    /// <summary>What was asked.</summary>
    public AtlasQuery Query { get; }

    /// <summary>Where networks of two phases were looked up.</summary>
    public Atlas Atlas { get; }

    /// <summary>Where networks of three phases were looked up; null where they are not asked for.</summary>
    public ThreePhaseAtlas? ThreePhases { get; }

    /// <summary>The networks within the ratings that no other beats, the one with the least of the objective first; none where no network is.</summary>
    public IReadOnlyList<FoundNetwork> Networks { get; }

    /// <summary>The networks of the ratios asked for that no other beats, within the ratings or not.</summary>
    public int UnbeatenCount { get; }

    /// <summary>The answer in a sentence, which holds for every network there is and not only for those listed, but for what is <see cref="Unproved"/>.</summary>
    public string Statement { get; }

    /// <summary>Why there is none, a sentence each; none where there are networks.</summary>
    public IReadOnlyList<string> Reasons { get; }

    /// <summary>What of the answer holds of the networks found but is not proved of all, a sentence each; none for two phases.</summary>
    public IReadOnlyList<string> Unproved { get; }

    /// <summary>Searches all networks of the size asked for, and answers.</summary>
    /// <param name="query">What is asked.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="ArgumentOutOfRangeException">Three phases are asked for with more than <see cref="ThreePhaseAtlas.MaximumCapacitorCount"/> capacitors.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static AtlasAnswer Of(AtlasQuery query, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        if (query.PhaseCount == 2)
        {
            return new AtlasAnswer(query, Atlas.Of(query.CapacitorCount, progress, cancellationToken), null);
        }

        // two phases take no time beside three
        ArgumentOutOfRangeException.ThrowIfGreaterThan(query.CapacitorCount, ThreePhaseAtlas.MaximumCapacitorCount);
        ThreePhaseAtlas threePhases = ThreePhaseAtlas.Of(query.CapacitorCount, progress, cancellationToken);
        return new AtlasAnswer(query, Atlas.Of(query.CapacitorCount, null, cancellationToken), threePhases);
    }

    /// <summary>Answers from an atlas at hand.</summary>
    /// <param name="query">What is asked, of two phases.</param>
    /// <param name="atlas">The atlas of the number of capacitors asked for.</param>
    /// <exception cref="ArgumentException">The atlas is of another number of capacitors, or three phases are asked for.</exception>
    public static AtlasAnswer Of(AtlasQuery query, Atlas atlas) => OfBoth(query, atlas, null);

    /// <summary>Answers from atlases at hand.</summary>
    /// <param name="query">What is asked.</param>
    /// <param name="atlas">The atlas of the number of capacitors asked for.</param>
    /// <param name="threePhases">The same of three phases where the query asks for them, else null.</param>
    /// <exception cref="ArgumentException">An atlas is of another number of capacitors, or that of three phases is missing or not asked for.</exception>
    public static AtlasAnswer OfBoth(AtlasQuery query, Atlas atlas, ThreePhaseAtlas? threePhases)
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(atlas);
        if (query.PhaseCount == 3 != threePhases is not null)
        {
            throw new ArgumentException(FormattableString.Invariant($"Expected an atlas of three phases just where they are asked for, but {query.PhaseCount} phases are."), nameof(threePhases));
        }

        int other = atlas.CapacitorCount != query.CapacitorCount ? atlas.CapacitorCount : threePhases?.CapacitorCount ?? query.CapacitorCount;
        return other == query.CapacitorCount
            ? new AtlasAnswer(query, atlas, threePhases)
            : throw new ArgumentException(FormattableString.Invariant($"Expected an atlas of up to {query.CapacitorCount} capacitors, but it is of up to {other}."), nameof(atlas));
    }

    /// <summary>The statement, the reasons, and what is not proved.</summary>
    public override string ToString() => string.Join(' ', [Statement, .. Reasons, .. Unproved]);
}
