using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Time constants that lie twelve and more decades apart, against closed forms made of positive terms only, which
/// lose no digits.
/// </summary>
public sealed class StiffnessTests
{
    private const double Tolerance = 1e-9;

    public static TheoryData<double, double, double, double> Spreads => new()
    {
        { 1, 1e-12, 1, 1 }, { 1, 1e12, 1, 1 }, { 1, 1, 1, 1e12 }, { 1, 1, 1e12, 1 }, { 1e-6, 1e6, 1, 1 },
        { 1, 1e-6, 1, 1e-6 }, { 1, 1e-6, 1, 1e6 }, { 1e6, 1, 1e6, 1 }, { 1, 1e-15, 1, 1 }, { 1, 1, 1, 1e15 }, { 1, 1, 1e15, 1 },
    };

    /// <summary>
    /// Dividers side by side between stiff ports do not know of each other: their conductances add, each
    /// as in <see cref="OneCapacitorTests"/>. How the charge divides depends on the frequency.
    /// </summary>
    [Theory]
    [MemberData(nameof(Spreads))]
    public void Dividers_side_by_side_add_their_conductances(double c1, double c2, double r1, double r2)
    {
        double[] farads = [c1, c2, Math.Sqrt(c1 * c2)], loopOhms = [r1, r2, 1];
        ConverterBuilder builder = Converter.Create("side by side").Input("vin").Output("vout");
        for (int k = 0; k < farads.Length; k++)
        {
            builder.Capacitor($"c{k}", $"p{k}", $"n{k}", farads[k])
                .Switch($"a{k}", "vin", $"p{k}", on: 1, 0.25 * loopOhms[k]).Switch($"b{k}", $"n{k}", "vout", on: 1, 0.75 * loopOhms[k])
                .Switch($"d{k}", $"p{k}", "vout", on: 2, 0.5 * loopOhms[k]).Switch($"e{k}", $"n{k}", Converter.ReferenceNode, on: 2, 0.5 * loopOhms[k]);
        }

        Compare(builder.Build(), farads, loopOhms, f =>
            1 / farads.Zip(loopOhms, (c, r) => 4 * f * c * Math.Tanh(1 / (4 * f * r * c))).Sum());
    }

    /// <summary>
    /// A third: both capacitors in series, then each alone to the output, which is stiff. Every loop has
    /// one time constant and carries a third of the charge, and a loop of resistance R and capacitance C
    /// that carries the charge q dissipates q² / (2 C) coth(D / (2 f R C)) in a phase of duty D.
    /// </summary>
    [Theory]
    [MemberData(nameof(Spreads))]
    public void Loops_of_single_time_constants_add_their_energies(double c1, double c2, double r1, double r2)
    {
        double series = r1 + r2 + 1;
        Converter converter = Converter.Create("third").Input("vin").Output("vout").Duties(0.4, 0.6)
            .Capacitor("c1", "p1", "n1", c1).Capacitor("c2", "p2", "n2", c2)
            .Switch("s1", "vin", "p1", on: 1, r1).Switch("s2", "n1", "p2", on: 1, r2).Switch("s3", "n2", "vout", on: 1, 1)
            .Switch("t1", "p1", "vout", on: 2, 0.4 * r1).Switch("b1", "n1", Converter.ReferenceNode, on: 2, 0.6 * r1)
            .Switch("t2", "p2", "vout", on: 2, 0.3 * r2).Switch("b2", "n2", Converter.ReferenceNode, on: 2, 0.7 * r2).Build();
        double Loop(double c, double r, double duty, double f) => 1 / (2 * f * c) / Math.Tanh(duty / (2 * f * r * c)) / 9;
        Compare(converter, [c1, c2], [r1, r2, series], f =>
            Loop(1 / ((1 / c1) + (1 / c2)), series, 0.4, f) + Loop(c1, r1, 0.6, f) + Loop(c2, r2, 0.6, f));
    }

