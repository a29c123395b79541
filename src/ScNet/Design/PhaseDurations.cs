using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Design;

/// <summary>Durations of given phases at which nothing, or the least, is lost where charge is shared.</summary>
/// <remarks>
/// Equations: docs/theory/split-phase.md. The unknowns are the durations, the voltages at the start of the period, per unit
/// of charge, and in <see cref="Least"/> the impulses round the loops. Cost: the cube of their number, in fractions.
/// </remarks>
internal static class PhaseDurations
{
    private static readonly Rational<BigInteger> s_one = Rational<BigInteger>.One;

    /// <summary>Positive durations at which every loop that closes finds equal voltages; null where there are none.</summary>
    public static Fraction[]? Soft(IReadOnlyList<SteadyPhase> phases, Rational<BigInteger>[] elastances)
    {
        int count = phases.Count, unknowns = count + elastances.Length;
        List<Rational<BigInteger>[]> equations = Equations(phases, elastances, unknowns, withImpulses: false);
        if (ExactSpace.Where(unknowns, equations) is not { } space)
        {
            return null;
        }

        if (!Enumerable.Range(0, count).Any(space.Moves))
        {
            return Positive(space.Origin, count);
        }

        // the middle of the corners is inside
        int freedom = Rank([.. space.Movements.Select(m => m[..count])], count);
        List<Rational<BigInteger>[]> corners = [];
        foreach (int[] zero in Subsets(count, freedom))
        {
            Rational<BigInteger>[][] more = Array.ConvertAll(zero, k => Unit(unknowns, k));
            if (ExactSpace.Where(unknowns, [.. equations, .. more]) is { } corner && !Enumerable.Range(0, count).Any(corner.Moves)
                && corner.Origin[..count].All(d => d.Numerator.Sign >= 0))
            {
                corners.Add(corner.Origin[..count]);
            }
        }

        return corners.Count == 0 ? null : Positive(
            [.. Enumerable.Range(0, count).Select(k => corners.Aggregate(Rational<BigInteger>.Zero, (sum, c) => sum + c[k]) / corners.Count)], count);
    }

    /// <summary>Positive durations at which the impulses lose the least; null where there are none.</summary>
    public static Fraction[]? Least(IReadOnlyList<SteadyPhase> phases, Rational<BigInteger>[] elastances)
    {
        int count = phases.Count, capacitors = elastances.Length;
        int unknowns = count + capacitors + phases.Sum(p => p.Loops.Count);
        if (ExactSpace.Where(unknowns, Equations(phases, elastances, unknowns, withImpulses: true)) is not { } space)
        {
            return null;
        }

        Rational<BigInteger>[][] impulses = [.. space.Movements.Append(space.Origin).Select(Impulses)];
        Rational<BigInteger>[] weights = [.. phases.SelectMany(_ => elastances)];
        VoltageSpace<BigInteger> least = space.Where([.. impulses[..^1].Select(own => (Rational<BigInteger>[])
            [.. impulses.Select(other => ExactSpace.Product(own, other, weights))])])!;
        return Positive(least.Origin, count);

        Rational<BigInteger>[] Impulses(Rational<BigInteger>[] x)
        {
            var charges = new Rational<BigInteger>[count * capacitors];
            int at = count + capacitors;
            for (int s = 0; s < count; s++)
            {
                foreach (Rational<BigInteger>[] loop in phases[s].Loops)
                {
                    for (int i = 0; i < capacitors; i++)
                    {
                        charges[(s * capacitors) + i] += loop[i] * x[at];
                    }

                    at++;
                }
            }

            return charges;
        }
    }

    // They sum to one; every capacitor balances; and the loops of a phase agree at its start, with impulses at its end.
    private static List<Rational<BigInteger>[]> Equations(
        IReadOnlyList<SteadyPhase> phases, Rational<BigInteger>[] elastances, int unknowns, bool withImpulses)
    {
        int count = phases.Count, capacitors = elastances.Length, next = count + capacitors;
        var sum = new Rational<BigInteger>[unknowns + 1];
        sum.AsSpan(0, count).Fill(s_one);
        sum[^1] = -s_one;
        List<Rational<BigInteger>[]> equations = [sum];
        Rational<BigInteger>[][] charges = [.. Enumerable.Range(0, capacitors).Select(_ => new Rational<BigInteger>[unknowns + 1])];
        for (int s = 0; s < count; s++)
        {
            if (!withImpulses)
            {
                equations.AddRange(phases[s].Loops.Select(Closed));
            }

            for (int i = 0; i < capacitors; i++)
            {
                charges[i][s] += phases[s].Charge[i];
                for (int l = 0; l < phases[s].Loops.Count && withImpulses; l++)
                {
                    charges[i][next + l] += phases[s].Loops[l][i];
                }
            }

            next += phases[s].Loops.Count;
            if (withImpulses)
            {
                equations.AddRange(phases[s].Loops.Select(Closed));
            }
        }

        return [.. equations, .. charges];

        Rational<BigInteger>[] Closed(Rational<BigInteger>[] loop)
        {
            var row = new Rational<BigInteger>[unknowns + 1];
            for (int i = 0; i < capacitors; i++)
            {
                row[count + i] = loop[i];
                for (int k = 0; k < unknowns && !loop[i].IsZero; k++)
                {
                    row[k] += charges[i][k] * elastances[i] * loop[i];
                }
            }

            return row;
        }
    }

    private static Fraction[]? Positive(Rational<BigInteger>[] values, int count) =>
        values.Take(count).All(v => v.Numerator.Sign > 0) ? [.. values.Take(count).Select(v => new Fraction(v.Numerator, v.Denominator))] : null;

    private static Rational<BigInteger>[] Unit(int unknowns, int own)
    {
        var row = new Rational<BigInteger>[unknowns + 1];
        row[own] = s_one;
        return row;
    }

    private static int Rank(Rational<BigInteger>[][] vectors, int length) =>
        length - ExactSpace.Where(length, [.. vectors.Select(v => (Rational<BigInteger>[])[.. v, Rational<BigInteger>.Zero])])!.Movements.Count;

    private static IEnumerable<int[]> Subsets(int count, int size) => size == 0 ? [[]]
        : Enumerable.Range(0, count).SelectMany(last => Subsets(last, size - 1).Select(s => (int[])[.. s, last]));
}
