namespace ScNet.Design.Sizing;

/// <summary>The steps in which sizes can be drawn, and with them the least ones.</summary>
/// <param name="WidthMicrometres">The step of a device's width in micrometres (µm).</param>
/// <param name="CapacitorSquareMetres">The step of a capacitor's active area in square metres (m²).</param>
public sealed record SizeGrid(double WidthMicrometres, double CapacitorSquareMetres)
{
    /// <summary>0.1 µm and 1 µm².</summary>
    public static SizeGrid Fine { get; } = new(0.1, 1e-12);

    /// <summary>The step of a device's width.</summary>
    public double WidthMicrometres { get; } = Guard.InRange(WidthMicrometres, allowZero: false, nameof(WidthMicrometres));

    /// <summary>The step of a capacitor's area.</summary>
    public double CapacitorSquareMetres { get; } = Guard.InRange(CapacitorSquareMetres, allowZero: false, nameof(CapacitorSquareMetres));

    /// <summary>Both steps.</summary>
    public override string ToString() => $"{UnitText.Of(WidthMicrometres, "µm")}, {UnitText.Of(CapacitorSquareMetres * 1e12, "µm²")}";
}
