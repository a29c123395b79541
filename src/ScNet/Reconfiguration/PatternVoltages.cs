using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>
/// The voltage of every branch in a pair of classes, as whole numbers over one denominator: a row of
/// coefficients of the input voltage and of the voltages that the loops leave free.
/// </summary>
internal sealed class PatternVoltages(SwitchedNetwork network)
{
    // Below these, two different quotients are different doubles.
    private const long LargestDenominator = 1 << 20;
    private const long LargestNumerator = 1 << 30;

    private readonly int _columns = network.BranchCount;
    private readonly long[] _coefficients = new long[network.BranchCount * network.BranchCount];
    private readonly long[] _potentials = new long[network.NodeCount * network.BranchCount];
    private readonly long[] _peaks = new long[network.SwitchCount];
    private long _denominator;
    private int _undetermined;

    /// <summary>Reads the voltages off reduced loop equations.</summary>
    /// <param name="rows">The equations, a column per branch.</param>
    /// <param name="rank">How many of them are independent; these come first.</param>
    /// <returns>Whether the numbers are small enough.</returns>
    public bool TryPrepare(ReadOnlySpan<int> rows, int rank)
    {
        _denominator = 1;
        for (int row = 0; row < rank; row++)
        {
            ReadOnlySpan<int> own = rows.Slice(row * _columns, _columns);
            long pivot = Math.Abs((long)own[EchelonForm.Leading(own)]);
            _denominator *= pivot / Integers.Gcd(_denominator, pivot);
            if (_denominator > LargestDenominator)
            {
                return false;
            }
        }

        Span<long> coefficients = _coefficients;
        coefficients.Clear();
        for (int branch = 0; branch < _columns; branch++)
        {
            coefficients[(branch * _columns) + branch] = _denominator;
        }

        for (int row = 0; row < rank; row++)
        {
            ReadOnlySpan<int> own = rows.Slice(row * _columns, _columns);
            int pivot = EchelonForm.Leading(own);
            Span<long> target = coefficients.Slice(pivot * _columns, _columns);
            target[pivot] = 0;
            for (int column = pivot + 1; column < _columns; column++)
            {
                target[column] = -own[column] * (_denominator / own[pivot]);
                if (Math.Abs(target[column]) > LargestNumerator)
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Forgets the switches of the pattern before.</summary>
    public void Clear()
    {
        _undetermined = 0;
        _peaks.AsSpan().Clear();
    }

    /// <summary>Takes one phase into account.</summary>
    /// <param name="forest">A spanning forest of the branches and the closed switches, whose edges come in this order.</param>
    public void Add(SpanningForest forest)
    {
        Span<long> potentials = _potentials;
        foreach (int node in forest.Order.AsSpan(0, network.NodeCount))
        {
            int edge = forest.ParentEdge[node];
            for (int column = 0; column < _columns; column++)
            {
                potentials[(node * _columns) + column] = edge < 0 ? 0
                    : potentials[(forest.Parent[node] * _columns) + column]
                        + (edge < _columns ? forest.Sign[node] * _coefficients[(edge * _columns) + column] : 0);
            }
        }

        for (int s = 0; s < _peaks.Length; s++)
        {
            int first = network.SwitchFirst[s], second = network.SwitchSecond[s];
            bool isDetermined = forest.Tree[first] == forest.Tree[second];
            for (int column = 0; column < _columns && isDetermined; column++)
            {
                long difference = potentials[(first * _columns) + column] - potentials[(second * _columns) + column];
                if (column == network.InputBranch)
                {
                    _peaks[s] = Math.Max(_peaks[s], Math.Abs(difference));
                }
                else
                {
                    isDetermined = difference == 0;
                }
            }

            _undetermined |= isDetermined ? 0 : 1 << s;
        }
    }

    /// <summary>How many switches see a floating node in some phase, and the highest magnitude that the others block, per volt of input.</summary>
    public (int UndeterminedSwitchCount, double PeakBlocking) Stress()
    {
        long peak = 0;
        for (int s = 0; s < _peaks.Length; s++)
        {
            peak = Math.Max(peak, ((_undetermined >> s) & 1) == 0 ? _peaks[s] : 0);
        }

        return (int.PopCount(_undetermined), (double)peak / _denominator);
    }
}
