using Fractions;

namespace ScNet.Synthesis.Tests;

/// <summary>Requests in a line.</summary>
internal static class Requests
{
    public static Fraction[] Ratios(string ratios) => [.. ratios.Split(' ').Select(r => Fraction.FromString(r, System.Globalization.CultureInfo.InvariantCulture))];

    public static SynthesisRequest Of(int capacitors, string ratios, double inputVolts = 4.2) =>
        new([.. Ratios(ratios).Select(r => new WantedRatio(r, inputVolts))], capacitors);
}
