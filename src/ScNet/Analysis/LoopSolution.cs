using System.Numerics;
using Fractions;
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
    private RowOrigins<T>? _origins;

    private LoopSolution(SwitchedNetwork network, LoopSet loops, IEnumerable<(int Capacitor, Fraction Voltage)> controlled)
    {
        _network = network;
        _loops = loops;
        SparseRows<T> rows = LoopEquations.Of<T>(network, loops);
        foreach ((int capacitor, Fraction voltage) in controlled)
        {
            int row = rows.AddRow();
            rows.Append(row, capacitor, T.CreateChecked(voltage.Denominator));
            if (!voltage.Numerator.IsZero)
            {
                rows.Append(row, network.InputBranch, T.CreateChecked(-voltage.Numerator));
            }
        }

        _elimination = Elimination<T>.Run(rows, network.CapacitorCount, network.FirstGivenBranch - network.CapacitorCount);
    }

    public static LoopSolution<T> Of(SwitchedNetwork network, LoopSet loops) => new(network, loops, []);

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
    /// branches per free capacitor that some equation mentions, and one for an output that is free.
    /// </summary>
    public List<Rational<T>[]> FreeVoltages(bool[] unconnected)
    {
        List<Rational<T>[]> free = [.. FreeCapacitors(unconnected).Select(Movement)];

        if (!IsOutputFixed)
        {
            free.Add(Movement(_network.OutputBranch));
        }

        return free;
    }

    /// <summary>The capacitors that some equation mentions and none fixes.</summary>
    public IEnumerable<int> FreeCapacitors(bool[] unconnected) =>
        Enumerable.Range(0, unconnected.Length).Where(c => !unconnected[c] && !_elimination.IsPivotColumn(c));

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
        return Combination(_elimination.Pivots[^1].Row, Rational<T>.Of(T.One, OutputPivot));
    }

    /// <summary>Whether the equations fix the average voltage of a port that follows.</summary>
    public bool IsFixed(int output) => _elimination.IsPivotColumn(output);

    /// <summary>The charge round each loop that delivers one unit to one of several outputs, nothing on the whole to the others, and balances every capacitor.</summary>
    /// <param name="output">The branch of an output that <see cref="IsFixed"/>.</param>
    public Rational<T>[] LoopCharges(int output)
    {
        var equations = new Rational<T>[_loops.EquationCount];
        Integers.Demand(_elimination.TryCombine(output, equations));
        return LoopEquations.Spread(_network, _loops, equations);
    }

    /// <summary>Whether some row is one that the others imply.</summary>
    public bool HasCirculations => _loops.EquationCount > _elimination.Pivots.Count;

    /// <summary>The flow of <see cref="LoopCharges()"/>, with the loops that take part only.</summary>
    public List<(int Loop, Rational<T> Charge)> OwnFlow()
    {
        int row = _elimination.Pivots[^1].Row;
        return Spread(Origins.Of(row, Rational<T>.Of(T.One, OutputPivot)));
    }

    /// <summary>
    /// The circulations, with the loops that take part only. One that elimination made of a row by taking off a
    /// multiple of the output's is told with what it was before, as a flow that delivers one unit.
    /// </summary>
    /// <param name="withInput">Whether those count too that take charge from a given port and balance every capacitor all the same.</param>
    public IEnumerable<(List<(int Loop, Rational<T> Charge)> Circulation, List<(int Loop, Rational<T> Charge)>? Path, Rational<T> PathShare)> SparseCirculations(
        bool withInput = false)
    {
        int output = _elimination.Pivots[^1].Row;
        RowOrigins<T> origins = Origins;
        for (int row = 0; row < _elimination.Rows.Count; row++)
        {
            if (_elimination.IsPivotRow(row) || (!withInput && IsContradiction(row)))
            {
                continue;
            }

            List<(int Loop, Rational<T> Charge)> circulation = Spread(origins.Of(row, Rational<T>.One));
            if (origins.TryGetLast(row, out RowOperation<T> last) && last.Source == output)
            {
                Rational<T> taken = Rational<T>.Of(OutputPivot) * last.Factor;
                Rational<T> before = taken / last.Scale;
                yield return (
                    circulation,
                    Spread(origins.Of(row, Rational<T>.Of(before.Denominator, before.Numerator), withoutLast: true)),
                    taken / last.Content);
            }
            else
            {
                yield return (circulation, null, Rational<T>.Zero);
            }
        }
    }

    /// <summary>The rows that the others imply, as combinations of loops: charge that can circulate besides.</summary>
    public List<Rational<T>[]> Circulations()
    {
        List<Rational<T>[]> found = [];
        for (int row = 0; row < _elimination.Rows.Count; row++)
        {
            if (!_elimination.IsPivotRow(row) && !IsContradiction(row))
            {
                found.Add(Combination(row, Rational<T>.One));
            }
        }

        return found;
    }

    /// <summary>Loops that together contradict what controllers hold capacitors at; none where nothing does.</summary>
    public static int[] Contradiction(SwitchedNetwork network, LoopSet loops, IEnumerable<(int Capacitor, Fraction Voltage)> controlled)
    {
        LoopSolution<T> solution = new(network, loops, controlled);
        return solution.Conflicts().FirstOrDefault() ?? [];
    }

    /// <summary>The combinations of loops whose voltages contradict each other: the loops of each, ascending.</summary>
    public IEnumerable<int[]> Conflicts()
    {
        for (int row = 0; row < _elimination.Rows.Count; row++)
        {
            if (!_elimination.IsPivotRow(row) && IsContradiction(row))
            {
                yield return [.. Spread(Origins.Of(row, Rational<T>.One)).Where(c => !c.Charge.IsZero).Select(c => c.Loop).Order()];
            }
        }
    }

    // The average voltages of inductors are given as zero, so that a row with nothing else is met.
    private bool IsContradiction(int row) => _elimination.Rows.Find(row, _network.InputBranch) >= 0;

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

    private RowOrigins<T> Origins => _origins ??= new RowOrigins<T>(_elimination);

    private T OutputPivot
    {
        get
        {
            (int row, int column) = _elimination.Pivots[^1];
            return _elimination.Rows.Values(row)[_elimination.Rows.Find(row, column)];
        }
    }

    // Tied loops share the charge of their equation by the weights of the phases.
    private List<(int Loop, Rational<T> Charge)> Spread(List<(int Row, Rational<T> Weight)> equations)
    {
        List<(int Loop, Rational<T> Charge)> charges = [];
        foreach ((int equation, Rational<T> weight) in equations)
        {
            if (equation < _loops.VoltageLoopCount)
            {
                charges.Add((equation, weight));
                continue;
            }

            // beyond the loops' equations are those of controllers
            for (int loop = _loops.VoltageLoopCount; loop < _loops.Count; loop++)
            {
                if (_loops.Equation(loop) == equation)
                {
                    charges.Add((loop, weight * T.CreateChecked(_network.PhaseWeights[_loops.Phase(loop)])));
                }
            }
        }

        return charges;
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
