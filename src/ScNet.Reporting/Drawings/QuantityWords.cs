namespace ScNet.Reporting.Drawings;

/// <summary>A quantity as a drawing shows it.</summary>
internal static class QuantityWords
{
    /// <summary>The exact fraction, four digits where component values decide, a question mark where nothing does.</summary>
    public static string Of(Quantity value) => value is { IsDetermined: true, IsExact: false } ? "≈ " + value.ToString("G4", null) : value.ToString();
}
