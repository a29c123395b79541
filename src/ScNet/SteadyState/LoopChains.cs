using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The exponential modes of a phase whose loops hang together like chains, as those of a ladder do: no
/// capacitor is in two of them and a resistor in two neighbours at most, but for one long loop that may share
/// capacitors and resistors with all.
/// </summary>
/// <remarks>
/// With A the roots of the ohms by loops and E the elastances, A = QK and E = FᵀF, the time constants are the
/// eigenvalues of KF⁻¹(KF⁻¹)ᵀ: two diagonals, and one column for the long loop. Theory:
/// docs/theory/output-impedance.md, "Chains of loops". Cost: resistors² for the rates and for each rider.
/// </remarks>
internal sealed class LoopChains
{
    // Smaller phases cost less with dense rotations.
    private const int FewestResistors = 24;

    // The sum of squares loses digits of time constants farther apart than this.
    private const double LeastTimeShare = 1e-8;

    private readonly ChainLoops _loops;
    private readonly double[] _root;
    private readonly int[] _order;
    private readonly int[] _place;

    private LoopChains(ChainLoops loops, double[] root, int[] order)
    {
        _loops = loops;
        _root = root;
        _order = order;
        _place = new int[loops.Count];
        for (int i = 0; i < order.Length; i++)
        {
            _place[order[i]] = i;
        }
    }

    /// <summary>The chains of a phase; null where its loops are no chains, or too few to be worth it.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="forest">The phase with its closed switches contracted.</param>
    /// <param name="flows">The resistors of each phase.</param>
    /// <param name="phase">The phase.</param>
    public static LoopChains? TryOf(Converter converter, PhaseForest forest, ResistorFlows flows, int phase)
    {
        int[] resistors = flows.Resistors[phase];
        return resistors.Length >= FewestResistors
            && ChainLoops.TryOf(converter, forest, resistors.Length, r => flows.Position(phase, r)) is { } loops
            && loops.TryOrder(resistors.Length) is { } order
                ? new LoopChains(loops, [.. resistors.Select(r => Math.Sqrt(flows.Ohms(r)))], order)
                : null;
    }

    /// <summary>Rotates rows, one per resistor, into modes and rows of constant current.</summary>
    /// <param name="riders">What is to be seen by the modes: one row per resistor of the phase, afterwards one per mode.</param>
    /// <returns>The rate of each row in 1/s, zero for a constant current; null where rounding forbids this way.</returns>
    public double[]? TryRotate(DenseRows riders)
    {
        int n = _order.Length, count = _loops.HasLong ? n + 1 : n;
        double[] diagonal = new double[n], above = new double[n - 1];
        var rows = new int[n + 1];

        // the column of the long loop rides along behind the others, and is added when the chains are done
        DenseRows all = new(riders.RowCount, riders.ColumnCount + 1);
        for (int r = 0; r < riders.RowCount; r++)
        {
            riders.Row(r).CopyTo(all.Row(r));
        }

        if (!Triangle(all, diagonal, above, rows) || !BidiagonalRotations.Diagonalise(diagonal, above, all, rows))
        {
            return null;
        }

        var times = new double[count];
        for (int i = 0; i < n; i++)
        {
            times[i] = diagonal[i] * diagonal[i];
        }

        if (_loops.HasLong)
        {
            double[] squared = [.. rows.Select(row => all[row, riders.ColumnCount])];
            RankOneUpdate.Apply(times, squared, all, rows);
            if (times.Min() < LeastTimeShare * times.Max())
            {
                return null;
            }
        }

        var rates = new double[riders.RowCount];
        for (int i = 0; i < count; i++)
        {
            rates[rows[i]] = 1 / times[i];
        }

        for (int r = 0; r < riders.RowCount; r++)
        {
            all.Row(r)[..riders.ColumnCount].CopyTo(riders.Row(r));
        }

        return rates;
    }

    // K F⁻¹ by rotations of the resistors' rows, loop by loop of the chains, the long loop last; its column goes behind the riders.
    private bool Triangle(DenseRows riders, double[] diagonal, double[] above, int[] rows)
    {
        int n = _order.Length;
        List<(int Row, double Own, double Next, double Last)>[] waiting = Rows();
        var last = new double[n + 1];
        for (int i = 0; i <= n; i++)
        {
            if (waiting[i].Count == 0)
            {
                return i == n && !_loops.HasLong;
            }

            (int row, double own, double next, double end) = waiting[i][0];
            foreach ((int other, double otherOwn, double otherNext, double otherEnd) in waiting[i].Skip(1))
            {
                double length = double.Hypot(own, otherOwn), cosine = own / length, sine = otherOwn / length;
                RowRotations.Rotate(riders.Row(row), riders.Row(other), cosine, -sine);
                double restNext = (cosine * otherNext) - (sine * next), restEnd = (cosine * otherEnd) - (sine * end);
                (own, next, end) = (length, (cosine * next) + (sine * otherNext), (cosine * end) + (sine * otherEnd));
                if (restNext != 0)
                {
                    waiting[i + 1].Add((other, restNext, 0, restEnd));
                }
                else if (restEnd != 0)
                {
                    waiting[n].Add((other, restEnd, 0, 0));
                }
            }

            rows[i] = row;
            if (i == n)
            {
                last[n] = own;
                continue;
            }

            double elastance = _loops.Elastance[_order[i]], root = Math.Sqrt(elastance);
            diagonal[i] = own / root;
            last[i] = end - (own * _loops.Shared[_order[i]] / elastance);
            if (i < n - 1)
            {
                double nextElastance = _loops.Elastance[_order[i + 1]];
                above[i] = next / Math.Sqrt(nextElastance);
                last[i] -= next * _loops.Shared[_order[i + 1]] / nextElastance;
            }
        }

        double scale = 1 / Math.Sqrt(_loops.LongElastance);
        for (int i = 0; i <= n; i++)
        {
            riders[rows[i], riders.ColumnCount - 1] = last[i] * scale;
        }

        return double.IsFinite(scale);
    }

    // The resistors by the first loop of the chains that they are in, with their entries there, in the next and in the long loop.
    private List<(int Row, double Own, double Next, double Last)>[] Rows()
    {
        int n = _order.Length;
        var waiting = new List<(int Row, double Own, double Next, double Last)>[n + 1];
        for (int i = 0; i <= n; i++)
        {
            waiting[i] = [];
        }

        for (int r = 0; r < _root.Length; r++)
        {
            double end = _loops.LongSigns[r] * _root[r];
            switch (_loops.Of(r))
            {
                case []:
                    if (end != 0)
                    {
                        waiting[n].Add((r, end, 0, 0));
                    }

                    break;
                case [(int loop, int sign)]:
                    waiting[_place[loop]].Add((r, sign * _root[r], 0, end));
                    break;
                case [(int first, int firstSign), (int second, int secondSign)]:
                    (double own, double next) = (firstSign * _root[r], secondSign * _root[r]);
                    bool isInOrder = _place[first] < _place[second];
                    waiting[Math.Min(_place[first], _place[second])].Add(isInOrder ? (r, own, next, end) : (r, next, own, end));
                    break;
            }
        }

        return waiting;
    }
}
