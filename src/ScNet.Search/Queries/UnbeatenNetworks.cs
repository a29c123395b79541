using Fractions;

namespace ScNet.Search.Queries;

/// <summary>The networks of some ratios that no other of the atlas of two phases, and of that of three, beats.</summary>
internal static class UnbeatenNetworks
{
    /// <summary>The networks, ratio by ratio.</summary>
    /// <param name="ratios">The ratios.</param>
    /// <param name="atlas">The networks of two phases.</param>
    /// <param name="threePhases">Those of three phases; null where they are not asked for.</param>
    public static IEnumerable<SearchedNetwork> Of(Interval<Fraction> ratios, Atlas atlas, ThreePhaseAtlas? threePhases) => threePhases is null
        ? atlas.Ratios.Where(ratios.Contains).SelectMany(atlas.Front)
        : atlas.Ratios.Union(threePhases.Ratios).Where(ratios.Contains).Order().SelectMany(r => Of(atlas.Front(r), threePhases.Front(r)));

    /// <summary>
    /// What a network asks for, to be compared with one of another number of phases: for the charge of the switches the number of phases times its square, which is what the
    /// fast limit takes.
    /// </summary>
    public static Fraction Compared(SearchedNetwork network, NetworkMeasure measure)
    {
        Fraction value = network.Measures.Value(measure);
        return measure == NetworkMeasure.SwitchCharge ? new Fraction(network.Phases.Count) * value * value : value;
    }

    // of equal ones that of two phases, then the first stays
    private static IEnumerable<SearchedNetwork> Of(IReadOnlyList<SearchedNetwork> two, IReadOnlyList<SearchedNetwork> three)
    {
        (SearchedNetwork Network, Fraction[] Values)[] all =
            [.. two.Concat(three).Select(n => (n, Enum.GetValues<NetworkMeasure>().Select(m => Compared(n, m)).ToArray()))];
        return all
            .Where((one, i) => !all.Where((other, j) => j != i && IsWithin(other.Values, one.Values) && (j < i || !IsWithin(one.Values, other.Values))).Any())
            .Select(one => one.Network);
    }

    private static bool IsWithin(Fraction[] values, Fraction[] limits) => values.Zip(limits).All(v => v.First <= v.Second);
}
