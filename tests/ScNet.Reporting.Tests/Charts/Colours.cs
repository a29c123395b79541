using System.Globalization;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>Colours as people see them, worked out apart from the code under test.</summary>
internal static class Colours
{
    // G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
    // IEEE Transactions on Visualization and Computer Graphics 15 (2009), severity 1.0, for linear RGB (from memory)
    public static readonly double[][] Protanopia = [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]];
    public static readonly double[][] Deuteranopia = [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]];
    public static readonly double[][] Tritanopia = [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]];

    // in CIE L*, and as distance in CIE L*a*b*; 2.3 is just noticeable side by side (M. Mahy et al., 1994, from memory)
    private const double LeastLightness = 6, LeastDistance = 6;

    /// <summary>Contrast of two colours: W3C, Web Content Accessibility Guidelines 2.2 (from memory).</summary>
    public static double Contrast(string a, string b)
    {
        double high = Math.Max(Luminance(a), Luminance(b)), low = Math.Min(Luminance(a), Luminance(b));
        return (high + 0.05) / (low + 0.05);
    }

    /// <summary>Whether two colours differ in grey and for readers with any kind of colour vision.</summary>
    public static bool AreDistinct(string a, string b) =>
        Math.Abs(Lightness(a) - Lightness(b)) >= LeastLightness
        && new[] { Protanopia, Deuteranopia, Tritanopia }.All(eye => Distance(Seen(a, eye), Seen(b, eye)) >= LeastDistance);

    /// <summary>CIE L*, from 0 (black) to 100.</summary>
    public static double Lightness(string colour) => Lab(Linear(colour))[0];

    public static double[] Seen(string colour, double[][] eye)
    {
        double[] linear = Linear(colour);
        return [.. eye.Select(row => Math.Clamp(row.Zip(linear, (m, c) => m * c).Sum(), 0, 1))];
    }

    private static double Distance(double[] a, double[] b) => Math.Sqrt(Lab(a).Zip(Lab(b), (x, y) => (x - y) * (x - y)).Sum());

    private static double Luminance(string colour) => Linear(colour) is var c ? (0.2126 * c[0]) + (0.7152 * c[1]) + (0.0722 * c[2]) : 0;

    // IEC 61966-2-1
    private static double[] Linear(string colour) => [.. new[] { 1, 3, 5 }
        .Select(at => int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
        .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4))];

    // CIE 15, white D65
    private static double[] Lab(double[] c)
    {
        static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((24389.0 / 27 * t) + 16) / 116;
        double x = F(((0.4124564 * c[0]) + (0.3575761 * c[1]) + (0.1804375 * c[2])) / 0.95047);
        double y = F((0.2126729 * c[0]) + (0.7151522 * c[1]) + (0.0721750 * c[2]));
        double z = F(((0.0193339 * c[0]) + (0.1191920 * c[1]) + (0.9503041 * c[2])) / 1.08883);
        return [(116 * y) - 16, 500 * (x - y), 200 * (y - z)];
    }
}
