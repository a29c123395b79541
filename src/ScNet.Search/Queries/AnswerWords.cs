using System.Numerics;
using Fractions;

namespace ScNet.Search.Queries;

/// <summary>Answers in sentences.</summary>
internal static class AnswerWords
{
    /// <summary>Which networks a statement about ratings is about.</summary>
    public const string Scope = "This is said of all networks whose voltages, charges and potentials topology fixes and in which every capacitor moves charge.";

    /// <summary>How many networks there are, or that there is none.</summary>
    public static string Statement(AtlasQuery query, Rating[] ratings, int unbeaten, int within)
    {
        string ratios = query.Ratios.IsPoint ? QueryWords.Ratios(query.Ratios) : $"a ratio from {QueryWords.Ratios(query.Ratios)}";
        string with = ratings.Length == 0 ? string.Empty : $" with {string.Join(", ", ratings.SkipLast(1).Select(r => r.ToString()))}{(ratings.Length > 1 ? " and " : string.Empty)}{ratings[^1]}";
        return unbeaten == 0 ? $"No two-phase network of {QueryWords.Size(query.CapacitorCount)} makes {ratios}."
            : within == 0 ? $"No two-phase network of {QueryWords.Size(query.CapacitorCount)} makes {ratios}{with}."
            : $"{UnitText.Count(within, "two-phase network", "two-phase networks")} of {QueryWords.Size(query.CapacitorCount)} that no other beats {(within == 1 ? "makes" : "make")} {ratios}{with}.";
    }

    /// <summary>What the search found instead of the ratio.</summary>
    public static IEnumerable<string> WhyNoRatio(AtlasQuery query, Atlas atlas)
    {
        BigInteger largest = atlas.Ratios.Max(r => BigInteger.Max(BigInteger.Abs(r.Numerator), r.Denominator));
        yield return FormattableString.Invariant($"All {atlas.NetworkCount} networks were tried. They make {atlas.Ratios.Count} ratios, whose numerators and denominators are at most {largest}.");
        Fraction[] below = [.. atlas.Ratios.Where(r => r < query.Ratios.Minimum!.Value)], above = [.. atlas.Ratios.Where(r => r > query.Ratios.Maximum!.Value)];
        string[] nearest =
        [
            .. below.Length > 0 ? [$"{Quantity.Exact(below[^1])} below"] : Array.Empty<string>(),
            .. above.Length > 0 ? [$"{Quantity.Exact(above[0])} above"] : Array.Empty<string>(),
        ];
        yield return $"The nearest that is made: {string.Join(", ", nearest)}.";
    }
}
