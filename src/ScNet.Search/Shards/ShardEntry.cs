using System.Globalization;
using System.Numerics;
using Fractions;
using ScNet.Search.Atlases;
using ScNet.Search.Pairs;

namespace ScNet.Search.Shards;

/// <summary>A network on one line of a file: ratio, the code of each phase's wiring, the layout of the switches.</summary>
/// <param name="Ratio">The ratio.</param>
/// <param name="Line">The line.</param>
internal readonly record struct ShardEntry(Fraction Ratio, string Line) : IComparable<ShardEntry>
{
    private const string LowestBlocking = "lowest-blocking", LeastCharge = "least-charge", Fewest = "fewest";

    /// <summary>The entry of a network.</summary>
    public static ShardEntry Of(Fraction ratio, NetworkPlace place) =>
        new(ratio, $"{Text(ratio)} {place.First} {place.Second} {(place.Layout == SwitchLayout.LowestBlocking ? LowestBlocking : LeastCharge)}");

    /// <summary>The entry of a network of three phases.</summary>
    public static ShardEntry Of(SearchedNetwork network) =>
        new(network.Ratio, $"{Text(network.Ratio)} {string.Join(' ', network.Phases.Select(p => p.ToCode()))} {Fewest}{(network.SwitchVoltageLimit is { } limit ? $"-within-{Text(limit)}" : string.Empty)}");

    /// <summary>Reads a line as far as its ratio.</summary>
    public static bool TryParse(string line, out ShardEntry entry)
    {
        entry = default;
        string[] parts = line[..Math.Max(0, line.IndexOf(' ', StringComparison.Ordinal))].Split('/');
        if (parts.Length is not (1 or 2) || !TryParse(parts[0], out BigInteger numerator) || !TryParse(parts.ElementAtOrDefault(1) ?? "1", out BigInteger denominator) || denominator.IsZero)
        {
            return false;
        }

        entry = new ShardEntry(new Fraction(numerator, denominator), line);
        return true;
    }

    /// <summary>The network of two phases of the line with its measures; null where there is no such network, or it has another ratio or size.</summary>
    public FrontEntry? ToNetwork(AtlasShard shard)
    {
        if (Line.Split(' ') is not [_, { } first, { } second, LowestBlocking or LeastCharge] words)
        {
            return null;
        }

        NetworkPlace place = new(first, second, words[^1] == LeastCharge ? SwitchLayout.LeastCharge : SwitchLayout.LowestBlocking);
        try
        {
            Wiring[] phases = [Wiring.Parse(first), Wiring.Parse(second)];
            return phases.All(p => p.CapacitorCount == shard.CapacitorCount)
                && SearchedNetwork.TryCreate(phases, place.Layout, out SearchedNetwork? network)
                && Of(network.Ratio, place) == this ? new FrontEntry(MeasureKey.Of(network.Measures), place) : null;
        }
        catch (FormatException)
        {
            return null;
        }
    }

    /// <summary>By ratio, then by the signs of the line.</summary>
    public int CompareTo(ShardEntry other)
    {
        int byRatio = Ratio.CompareTo(other.Ratio);
        return byRatio != 0 ? byRatio : string.CompareOrdinal(Line, other.Line);
    }

    private static string Text(Fraction ratio) => ratio.Denominator.IsOne
        ? ratio.Numerator.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{ratio.Numerator}/{ratio.Denominator}");

    private static bool TryParse(string text, out BigInteger value) =>
        BigInteger.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value);
}
