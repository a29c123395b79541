namespace ScNet.Derivations;

/// <summary>One value of a snapshot.</summary>
/// <param name="Mode">The name of the mode.</param>
/// <param name="Element">The name of the capacitor or switch; null for what belongs to the whole mode.</param>
/// <param name="Description">What it is, in words: "charge of fly in phase 1".</param>
/// <param name="Value">The value.</param>
/// <param name="Unit">The unit: "V/V", "Ω", or empty for charges per unit of output charge and for coefficients.</param>
public sealed record SnapshotEntry(string Mode, string? Element, string Description, Quantity Value, string Unit)
{
    /// <summary>What it is, and the value with its unit.</summary>
    public override string ToString() => $"{Mode}: {Description} = {Text}";

    /// <summary>The value with its unit; a number with nine digits.</summary>
    internal string Text => Value.ToString("G9", null) + (Unit.Length == 0 || !Value.IsDetermined ? string.Empty : $" {Unit}");
}
