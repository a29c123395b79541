using ScNet.Design.Regulation;

namespace ScNet.Design.Maps;

/// <summary>The best set of so many modes of a map.</summary>
/// <param name="Modes">The modes, in the order of the map.</param>
/// <param name="HeldShare">The share of the points that they hold.</param>
/// <param name="AverageEfficiency">Output over input energy of the points they hold, each for the same time; null where they hold none.</param>
/// <param name="IsCertain">Whether all sets of so many were tried; otherwise the best mode was added to the set before.</param>
public sealed record GearCount(IReadOnlyList<RegulatedMode> Modes, double HeldShare, double? AverageEfficiency, bool IsCertain)
{
    /// <summary>The modes, in the order of the map; a list of its own, which nobody changes.</summary>
    public IReadOnlyList<RegulatedMode> Modes { get; init => field = Guard.Copy(value, nameof(Modes)); } = Guard.Copy(Modes, nameof(Modes));

    /// <summary>The modes and what they reach.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Modes.Count}: {string.Join(", ", Modes)}; {UnitText.Percent(HeldShare)} held, efficiency {UnitText.Percent(AverageEfficiency)}");
}
