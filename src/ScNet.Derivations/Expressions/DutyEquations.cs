using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Derivations.Expressions;

/// <summary>The averages of a mode as equations with the durations of the phases in them.</summary>
/// <remarks>Equations: docs/theory/functions-of-duties.md.</remarks>
internal sealed class DutyEquations
{
    private readonly SwitchedNetwork _network;
    private readonly LoopSet _loops;
    private readonly IReadOnlyList<Expression> _durations;
    private readonly Polynomials _polynomials;
    private readonly Fraction[] _origin;
    private readonly List<Fraction[]> _movements;
    private readonly Expression[][] _tied;

    /// <summary>Eliminates the loops of held voltages, in which no duration occurs.</summary>
    /// <param name="analysis">The mode.</param>
    /// <param name="durations">The duration of each phase as a polynomial; their sum is 1.</param>
    /// <param name="controlled">Capacitors that are held, with their voltages.</param>
    /// <param name="polynomials">The arithmetic.</param>
    public DutyEquations(
        ModeAnalysis analysis, IReadOnlyList<Expression> durations, IEnumerable<(int Capacitor, Fraction Voltage)> controlled, Polynomials polynomials)
    {
        (_network, _loops, _durations, _polynomials) = (analysis.Converter.Network, analysis.Topology.Loops!, durations, polynomials);
        Elimination<BigInteger> held = Elimination<BigInteger>.Run(
            Rows(controlled), _network.CapacitorCount, _network.FirstGivenBranch - _network.CapacitorCount);
        _origin = Solution(held, _network.InputBranch);
        _movements = [.. Enumerable.Range(0, _network.FirstGivenBranch).Where(b => !held.IsPivotColumn(b)).Select(b => Solution(held, b))];
        _tied = [.. Enumerable.Range(0, _loops.MeshCount).Select(Tied)];
    }

    /// <summary>The number of currents that are free of one another.</summary>
    public int MeshCount => _loops.MeshCount;

    /// <summary>The equations of the amounts by which voltages move.</summary>
    public PolynomialEquations Voltages() => new(
        _polynomials,
        [.. _tied.Select(row => (Expression[])[.. _movements.Select(m => Along(row, m)), Along(row, _origin)])],
        _movements.Count);

    /// <summary>A branch's voltage as a sum of these amounts.</summary>
    public (Fraction Constant, Expression[] Weights) Voltage(int branch) => (_origin[branch], [.. _movements.Select(m => Expression.Of(m[branch]))]);

    /// <summary>The equations of the currents round the meshes, per unit of load current.</summary>
    public PolynomialEquations Currents() => new(
        _polynomials,
        [.. _movements.Select(m => (Expression[])[.. _tied.Select(row => Along(row, m)), Expression.Of(-m[_network.OutputBranch])])],
        _tied.Length);

    /// <summary>How often the mesh of each current runs through a branch, and the share of the period in which it does.</summary>
    public IEnumerable<(int Mesh, int Amount, Expression Share)> Passes(int branch)
    {
        for (int mesh = 0; mesh < _loops.MeshCount; mesh++)
        {
            int amount = 0;
            Expression share = Expression.Zero;
            for (int loop = _loops.VoltageLoopCount; loop < _loops.Count; loop++)
            {
                int times = _loops.Mesh(loop) == mesh ? Times(loop, branch) : 0;
                if (times != 0)
                {
                    (amount, share) = (times, share + _durations[_loops.Phase(loop)]);
                }
            }

            if (amount != 0)
            {
                yield return (mesh, amount, share);
            }
        }
    }

    private int Times(int loop, int branch)
    {
        int times = 0;
        ReadOnlySpan<int> branches = _loops.Branches(loop), signs = _loops.Signs(loop);
        for (int e = 0; e < branches.Length; e++)
        {
            times += branches[e] == branch ? signs[e] : 0;
        }

        return times;
    }

    private SparseRows<BigInteger> Rows(IEnumerable<(int Capacitor, Fraction Voltage)> controlled)
    {
        SparseRows<BigInteger> rows = new(_loops.VoltageLoopCount, Math.Max(1, _loops.EntryCount));
        for (int loop = 0; loop < _loops.VoltageLoopCount; loop++)
        {
            int row = rows.AddRow();
            ReadOnlySpan<int> branches = _loops.Branches(loop), signs = _loops.Signs(loop);
            for (int e = 0; e < branches.Length; e++)
            {
                rows.Append(row, branches[e], signs[e]);
            }
        }

        foreach ((int capacitor, Fraction voltage) in controlled)
        {
            int row = rows.AddRow();
            rows.Append(row, capacitor, voltage.Denominator);
            if (!voltage.Numerator.IsZero)
            {
                rows.Append(row, _network.InputBranch, -voltage.Numerator);
            }
        }

        return rows;
    }

    private Expression[] Tied(int mesh)
    {
        List<Expression>[] sums = [.. Enumerable.Range(0, _network.BranchCount).Select(_ => new List<Expression>())];
        for (int loop = _loops.VoltageLoopCount; loop < _loops.Count; loop++)
        {
            ReadOnlySpan<int> branches = _loops.Branches(loop), signs = _loops.Signs(loop);
            for (int e = 0; e < branches.Length && _loops.Mesh(loop) == mesh; e++)
            {
                sums[branches[e]].Add(signs[e] > 0 ? _durations[_loops.Phase(loop)] : -_durations[_loops.Phase(loop)]);
            }
        }

        return Array.ConvertAll(sums, Expression.Sum);
    }

    private Expression Along(Expression[] row, Fraction[] voltages) => Expression.Sum(
        row.Zip(voltages).Where(e => !e.Second.IsZero && !e.First.IsZero).Select(e => _polynomials.Product(e.First, Expression.Of(e.Second))));

    private Fraction[] Solution(Elimination<BigInteger> held, int branch)
    {
        var x = new Rational<BigInteger>[_network.BranchCount];
        x[branch] = Rational<BigInteger>.One;
        held.SubstituteBack(x);
        return Array.ConvertAll(x, v => new Fraction(v.Numerator, v.Denominator, true));
    }
}
