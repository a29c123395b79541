using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Tests.Analysis;

/// <summary>The eliminated loop equations against the loops as they were, and against flows found by hand.</summary>
public sealed class LoopSolutionTests
{
    /// <summary>
    /// Two halving cells side by side: with a, b charged by q and r in phase 1 and emptied by as much in phase 2, the output gets
    /// 2q + 2r, so that what circulates is q = -r. A third capacitor hangs from the input one way and then the other, which no voltage satisfies.
    /// </summary>
    [Fact]
    public void What_circulates_is_told_and_neither_pivots_nor_contradictions_are()
    {
        Converter converter = Cells("a", "b").Capacitor("turned", "t", "u")
            .Switch("t1", "vin", "t", on: 1).Switch("t2", "u", "gnd", on: 1).Switch("t3", "vin", "u", on: 2).Switch("t4", "t", "gnd", on: 2).Build();
        (LoopSet loops, LoopSolution<long> solution) = Solve(converter);

        // loops by phase and then by capacitor: a, b, turned, a, b, turned
        Rational<long>[] circulation = Assert.Single(solution.Circulations());
        long q = circulation[0].Numerator;
        Assert.NotEqual(0, q);
        Assert.Equal([q, -q, 0, -q, q, 0], circulation.Select(c => c.Numerator / c.Denominator));
        Assert.Equal(circulation.Select(c => c.Widened()), Assert.Single(((ILoopSolution)solution).Circulations()));
        Assert.Equal([2, 5], Assert.Single(solution.Conflicts()));
        Assert.Equal(6, loops.Count);
    }

    [Fact]
    public void A_reduced_row_is_the_combination_of_equations_that_is_told_of_it()
    {
        Converter converter = Stages();
        (LoopSet loops, LoopSolution<long> solution) = Solve(converter);
        ILoopSolution general = solution;
        SparseRows<long> before = LoopEquations.Of<long>(converter.Network, loops);
        for (int row = 0; row < loops.EquationCount; row++)
        {
            Rational<BigInteger>[] weights = general.EquationWeights(row);
            Fraction[] sum = [.. Enumerable.Range(0, converter.Network.BranchCount).Select(b => Enumerable.Range(0, weights.Length)
                .Aggregate(Fraction.Zero, (s, e) => s + (new Fraction(weights[e].Numerator, weights[e].Denominator) * Entry(before, e, b))))];
            (int Column, BigInteger Factor)[] reduced = general.ReducedRow(row);

            Assert.Equal(sum.Count(s => !s.IsZero), reduced.Length);
            Assert.All(reduced, e => Assert.Equal(sum[e.Column], new Fraction(e.Factor)));
        }
    }

    /// <summary>Two inverting stages of one ratio, whose rows are of unlike multiples of the output: what is told of a circulation is its path less the flow of the output, so many times.</summary>
    [Fact]
    public void A_circulation_is_the_share_of_its_path_less_the_own_flow()
    {
        (LoopSet loops, LoopSolution<long> solution) = Solve(Stages());
        Rational<long>[] own = solution.LoopCharges();
        (List<(int Loop, Rational<long> Charge)> circulation, List<(int Loop, Rational<long> Charge)>? path, Rational<long> share) = Assert.Single(solution.SparseCirculations());

        Assert.NotNull(path);
        for (int loop = 0; loop < loops.Count; loop++)
        {
            Assert.Equal(Sum(circulation, loop), share * (Sum(path, loop) - own[loop]));
        }

        Assert.Contains(circulation, c => !c.Charge.IsZero);
    }

    [Fact]
    public void Controllers_contradict_only_what_is_not_so()
    {
        Converter one = Cells("a").Build(), two = Cells("a", "b").Build();
        LoopSet loops = Solve(one).Loops;

        // half the input is what a cell comes to
        Assert.Empty(LoopSolution<long>.Contradiction(two.Network, Solve(two).Loops, [(0, new Fraction(1, 2)), (1, new Fraction(1, 2))]));
        Assert.Empty(LoopSolution<long>.Contradiction(one.Network, loops, [(0, new Fraction(1, 2))]));
        Assert.Equal([0, 1], LoopSolution<long>.Contradiction(one.Network, loops, [(0, new Fraction(1, 3))]));
        Assert.Equal([0, 1], LoopSolution<long>.Contradiction(one.Network, loops, [(0, new Fraction(-1, 2))]));
        Assert.Equal([0, 1], LoopSolution<long>.Contradiction(one.Network, loops, [(0, Fraction.Zero)]));
    }

    private static Rational<long> Sum(List<(int Loop, Rational<long> Charge)> flow, int loop) =>
        flow.FindAll(c => c.Loop == loop).Aggregate(Rational<long>.Zero, (sum, c) => sum + c.Charge);

    private static Fraction Entry(SparseRows<long> rows, int row, int column) =>
        rows.Find(row, column) is >= 0 and int at ? new Fraction(rows.Values(row)[at]) : Fraction.Zero;

    private static (LoopSet Loops, LoopSolution<long> Solution) Solve(Converter converter)
    {
        SwitchedNetwork network = converter.Network;
        PhaseForest[] forests = [.. Enumerable.Range(0, network.PhaseCount).Select(p => PhaseForest.Of(network, network.ClosedIn(0, p)))];
        LoopSet loops = LoopSet.Of(network, forests);
        return (loops, LoopSolution<long>.Of(network, loops));
    }

    private static ConverterBuilder Cells(params string[] names)
    {
        ConverterBuilder builder = Converter.Create("cells").Input("vin").Output("vout").Phases(2);
        foreach (string cell in names)
        {
            builder.Capacitor(cell, $"{cell}p", $"{cell}n")
                .Switch($"{cell}1", "vin", $"{cell}p", on: 1).Switch($"{cell}2", $"{cell}n", "vout", on: 1)
                .Switch($"{cell}3", $"{cell}p", "vout", on: 2).Switch($"{cell}4", $"{cell}n", "gnd", on: 2);
        }

        return builder;
    }

    // a charges its coil for 2/10 of the period and lets it go for as long, b for 3/10; else the coils are shorted
    private static Converter Stages() => Converter.Create("stages").Input("vin").Output("vout").Duties(0.2, 0.2, 0.3, 0.3)
        .Switch("a1", "vin", "x", on: 1).Switch("a2", "x", "vout", on: 2).Switch("a3", "x", "gnd", on: [3, 4]).Inductor("a", "x", "gnd")
        .Switch("b1", "vin", "y", on: 3).Switch("b2", "y", "vout", on: 4).Switch("b3", "y", "gnd", on: [1, 2]).Inductor("b", "y", "gnd")
        .Build();
}