    /// <summary>
    /// The same third, but both capacitors reach the output through one resistance Z, so that phase 2 has
    /// two modes. With the loop resistances M = [[R1 + Z, Z], [Z, R2 + Z]] and the elastances S = diag(1/C),
    /// its modes are S x = λ M x; the charges q = (1/3, 1/3) dissipate
    /// Σ_k (λ_k/2) coth(λ_k D / (2 f)) (x_kᵀ M q)² / (x_kᵀ M x_k). Evaluated in 28 decimal digits.
    /// </summary>
    [Theory]
    [InlineData(1, 1, 1, 1, 1)]
    [InlineData(1, 1e-6, 1, 2, 0.5)]
    [InlineData(1, 1e-12, 1, 2, 0.5)]
    [InlineData(1e-12, 1, 1, 2, 0.5)]
    [InlineData(1, 2, 1, 1e-12, 0.5)]
    [InlineData(1, 2, 1e-12, 1, 0.5)]
    [InlineData(1, 2, 1e-12, 2e-12, 1)]
    [InlineData(1, 2, 1, 2, 1e-12)]
    [InlineData(1, 1e-6, 1e-6, 1, 1e-3)]
    [InlineData(1, 1e-6, 1, 1e-6, 1e-3)]
    public void Coupled_loops_add_the_energies_of_their_modes(double c1, double c2, double r1, double r2, double shared)
    {
        double series = r1 + r2 + 1;
        Converter converter = Converter.Create("third").Input("vin").Output("vout").Duties(0.4, 0.6)
            .Capacitor("c1", "p1", "n1", c1).Capacitor("c2", "p2", "n2", c2)
            .Switch("s1", "vin", "p1", on: 1, r1).Switch("s2", "n1", "p2", on: 1, r2).Switch("s3", "n2", "vout", on: 1, 1)
            .Switch("t1", "p1", "x", on: 2, 0.4 * r1).Switch("b1", "n1", Converter.ReferenceNode, on: 2, 0.6 * r1)
            .Switch("t2", "p2", "x", on: 2, 0.3 * r2).Switch("b2", "n2", Converter.ReferenceNode, on: 2, 0.7 * r2)
            .Switch("z", "x", "vout", on: 2, shared).Build();
        (double Rate, double Weight)[] modes = Modes((decimal)c1, (decimal)c2, (decimal)r1, (decimal)r2, (decimal)shared);
        double c = 1 / ((1 / c1) + (1 / c2));
        Compare(converter, [c1, c2], [r1, r2, shared, series], f =>
            (1 / (2 * f * c) / Math.Tanh(0.4 / (2 * f * series * c)) / 9)
            + modes.Sum(m => m.Rate / (2 * f) / Math.Tanh(m.Rate * 0.6 / (2 * f)) * m.Weight / 9));
    }

    private static (double Rate, double Weight)[] Modes(decimal c1, decimal c2, decimal r1, decimal r2, decimal z)
    {
        // det(S - λM) = a λ² - b λ + s1 s2; the difference of the roots is a sum of squares, so nothing cancels
        decimal s1 = 1 / c1, s2 = 1 / c2, m1 = r1 + z, m2 = r2 + z;
        decimal a = (r1 * r2) + (z * (r1 + r2)), b = (s1 * m2) + (s2 * m1), apart = (s1 * m2) - (s2 * m1);
        decimal large = (b + Root((apart * apart) + (4 * s1 * s2 * z * z))) / (2 * a), small = s1 * s2 / (a * large);
        return [.. new[] { large, small }.Select(rate =>
        {
            // S x = λ M x by the row with the larger second entry
            decimal d1 = s1 - (rate * m1), d2 = s2 - (rate * m2);
            (decimal x1, decimal x2) = Math.Abs(d1) > Math.Abs(d2) ? (rate * z, d1) : (d2, rate * z);
            decimal largest = Math.Max(Math.Abs(x1), Math.Abs(x2));
            (x1, x2) = (x1 / largest, x2 / largest);
            decimal projection = (x1 * (m1 + z)) + (x2 * (z + m2));
            decimal square = (x1 * x1 * m1) + (2 * x1 * x2 * z) + (x2 * x2 * m2);
            return ((double)rate, (double)(projection * projection / square));
        })];
    }

    private static decimal Root(decimal value)
    {
        decimal root = (decimal)Math.Sqrt((double)value);
        return root == 0 ? 0 : ((root + (value / root)) / 2);
    }

    // about every product of a capacitance and a resistance, and well beyond on both sides
    private static void Compare(Converter converter, double[] farads, double[] ohms, Func<double, double> expected)
    {
        OutputImpedance impedance = OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
        double[] rates = [.. farads.SelectMany(c => ohms.Select(r => 1 / (r * c)))];
        double low = Math.Log10(rates.Min()) - 2, high = Math.Log10(rates.Max()) + 2;
        for (double exponent = low; exponent <= high; exponent += 0.23)
        {
            double f = Math.Pow(10, exponent), wanted = expected(f), actual = impedance.Ohms(f);
            Assert.True(
                Math.Abs(wanted - actual) <= Tolerance * wanted,
                $"At {f:e3} Hz expected {wanted:R}, but got {actual:R} ({Math.Abs(wanted - actual) / wanted:e1}).");
        }
    }
}
