using System.Globalization;

namespace ScNet.Results.Pages;

/// <summary>Areas on a chip.</summary>
internal static class AreaText
{
    private const double SquareMillimetre = 1e-6;

    /// <summary>In mm², small ones in µm²; none where it is zero, as a linear regulator has no sizes.</summary>
    // four digits after the point would show nothing of a switch of some µm²
    public static PageCell Of(double squareMetres) => squareMetres switch
    {
        0 => "–",
        < SquareMillimetre / 1000 => OfSmall(squareMetres),
        _ => new(string.Create(CultureInfo.InvariantCulture, $"{squareMetres / SquareMillimetre:0.0000} mm²"), squareMetres),
    };

    /// <summary>In µm².</summary>
    public static PageCell OfSmall(double squareMetres) => new(
        squareMetres < 100e-12
            ? string.Create(CultureInfo.InvariantCulture, $"{squareMetres * 1e12:G3} µm²")
            : string.Create(CultureInfo.InvariantCulture, $"{squareMetres * 1e12:F0} µm²"),
        squareMetres);
}
