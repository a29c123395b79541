using System.Runtime.CompilerServices;
using CsCheck;
using ScNet.Analysis;
using ScNet.Testing.Networks;

namespace ScNet.Testing;

/// <summary>What the laws share: drawing networks that have a result, and comparing quantities.</summary>
internal static class LawSample
{
    /// <summary>How far two numbers from different routes may be apart, relative to 1 or the larger one.</summary>
    public const double Tolerance = 1e-9;

    /// <summary>Checks a law on every network of the sample that has a result.</summary>
    public static void Check(Action<NetworkSketch, ModeAnalysis> law, Gen<NetworkSketch>? networks = null, long iterations = 1500, [CallerFilePath] string file = "", [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        (networks ?? RandomNetworks.Any).Holds(
            sketch =>
            {
                if (Try(sketch).Analysis is { } analysis)
                {
                    Interlocked.Increment(ref checkedCount);
                    law(sketch, analysis);
                }
            },
            iterations,
            sketch => sketch.ToString(),
            null,
            file,
            name);
        Assert.True(LawCheck.IsOneCase || checkedCount >= iterations / 5, $"Only {checkedCount} of {iterations} networks had a result.");
    }

    public static ModeOutcome Try(NetworkSketch sketch)
    {
        Converter converter = sketch.Build();
        return ModeAnalysis.Try(converter, converter.Modes[0]);
    }

    public static ModeAnalysis Analyse(NetworkSketch sketch) => Try(sketch).Require();

    public static bool IsClosed(ModeAnalysis analysis, int @switch, int phase) =>
        analysis.Mode.ClosedPhases[@switch].Contains(phase);

    /// <summary>Requires the same kind and value, numbers within the tolerance.</summary>
    public static void AssertSame(Quantity expected, Quantity actual, string what)
    {
        bool same = (expected.IsDetermined, expected.IsExact) == (actual.IsDetermined, actual.IsExact)
            && (expected is { IsDetermined: true, IsExact: false } ? Near(expected.ToDouble(), actual.ToDouble()) : expected == actual);
        Assert.True(same, $"{what}: expected {expected.ToString("R", null)}, but got {actual.ToString("R", null)}.");
    }

    public static void AssertNear(double expected, double actual, string what, double tolerance = Tolerance) =>
        Assert.True(Near(expected, actual, tolerance), $"{what}: expected {expected:R}, but got {actual:R}.");

    public static bool Near(double left, double right, double tolerance = Tolerance) =>
        Math.Abs(left - right) <= tolerance * Math.Max(1, Math.Max(Math.Abs(left), Math.Abs(right)));

    /// <summary>Requires a sum of quantities to vanish: exactly where all are exact, else within the tolerance.</summary>
    public static void AssertSumIsZero(IReadOnlyCollection<Quantity> terms, string what)
    {
        if (terms.All(t => t.IsExact))
        {
            Fractions.Fraction sum = terms.Aggregate(Fractions.Fraction.Zero, (total, term) => total + term.ToFraction());
            Assert.True(sum.IsZero, $"{what}: the sum is {sum}.");
            return;
        }

        double scale = terms.Max(t => Math.Abs(t.ToDouble()));
        AssertNear(0, terms.Sum(t => t.ToDouble()) / Math.Max(1, scale), what);
    }
}
