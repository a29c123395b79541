using System.Numerics;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>Tries pairs of classes: whether they make a converter, and which of their patterns are best.</summary>
internal sealed class ClassPairSearch(Converter converter, RatioCollection found, CancellationToken cancellation)
{
    private readonly SwitchedNetwork _network = converter.Network;
    private readonly bool _hasEqualPhases = converter.Phases[0].Duty.Equals(converter.Phases[1].Duty);
    private readonly PatternLimits _limits = new(converter);
    private readonly PatternVoltages _voltages = new(converter.Network);
    private readonly List<PatternMeasure> _patterns = [];
    private int[] _rows = [];
    private int _rank;

    /// <summary>One class in phase 1, the other in phase 2, and the opposite: the same converter where the phases are equally long.</summary>
    public void Try(PhaseClass first, PhaseClass second)
    {
        cancellation.ThrowIfCancellationRequested();
        if (!TryRatio(first, second, out Fraction ratio))
        {
            return;
        }

        _patterns.Clear();
        bool hasVoltages = _rank > 0 && _voltages.TryPrepare(_rows, _rank);
        double slowOhmsAtOneHertz = double.NaN;
        foreach (int a in first.Largest)
        {
            foreach (int b in second.Largest)
            {
                _patterns.Add(Measure(a, b, hasVoltages, ref slowOhmsAtOneHertz));
                if (!_hasEqualPhases)
                {
                    _patterns.Add(Measure(b, a, hasVoltages, ref slowOhmsAtOneHertz));
                }
            }
        }

        long count = first.Count * second.Count * (ReferenceEquals(first, second) ? 1 : 2);
        found.Add(ratio, count, _patterns);
    }

    // The slow limit is the same for all patterns of the pair; it is worked out with the first.
    private PatternMeasure Measure(int first, int second, bool hasVoltages, ref double slowOhmsAtOneHertz)
    {
        _limits.Clear();
        _voltages.Clear();
        if (!hasVoltages || !TryAddPhases(first, second))
        {
            return GatePattern.Of(converter, first, second).Measure;
        }

        slowOhmsAtOneHertz = double.IsNaN(slowOhmsAtOneHertz) ? _limits.SlowOhmsAtOneHertz() : slowOhmsAtOneHertz;
        (int undetermined, double peak) = _voltages.Stress();
        return new PatternMeasure(first, second, slowOhmsAtOneHertz, _limits.FastOhms(), undetermined, peak);
    }

    private bool TryAddPhases(int first, int second)
    {
        _limits.AddLoops(0, first);
        _voltages.Add(_limits.Forest);
        _limits.AddLoops(1, second);
        _voltages.Add(_limits.Forest);
        return _limits.TryReduce();
    }

    private bool TryRatio(PhaseClass first, PhaseClass second, out Fraction ratio)
    {
        int columns = _network.BranchCount, length = first.Equations.Length + second.Equations.Length;
        if (_rows.Length < length)
        {
            _rows = new int[length];
        }

        Span<int> rows = _rows.AsSpan(0, length);
        first.Equations.CopyTo(rows);
        second.Equations.CopyTo(rows[first.Equations.Length..]);
        if (!EchelonForm.TryReduce(rows, columns, _network.FirstGivenBranch, out int rank))
        {
            _rank = 0;
            return TryRatioOnBigIntegers(first, second, out ratio);
        }

        _rank = rank;

        // the output is pivoted last: its row holds nothing but output and input
        ReadOnlySpan<int> last = rank > 0 ? rows.Slice((rank - 1) * columns, columns) : [];
        bool isFixed = rank > 0 && EchelonForm.Leading(last) == _network.OutputBranch && last[_network.InputBranch] != 0;
        ratio = isFixed ? new Fraction(-last[_network.InputBranch], last[_network.OutputBranch], true) : Fraction.Zero;
        return isFixed && !rows[(rank * columns)..].ContainsAnyExcept(0);
    }

    private bool TryRatioOnBigIntegers(PhaseClass first, PhaseClass second, out Fraction ratio)
    {
        ratio = Fraction.Zero;
        SparseRows<BigInteger> rows = new(0, 0);
        Add(rows, first.Equations);
        Add(rows, second.Equations);
        Elimination<BigInteger> elimination = Elimination<BigInteger>.Run(rows, _network.CapacitorCount, 1);
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

        int last = elimination.Pivots[^1].Row;
        int output = rows.Find(last, _network.OutputBranch), input = rows.Find(last, _network.InputBranch);
        ratio = input < 0 ? Fraction.Zero : new Fraction(-rows.Values(last)[input], rows.Values(last)[output], true);
        return input >= 0;
    }

    private void Add(SparseRows<BigInteger> rows, int[] equations)
    {
        for (int start = 0; start < equations.Length; start += _network.BranchCount)
        {
            int row = rows.AddRow();
            for (int branch = 0; branch < _network.BranchCount; branch++)
            {
                if (equations[start + branch] != 0)
                {
                    rows.Append(row, branch, equations[start + branch]);
                }
            }
        }
    }
}
