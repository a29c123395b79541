using ScNet.Design.Requirements;

namespace ScNet.Design.Sizing;

/// <summary>The area that elements may take: in all, of each kind, or both.</summary>
/// <param name="TotalSquareMetres">For capacitors, switches and inductors on the chip together, in square metres (m²); null where each kind has its own.</param>
/// <param name="CapacitorSquareMetres">For capacitors alone; null where they share the total freely.</param>
/// <param name="SwitchSquareMetres">For switches alone; null where they share the total freely.</param>
public sealed record AreaBudget(double? TotalSquareMetres, double? CapacitorSquareMetres = null, double? SwitchSquareMetres = null)
{
    /// <summary>The areas of a requirement.</summary>
    /// <param name="requirement">The requirement.</param>
    public static AreaBudget Of(Requirement requirement)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        return new AreaBudget(requirement.AreaSquareMetres, requirement.CapacitorAreaSquareMetres, requirement.SwitchAreaSquareMetres);
    }

    /// <summary>For capacitors, switches and inductors on the chip together.</summary>
    public double? TotalSquareMetres { get; } = Checked(TotalSquareMetres, nameof(TotalSquareMetres));

    /// <summary>For capacitors alone.</summary>
    public double? CapacitorSquareMetres { get; } = Checked(CapacitorSquareMetres, nameof(CapacitorSquareMetres));

    /// <summary>For switches alone.</summary>
    public double? SwitchSquareMetres { get; } = Checked(SwitchSquareMetres, nameof(SwitchSquareMetres));

    /// <summary>Whether both kinds are bounded.</summary>
    public bool IsBounded => TotalSquareMetres is not null || (CapacitorSquareMetres is not null && SwitchSquareMetres is not null);

    /// <summary>The same shares of another area.</summary>
    /// <param name="factor">What every area is multiplied by.</param>
    public AreaBudget Times(double factor) => new(TotalSquareMetres * factor, CapacitorSquareMetres * factor, SwitchSquareMetres * factor);

    /// <summary>The areas in square millimetres.</summary>
    public override string ToString() => string.Join(", ", new[]
    {
        Text(TotalSquareMetres, "in all"), Text(CapacitorSquareMetres, "of capacitors"), Text(SwitchSquareMetres, "of switches"),
    }.OfType<string>());

    private static string? Text(double? area, string what) => area is { } known ? $"{UnitText.Of(known * 1e6, "mm²")} {what}" : null;

    private static double? Checked(double? area, string name) => area is { } known ? Guard.InRange(known, allowZero: false, name) : null;
}
