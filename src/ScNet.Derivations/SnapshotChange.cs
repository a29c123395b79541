using System.Globalization;
using ScNet.Derivations.Snapshots;

namespace ScNet.Derivations;

/// <summary>One change between two snapshots.</summary>
/// <param name="Mode">The mode; null for the converter itself.</param>
/// <param name="Element">The capacitor or switch; null for what belongs to the whole mode.</param>
/// <param name="Description">What changed, in words.</param>
/// <param name="Before">The value or word before, with its unit; null where there was none.</param>
/// <param name="After">The value or word after, with its unit; null where there is none any more.</param>
/// <param name="Amount">By how much, where both are values: after minus before; undetermined else.</param>
public sealed record SnapshotChange(string? Mode, string? Element, string Description, string? Before, string? After, Quantity Amount)
{
    /// <summary>The relative change in per cent, where both are values and the one before is not zero; null else.</summary>
    public double? Percent { get; init; }

    /// <summary>What changed, from what to what, and by how much.</summary>
    public override string ToString()
    {
        string change = Before is null ? $"{Description}: new{Tail(After)}"
            : After is null ? $"{Description}: gone{Tail(Before)}"
            : $"{Description}: {Before} -> {After}";
        if (!Amount.IsDetermined)
        {
            return change;
        }

        string amount = $"{(Amount.Sign > 0 ? "+" : string.Empty)}{Amount}";
        return Percent is { } percent
            ? string.Create(CultureInfo.InvariantCulture, $"{change} ({amount}, {percent:+0.###;-0.###;0} %)")
            : $"{change} ({amount})";
    }

    internal static SnapshotChange Of(string mode, SnapshotEntry before, SnapshotEntry after)
    {
        Quantity amount = QuantityArithmetic.Add(after.Value, -before.Value);
        Quantity share = amount.IsDetermined ? QuantityArithmetic.Divide(amount, before.Value) : Quantity.Undetermined;
        return new SnapshotChange(mode, after.Key.Element, after.Key.Description, before.Text, after.Text, amount)
        {
            Percent = share.IsDetermined ? 100 * share.ToDouble() * Math.Sign(before.Value.Sign) : null,
        };
    }

    private static string Tail(string? value) => string.IsNullOrEmpty(value) ? string.Empty : $", {value}";
}
