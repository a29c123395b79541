using System.Numerics;

namespace ScNet.Topologies;

/// <summary>Every form of every standard family, by name and numbers.</summary>
public static class FamilyCatalogue
{
    // as large as anybody would draw; the families have no limit of their own here
    private const int MaximumCells = 1000;

    /// <summary>Every form, in the order in which they are listed.</summary>
    public static IReadOnlyList<Family> All { get; } =
    [
        new("series-parallel", [("N", 2, MaximumCells)], ("1/N", "N"), "N - 1 capacitors in series, then in parallel", (n, o) => o.IsStepUp
            ? SeriesParallel.StepUp(n[0], o.Farads, o.Ohms, o.Load) : SeriesParallel.StepDown(n[0], o.Farads, o.Ohms, o.Load)),
        new("ladder", [("N", 2, MaximumCells)], ("1/N", "N"), "N rungs, each switch at 1/N", (n, o) => o.IsStepUp
            ? Ladder.StepUp(n[0], o.Farads, o.Ohms, o.Load) : Ladder.StepDown(n[0], o.Farads, o.Ohms, o.Load)),
        new("dickson", [("N", 2, MaximumCells)], ("1/N", "N"), "N - 1 capacitors on two drive lines", (n, o) => o.IsStepUp
            ? Dickson.StepUp(n[0], o.Farads, o.Ohms, o.Load) : Dickson.StepDown(n[0], o.Farads, o.Ohms, o.Load)),
        new("cockcroft-walton", [("K", 1, MaximumCells)], ("1/(K+1)", "K+1"), "K stages of one capacitor", (n, o) => o.IsStepUp
            ? CockcroftWalton.StepUp(n[0], o.Farads, o.Ohms, o.Load) : CockcroftWalton.StepDown(n[0], o.Farads, o.Ohms, o.Load)),
        new("fibonacci", [("K", 1, MaximumCells)], ("1/F(K+2)", "F(K+2)"), "K stages: 1/2, 1/3, 1/5, 1/8, …", (n, o) => o.IsStepUp
            ? Fibonacci.StepUp(n[0], o.Farads, o.Ohms, o.Load) : Fibonacci.StepDown(n[0], o.Farads, o.Ohms, o.Load)),
        new("doubler", [("K", 1, MaximumCells)], ("1/2^K", "2^K"), "K cells of 2:1 in a row", (n, o) => o.IsStepUp
            ? Doubler.StepUp(n[0], o.Farads, o.Ohms, o.Load) : Doubler.StepDown(n[0], o.Farads, o.Ohms, o.Load)),
        new("fraction", [Unbound("P"), Unbound("Q")], ("P/Q", null), "at most three capacitors", (n, o) =>
            FractionalDivider.Of(n[0], n[1], o.Farads, o.Ohms, o.Load),
            new($"P and Q from 1 to {FractionalDivider.MaximumTerm} in lowest terms", n => Math.Max(n[0], n[1]) <= FractionalDivider.MaximumTerm && IsReduced(n))),
        new("binary", [("N", 1, BinaryConverter.MaximumCapacitors), Unbound("K")], ("K/2^N", "2^N/K"), "N capacitors in N + 1 phases", (n, o) => o.IsStepUp
            ? BinaryConverter.StepUp(n[0], n[1], o.Farads, o.Ohms, o.Load) : BinaryConverter.StepDown(n[0], n[1], o.Farads, o.Ohms, o.Load), BelowPower),
        new("binary", [("N", 1, BinaryConverter.MaximumReconfigurableCapacitors)], ("all K/2^N", null), "the same with a mode per ratio", (n, o) =>
            BinaryConverter.Reconfigurable(n[0], o.Farads, o.Ohms, o.Load)),
        new("recursive", [("N", 1, RecursiveCascade.MaximumCells), Unbound("K")], ("K/2^N", "2^N/K"), "N cells in two phases", (n, o) => o.IsStepUp
            ? RecursiveCascade.StepUp(n[0], n[1], o.Farads, o.Ohms, o.Load) : RecursiveCascade.StepDown(n[0], n[1], o.Farads, o.Ohms, o.Load), BelowPower),
        new("recursive", [("N", 1, RecursiveCascade.MaximumReconfigurableCells)], ("all K/2^N", null), "the same with a mode per ratio", (n, o) =>
            RecursiveCascade.Reconfigurable(n[0], o.Farads, o.Ohms, o.Load)),
        new("inverter", [("N", 1, MaximumCells)], ("-1/N", "-N"), "N capacitors in series, then in parallel", (n, o) => o.IsStepUp
            ? PolarityInverter.StepUp(n[0], o.Farads, o.Ohms, o.Load) : PolarityInverter.StepDown(n[0], o.Farads, o.Ohms, o.Load)),
        new("inverter", [Unbound("P"), Unbound("Q")], ("-P/Q", null), "at most three capacitors", (n, o) =>
            PolarityInverter.Of(n[0], n[1], o.Farads, o.Ohms, o.Load),
            new($"P and Q from 1, P + Q up to {PolarityInverter.MaximumSum} in lowest terms", n => (long)n[0] + n[1] <= PolarityInverter.MaximumSum && IsReduced(n))),
        new("inductive", [Unbound("P"), Unbound("Q")], ("P/Q", null), "a coil and two switches, duty P/Q", (n, o) =>
            InductiveStage.StepDown(new(n[0], n[1]), o.Henries, o.Ohms, o.WindingOhms, o.Load, o.Farads), BelowOne),
        new("inductive-up", [Unbound("P"), Unbound("Q")], ("Q/(Q-P)", null), "a coil and two switches, duty P/Q", (n, o) =>
            InductiveStage.StepUp(new(n[0], n[1]), o.Henries, o.Ohms, o.WindingOhms, o.Load, o.Farads), BelowOne),
        new("inductive-inverter", [Unbound("P"), Unbound("Q")], ("-P/(Q-P)", null), "a coil and two switches, duty P/Q", (n, o) =>
            InductiveStage.Inverting(new(n[0], n[1]), o.Henries, o.Ohms, o.WindingOhms, o.Load, o.Farads), BelowOne),
        new("flying-capacitor", [("N", 2, FlyingCapacitorStage.MaximumLevels), Unbound("P"), Unbound("Q")], ("P/Q", null), "N levels before a coil, duty P/Q", (n, o) =>
            FlyingCapacitorStage.Of(n[0], new(n[1], n[2]), o.Farads, o.Henries, o.Ohms, o.WindingOhms, o.Load),
            new("P from 1, below Q", n => n[1] < n[2])),
        new("series-charged", [Unbound("P"), Unbound("Q")], ("P/Q", null), "two capacitors charged in series with a coil, duty P/Q", (n, o) =>
            SeriesChargedStage.Of(new(n[0], n[1]), o.Farads, o.Henries, o.Ohms, o.WindingOhms, o.Load),
            new("P from 1, 3 P at most Q", n => 3L * n[0] <= n[1])),
        new("series-capacitor", [Unbound("P"), Unbound("Q")], ("P/(2 Q)", null), "two coils that share one capacitor, duty P/Q", (n, o) =>
            SeriesCapacitorStage.Of(new(n[0], n[1]), o.Farads, o.Henries, o.Ohms, o.WindingOhms, o.Load),
            new("P from 1, 2 P below Q", n => 2L * n[0] < n[1])),
    ];

    private static FamilyCondition BelowPower => new("K from 1, below 2^N", n => n[1] < 1L << n[0]);

    private static FamilyCondition BelowOne => new("P from 1, below Q", n => n[0] < n[1]);

    /// <summary>The forms of a name; none where there is no such family.</summary>
    /// <param name="name">The name, such as "ladder".</param>
    public static IReadOnlyList<Family> Named(string name) => [.. All.Where(f => f.Name == name)];

    // bound by the other number alone
    private static (string Name, int Minimum, int Maximum) Unbound(string name) => (name, 1, int.MaxValue);

    private static bool IsReduced(int[] terms) => BigInteger.GreatestCommonDivisor(terms[0], terms[1]).IsOne;
}
