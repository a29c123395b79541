using System.Globalization;
using System.Numerics;
using ScNet.Topologies;

namespace ScNet.Cli.Families;

/// <summary>The values and the direction in which a family is built.</summary>
internal sealed record FamilyValues(bool IsStepUp = false, double Farads = 1, double Ohms = 1);

/// <summary>One number that a family takes.</summary>
/// <param name="Name">The letter under which the list of families shows it.</param>
/// <param name="Least">The smallest value.</param>
/// <param name="Most">The largest value.</param>
internal sealed record FamilySize(string Name, int Least, int Most);

/// <summary>What binds the numbers of a family to one another.</summary>
internal sealed record FamilyCondition(string Text, Func<int[], bool> Holds);

/// <summary>One form of a standard family: its name, what numbers it takes, and what they give.</summary>
/// <param name="Name">The name, which more than one form may have.</param>
/// <param name="Sizes">The numbers.</param>
/// <param name="Ratio">The ratio in terms of the numbers.</param>
/// <param name="StepUpRatio">The ratio of the converter run the other way, or null where there is none.</param>
/// <param name="Description">What the numbers count.</param>
/// <param name="Build">Builds the converter.</param>
/// <param name="Condition">What binds the numbers to one another, or null.</param>
internal sealed record Family(
    string Name,
    FamilySize[] Sizes,
    string Ratio,
    string? StepUpRatio,
    string Description,
    Func<int[], FamilyValues, Converter> Build,
    FamilyCondition? Condition = null)
{
    // as large as anybody would draw; the library has no limit of its own here
    private const int MaximumCells = 1000;

    /// <summary>The name and the letters of the sizes: "binary N K".</summary>
    public string Usage => string.Join(' ', [Name, .. Sizes.Select(s => s.Name)]);

    /// <summary>The bounds of the sizes: "N from 1 to 30, K below 2^N".</summary>
    public string SizesText => string.Join(", ", [
        .. Sizes.Where(s => s.Most < int.MaxValue).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Name} from {s.Least} to {s.Most}")),
        .. Condition is { } condition ? [condition.Text] : Array.Empty<string>(),
    ]);

    /// <summary>Every form of every family, in the order in which they are listed.</summary>
    public static IReadOnlyList<Family> All { get; } =
    [
        new("series-parallel", [new("N", 2, MaximumCells)], "1/N", "N", "N - 1 capacitors in series, then in parallel", (s, v) => v.IsStepUp
            ? SeriesParallel.StepUp(s[0], v.Farads, v.Ohms) : SeriesParallel.StepDown(s[0], v.Farads, v.Ohms)),
        new("ladder", [new("N", 2, MaximumCells)], "1/N", "N", "N rungs, each switch at 1/N", (s, v) => v.IsStepUp
            ? Ladder.StepUp(s[0], v.Farads, v.Ohms) : Ladder.StepDown(s[0], v.Farads, v.Ohms)),
        new("dickson", [new("N", 2, MaximumCells)], "1/N", "N", "N - 1 capacitors on two drive lines", (s, v) => v.IsStepUp
            ? Dickson.StepUp(s[0], v.Farads, v.Ohms) : Dickson.StepDown(s[0], v.Farads, v.Ohms)),
        new("cockcroft-walton", [new("K", 1, MaximumCells)], "1/(K+1)", "K+1", "K stages of one capacitor", (s, v) => v.IsStepUp
            ? CockcroftWalton.StepUp(s[0], v.Farads, v.Ohms) : CockcroftWalton.StepDown(s[0], v.Farads, v.Ohms)),
        new("fibonacci", [new("K", 1, MaximumCells)], "1/F(K+2)", "F(K+2)", "K stages: 1/2, 1/3, 1/5, 1/8, …", (s, v) => v.IsStepUp
            ? Fibonacci.StepUp(s[0], v.Farads, v.Ohms) : Fibonacci.StepDown(s[0], v.Farads, v.Ohms)),
        new("doubler", [new("K", 1, MaximumCells)], "1/2^K", "2^K", "K cells of 2:1 in a row", (s, v) => v.IsStepUp
            ? Doubler.StepUp(s[0], v.Farads, v.Ohms) : Doubler.StepDown(s[0], v.Farads, v.Ohms)),
        new("fraction", [Term("P"), Term("Q")], "P/Q", null, "at most three capacitors", (s, v) =>
            FractionalDivider.Of(s[0], s[1], v.Farads, v.Ohms),
            new($"P and Q from 1 to {FractionalDivider.LargestTerm} in lowest terms", s => Math.Max(Reduced(s, 0), Reduced(s, 1)) <= FractionalDivider.LargestTerm)),
        new("binary", [new("N", 1, BinaryConverter.MaximumCapacitors), Numerator], "K/2^N", "2^N/K", "N capacitors in N + 1 phases", (s, v) => v.IsStepUp
            ? BinaryConverter.StepUp(s[0], s[1], v.Farads, v.Ohms) : BinaryConverter.StepDown(s[0], s[1], v.Farads, v.Ohms), BelowPower),
        new("binary", [new("N", 1, BinaryConverter.MaximumReconfigurableCapacitors)], "all K/2^N", null, "the same with a mode per ratio", (s, v) =>
            BinaryConverter.Reconfigurable(s[0], v.Farads, v.Ohms)),
        new("recursive", [new("N", 1, RecursiveCascade.MaximumCells), Numerator], "K/2^N", "2^N/K", "N cells in two phases", (s, v) => v.IsStepUp
            ? RecursiveCascade.StepUp(s[0], s[1], v.Farads, v.Ohms) : RecursiveCascade.StepDown(s[0], s[1], v.Farads, v.Ohms), BelowPower),
        new("recursive", [new("N", 1, RecursiveCascade.MaximumReconfigurableCells)], "all K/2^N", null, "the same with a mode per ratio", (s, v) =>
            RecursiveCascade.Reconfigurable(s[0], v.Farads, v.Ohms)),
        new("inverter", [new("N", 1, MaximumCells)], "-1/N", "-N", "N capacitors in series, then in parallel", (s, v) => v.IsStepUp
            ? PolarityInverter.StepUp(s[0], v.Farads, v.Ohms) : PolarityInverter.StepDown(s[0], v.Farads, v.Ohms)),
        new("inverter", [Term("P"), Term("Q")], "-P/Q", null, "at most three capacitors", (s, v) =>
            PolarityInverter.Of(s[0], s[1], v.Farads, v.Ohms),
            new($"P and Q from 1, P + Q up to {PolarityInverter.LargestSum} in lowest terms", s => Reduced(s, 0) + Reduced(s, 1) <= PolarityInverter.LargestSum)),
    ];

    private static FamilyCondition BelowPower => new("K from 1, below 2^N", s => s[1] < 1L << s[0]);

    // bound by a condition only, as are the terms of a ratio
    private static FamilySize Numerator => new("K", 1, int.MaxValue);

    private static FamilySize Term(string name) => new(name, 1, int.MaxValue);

    private static long Reduced(int[] terms, int index) => terms[index] / (int)BigInteger.GreatestCommonDivisor(terms[0], terms[1]);
}
