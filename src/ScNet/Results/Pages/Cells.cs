using System.Globalization;

namespace ScNet.Results.Pages;

/// <summary>Values as cells: the text for a reader and the number by which rows are put in order.</summary>
internal static class Cells
{
    /// <summary>A physical value with its unit; "?" where there is none.</summary>
    public static PageCell Of(double? value, string unit) => new(EngineeringNumber.Of(value, unit), value);

    /// <summary>A value of a solution, a fraction where it is exact.</summary>
    public static PageCell Of(Quantity value) => Of(value, value.ToString());

    /// <summary>A value of a solution with a text of its own.</summary>
    public static PageCell Of(Quantity value, string text) => new(text, value.IsDetermined ? value.ToDouble() : null);

    /// <summary>A count.</summary>
    public static PageCell Count(long count) => new(count.ToString(CultureInfo.InvariantCulture), count);

    /// <summary>A quotient without a unit to five digits; "?" where there is none.</summary>
    public static PageCell Plain(double? value) => new(value?.ToString("G5", CultureInfo.InvariantCulture) ?? "?", value);

    /// <summary>A share in percent to two decimals, as on every page; "-" where there is none.</summary>
    public static PageCell Percent(double? fraction) => Percent(fraction, "0.00 %");

    /// <summary>A deviation in percent to two decimals, with its sign; "-" where there is none.</summary>
    public static PageCell SignedPercent(double? fraction) => Percent(fraction, "+0.00 %;-0.00 %;0.00 %");

    private static PageCell Percent(double? fraction, string format) =>
        fraction is { } share && double.IsFinite(share) ? new(share.ToString(format, CultureInfo.InvariantCulture), share) : new("-");
}
