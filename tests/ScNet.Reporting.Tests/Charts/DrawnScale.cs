using System.Globalization;
using System.Text.RegularExpressions;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>Values by place, from what the first and the last tick of an axis say.</summary>
internal sealed partial class DrawnScale
{
    private readonly bool _isLogarithmic;
    private readonly (double Pixel, double Value) _first, _last;

    public DrawnScale(IReadOnlyList<(double Pixel, string Text)> ticks, bool isLogarithmic)
    {
        _isLogarithmic = isLogarithmic;
        (_first, _last) = ((ticks[0].Pixel, Coordinate(Parse(ticks[0].Text))), (ticks[^1].Pixel, Coordinate(Parse(ticks[^1].Text))));
    }

    public double ValueAt(double pixel)
    {
        double coordinate = _first.Value + ((pixel - _first.Pixel) * (_last.Value - _first.Value) / (_last.Pixel - _first.Pixel));
        return _isLogarithmic ? Math.Pow(10, coordinate) : coordinate;
    }

    public double PixelOf(double value) =>
        _first.Pixel + ((Coordinate(value) - _first.Value) * (_last.Pixel - _first.Pixel) / (_last.Value - _first.Value));

    /// <summary>"250 mΩ" as 0.25.</summary>
    public static double Parse(string text)
    {
        Match match = Quantity().Match(text);
        Assert.True(match.Success, $"no quantity: {text}");
        const string Prefixes = "afpnµm kMGTPE";
        double factor = match.Groups["prefix"].Success ? Math.Pow(1000, Prefixes.IndexOf(match.Groups["prefix"].Value, StringComparison.Ordinal) - 6) : 1;
        return double.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture) * factor;
    }

    private double Coordinate(double value) => _isLogarithmic ? Math.Log10(value) : value;

    [GeneratedRegex(@"^(?<number>-?\d+(\.\d+)?)( (?<prefix>[afpnµmkMGTPE])?(Hz|Ω|V|A|W|S|s|%|W/mm²))?$")]
    private static partial Regex Quantity();
}
