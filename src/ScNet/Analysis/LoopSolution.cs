using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The loop equations of a mode, eliminated once and read in both directions: columns give voltages
/// (Kirchhoff's voltage law), rows give loop charges (Kirchhoff's current law and charge balance).
/// </summary>
/// <remarks>Equations: docs/theory/exact-steady-state.md. Vectors over branches are indexed as in <see cref="SwitchedNetwork"/>.</remarks>
internal sealed class LoopSolution<T> : ILoopSolution
    where T : struct, IBinaryInteger<T>
{
    private readonly SwitchedNetwork _network;
    private readonly LoopSet _loops;
    private readonly Elimination<T> _elimination;

    private LoopSolution(SwitchedNetwork network, LoopSet loops)
    {
        _network = network;
        _loops = loops;
        _elimination = Elimination<T>.Run(
            LoopEquations.Of<T>(network, loops), network.CapacitorCount, network.FirstGivenBranch - network.CapacitorCount);
    }

    public static LoopSolution<T> Of(SwitchedNetwork network, LoopSet loops) => new(network, loops);

    public IReadOnlyList<(int Row, int Column)> Pivots => _elimination.Pivots;

    /// <summary>Whether the equations fix the output's voltage.</summary>
    public bool IsOutputFixed => _elimination.IsPivotColumn(_network.OutputBranch);

    /// <summary>The voltage of every branch, undetermined ones taken as zero.</summary>
    public Rational<T>[] Voltages()
    {
        var x = new Rational<T>[_network.BranchCount];
        x[_network.InputBranch] = Rational<T>.One;
        _elimination.SubstituteBack(x);
        return x;
    }

    /// <summary>The capacitors that no equation mentions.</summary>
    public bool[] Unconnected()
    {
        var unconnected = new bool[_network.CapacitorCount];
        unconnected.AsSpan().Fill(true);
        for (int loop = 0; loop < _loops.Count; loop++)
        {
            foreach (int branch in _loops.Branches(loop))
            {
                if (branch < unconnected.Length)
                {
                    unconnected[branch] = false;
                }
            }
        }

        return unconnected;
    }

    /// <summary>
    /// The ways in which voltages can move together without breaking an equation: one vector over the
    /// branches per free capacitor that some equation mentions.
    /// </summary>
    public List<Rational<T>[]> FreeVoltages(bool[] unconnected)
    {
        List<Rational<T>[]> free = [];
        for (int capacitor = 0; capacitor < unconnected.Length; capacitor++)
        {
            if (!unconnected[capacitor] && !_elimination.IsPivotColumn(capacitor))
            {
                free.Add(Movement(capacitor));
            }
        }

        return free;
    }

    /// <summary>How all voltages move when a branch that is not fixed moves by one.</summary>
    public Rational<T>[] Movement(int branch)
    {
        var x = new Rational<T>[_network.BranchCount];
        x[branch] = Rational<T>.One;
        _elimination.SubstituteBack(x);
        return x;
    }

    /// <summary>The charge round each loop that delivers one unit to the load and balances every capacitor.</summary>
    public Rational<T>[] LoopCharges()
    {
        // The output is pivoted last, so its pivot row holds no other unknown.
        (int row, int column) = _elimination.Pivots[^1];
        T pivot = _elimination.Rows.Values(row)[_elimination.Rows.Find(row, column)];
        return Combination(row, Rational<T>.Of(T.One, pivot));
    }

    /// <summary>The rows that the others imply, as combinations of loops: charge that can circulate besides.</summary>
    public List<Rational<T>[]> Circulations() => Combinations(length => length == 0);

    /// <summary>The combinations of loops whose voltages contradict each other.</summary>
    public List<Rational<T>[]> Conflicts() => Combinations(length => length > 0);

    (int Column, BigInteger Factor)[] ILoopSolution.ReducedRow(int row)
    {
        ReadOnlySpan<int> columns = _elimination.Rows.Columns(row);
        ReadOnlySpan<T> values = _elimination.Rows.Values(row);
        var reduced = new (int Column, BigInteger Factor)[columns.Length];
        for (int e = 0; e < reduced.Length; e++)
        {
            reduced[e] = (columns[e], BigInteger.CreateChecked(values[e]));
        }

        return reduced;
    }

    Rational<BigInteger>[] ILoopSolution.EquationWeights(int row) => Widened(EquationWeights(row, Rational<T>.One));

    Rational<BigInteger>[] ILoopSolution.Voltages() => Widened(Voltages());

    Rational<BigInteger>[] ILoopSolution.LoopCharges() => Widened(LoopCharges());

    Rational<BigInteger>[] ILoopSolution.Movement(int branch) => Widened(Movement(branch));

    List<Rational<BigInteger>[]> ILoopSolution.Circulations() => Circulations().ConvertAll(Widened);

    private static Rational<BigInteger>[] Widened(Rational<T>[] values) => Array.ConvertAll(values, v => v.Widened());

    private List<Rational<T>[]> Combinations(Predicate<int> hasLength)
    {
        List<Rational<T>[]> found = [];
        for (int row = 0; row < _elimination.Rows.Count; row++)
        {
            if (!_elimination.IsPivotRow(row) && hasLength(_elimination.Rows.Length(row)))
            {
                found.Add(Combination(row, Rational<T>.One));
            }
        }

        return found;
    }

    private Rational<T>[] EquationWeights(int row, Rational<T> weight)
    {
        var equations = new Rational<T>[_loops.EquationCount];
        equations[row] = weight;
        _elimination.CarryBack(equations);
        return equations;
    }

    private Rational<T>[] Combination(int row, Rational<T> weight) =>
        LoopEquations.Spread(_network, _loops, EquationWeights(row, weight));
}
