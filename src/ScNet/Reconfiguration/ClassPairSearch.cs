using System.Numerics;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>Tries pairs of classes: whether they make a converter, and which of their patterns are best.</summary>
internal sealed class ClassPairSearch(Converter converter, RatioCollection found, CancellationToken cancellation)
{
    private readonly SwitchedNetwork _network = converter.Network;
    private readonly bool _hasEqualPhases = converter.Phases[0].Duty.Equals(converter.Phases[1].Duty);

    /// <summary>One class in phase 1, the other in phase 2, and the opposite: the same converter where the phases are equally long.</summary>
    public void Try(PhaseClass first, PhaseClass second)
    {
        cancellation.ThrowIfCancellationRequested();
        if (!TryRatio(first, second, out Fraction ratio))
        {
            return;
        }

        List<GatePattern> patterns = [];
        foreach (int a in first.Largest)
        {
            foreach (int b in second.Largest)
            {
                patterns.Add(GatePattern.Of(converter, a, b));
                if (!_hasEqualPhases)
                {
                    patterns.Add(GatePattern.Of(converter, b, a));
                }
            }
        }

        long count = first.Count * second.Count * (ReferenceEquals(first, second) ? 1 : 2);
        found.Add(ratio, count, patterns);
    }

    private bool TryRatio(PhaseClass first, PhaseClass second, out Fraction ratio)
    {
        try
        {
            return TryRatio<long>(first, second, out ratio);
        }
        catch (OverflowException)
        {
            return TryRatio<BigInteger>(first, second, out ratio);
        }
    }

    private bool TryRatio<T>(PhaseClass first, PhaseClass second, out Fraction ratio)
        where T : struct, IBinaryInteger<T>
    {
        ratio = Fraction.Zero;
        SparseRows<T> rows = new(first.RowCount + second.RowCount, first.Equations.Length + second.Equations.Length);
        Add(rows, first.Equations);
        Add(rows, second.Equations);
        Elimination<T> elimination = Elimination<T>.Run(rows, _network.CapacitorCount, 1);
        if (!elimination.IsPivotColumn(_network.OutputBranch))
        {
            return false;
        }

        for (int row = 0; row < rows.Count; row++)
        {
            if (!elimination.IsPivotRow(row) && rows.Length(row) > 0)
            {
                return false;
            }
        }

        // the output is pivoted last: its row holds nothing but output and input
        int last = elimination.Pivots[^1].Row;
        int output = rows.Find(last, _network.OutputBranch), input = rows.Find(last, _network.InputBranch);
        if (input < 0)
        {
            return false;
        }

        ratio = new Fraction(-BigInteger.CreateChecked(rows.Values(last)[input]), BigInteger.CreateChecked(rows.Values(last)[output]), true);
        return true;
    }

    private void Add<T>(SparseRows<T> rows, long[] equations)
        where T : struct, IBinaryInteger<T>
    {
        for (int start = 0; start < equations.Length; start += _network.BranchCount)
        {
            int row = rows.AddRow();
            for (int branch = 0; branch < _network.BranchCount; branch++)
            {
                if (equations[start + branch] != 0)
                {
                    rows.Append(row, branch, T.CreateChecked(equations[start + branch]));
                }
            }
        }
    }
}
