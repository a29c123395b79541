using Fractions;

namespace ScNet.Search.Queries;

/// <summary>The most of a measure that a network may ask for.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Limit">The most of it.</param>
internal sealed record Rating(NetworkMeasure Measure, Fraction Limit)
{
    /// <summary>The ratings of a query.</summary>
    public static Rating[] Of(AtlasQuery query) =>
    [
        .. query.HighestSwitchVoltage is { } ofSwitches ? [new Rating(NetworkMeasure.HighestSwitchVoltage, ofSwitches)] : Array.Empty<Rating>(),
        .. query.HighestCapacitorVoltage is { } ofCapacitors ? [new Rating(NetworkMeasure.HighestCapacitorVoltage, ofCapacitors)] : Array.Empty<Rating>(),
        .. query.MostSwitches is { } switches ? [new Rating(NetworkMeasure.SwitchCount, new Fraction(switches))] : Array.Empty<Rating>(),
    ];

    /// <summary>Whether a network keeps to it.</summary>
    public bool Admits(SearchedNetwork network) => network.Measures.Value(Measure) <= Limit;

    /// <summary>The rating in words: <c>every switch at or below 2/5 of the input</c>.</summary>
    public override string ToString() => Measure switch
    {
        NetworkMeasure.HighestSwitchVoltage => $"every switch at or below {Share(Limit)}",
        NetworkMeasure.HighestCapacitorVoltage => $"every capacitor at or below {Share(Limit)}",
        _ => $"at most {Limited} {(Limit == Fraction.One ? "switch" : "switches")}",
    };

    /// <summary>That the least of all networks is more than that: <c>the lowest highest switch voltage is 3/5 of the input, above the 2/5 asked</c>.</summary>
    public string Exceeded(Fraction least) => Measure switch
    {
        NetworkMeasure.HighestSwitchVoltage => $"the lowest highest switch voltage is {Share(least)}, above the {Limited} asked",
        NetworkMeasure.HighestCapacitorVoltage => $"the lowest highest capacitor voltage is {Share(least)}, above the {Limited} asked",
        _ => $"the fewest switches are {Quantity.Exact(least)}, more than the {Limited} asked",
    };

    private static string Share(Fraction voltage) => $"{Quantity.Exact(voltage)} {(voltage < Fraction.One ? "of" : "times")} the input";

    private Quantity Limited => Quantity.Exact(Limit);
}
