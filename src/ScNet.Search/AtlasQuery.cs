using Fractions;
using ScNet.Search.Queries;

namespace ScNet.Search;

/// <summary>What is asked of all networks: a ratio, the size, ratings, and by what to choose.</summary>
public sealed record AtlasQuery
{
    /// <summary>Asks for one ratio.</summary>
    /// <param name="ratio">Output over input voltage, negative where it inverts.</param>
    public AtlasQuery(Fraction ratio)
        : this(new Interval<Fraction>(ratio, ratio))
    {
    }

    /// <summary>Asks for any ratio of a range.</summary>
    /// <param name="ratios">The smallest and the largest ratio.</param>
    /// <exception cref="ArgumentException">The range has no ends.</exception>
    public AtlasQuery(Interval<Fraction> ratios)
    {
        Ratios = ratios.IsDetermined ? ratios : throw new ArgumentException("Expected a range with two ends.", nameof(ratios));
    }

    /// <summary>The smallest and the largest ratio.</summary>
    public Interval<Fraction> Ratios { get; }

    /// <summary>The most flying capacitors, from 1 to <see cref="Atlas.MaximumCapacitorCount"/>; 3 where it is not set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is out of its range.</exception>
    public int CapacitorCount
    {
        get;
        init => field = value is >= 1 and <= Atlas.MaximumCapacitorCount
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, FormattableString.Invariant($"Expected from 1 to {Atlas.MaximumCapacitorCount} capacitors."));
    } = 3;

    /// <summary>The most phases: 2, or 3 for networks of two and of three phases, of up to <see cref="ThreePhaseAtlas.MaximumCapacitorCount"/> capacitors; 2 where it is not set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is neither.</exception>
    public int PhaseCount
    {
        get;
        init => field = value is 2 or 3 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected 2 or 3 phases.");
    } = 2;

    /// <summary>The most that any switch may block, as a share of the input voltage; null for any voltage.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not positive.</exception>
    public Fraction? HighestSwitchVoltage { get; init => field = Positive(value); }

    /// <summary>The most that any flying capacitor may hold, as a share of the input voltage; null for any voltage.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not positive.</exception>
    public Fraction? HighestCapacitorVoltage { get; init => field = Positive(value); }

    /// <summary>The most switches; null for any number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is below 1.</exception>
    public int? MostSwitches
    {
        get;
        init => field = value is null or >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected at least one switch.");
    }

    /// <summary>What comes first: the networks with the least of it. Of equal ones the others decide, in the order of <see cref="NetworkMeasure"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such measure.</exception>
    public NetworkMeasure Objective
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected one of the measures.");
    } = NetworkMeasure.SwitchChargeVoltage;

    /// <summary>What is asked, in words: <c>2/5 by up to 3 flying capacitors, every switch at or below 2/5 of the input</c>.</summary>
    public override string ToString() => QueryWords.Of(this);

    private static Fraction? Positive(Fraction? value) => value is null or { IsPositive: true }
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), $"{value}", "Expected a positive share of the input voltage.");
}
