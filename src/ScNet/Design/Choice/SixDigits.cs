using System.Globalization;

namespace ScNet.Design.Choice;

/// <summary>Numbers that a search found, to the digits that are good.</summary>
internal static class SixDigits
{
    /// <summary>The nearest number of six significant digits.</summary>
    public static double Of(double value) => double.Parse(value.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>The same sizes of six digits.</summary>
    public static Converter Of(Converter converter) => converter.WithValues(
        [.. converter.Capacitors.Select(c => Of(c.Farads))],
        [.. converter.Switches.Select(s => Of(s.Ohms))],
        [.. converter.Capacitors.Select(c => Of(c.EsrOhms))]);
}
