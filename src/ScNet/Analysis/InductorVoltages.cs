using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The voltage of every inductor in every phase that belongs to given voltages of capacitors and ports. Where inductors
/// meet at a piece of the network that nothing else touches, their inductances divide the voltage across them.
/// </summary>
/// <remarks>Equations: docs/theory/averages-with-inductors.md. A voltage has the index inductor · phases + phase.</remarks>
internal sealed class InductorVoltages<T>
    where T : struct, IBinaryInteger<T>
{
    private readonly SwitchedNetwork _network;
    private readonly PhaseForest[] _forests;
    private readonly LoopSet _loops;
    private readonly T[] _inverseHenries;
    private readonly int _phases;

    /// <summary>Prepares a mode.</summary>
    /// <param name="network">The network.</param>
    /// <param name="forests">Its phases.</param>
    /// <param name="loops">Their loops.</param>
    /// <param name="inverseHenries">Whole numbers in the proportion of the inverse inductances, one per inductor.</param>
    public InductorVoltages(SwitchedNetwork network, PhaseForest[] forests, LoopSet loops, T[] inverseHenries)
    {
        (_network, _forests, _loops, _inverseHenries, _phases) = (network, forests, loops, inverseHenries, forests.Length);
    }

    /// <summary>The voltages, first terminal minus second; zero where an inductor rests.</summary>
    /// <param name="branches">The voltages of the branches, index as in <see cref="SwitchedNetwork"/>.</param>
    public Rational<T>[] Of(Rational<T>[] branches)
    {
        var voltages = new Rational<T>[_network.InductorCount * _phases];
        if (_loops.HasMeshes)
        {
            OfPieces(branches, voltages);
            return voltages;
        }

        for (int loop = _loops.VoltageLoopCount; loop < _loops.Count; loop++)
        {
            ReadOnlySpan<int> members = _loops.Branches(loop), signs = _loops.Signs(loop);
            if (members[0] < _network.FirstInductorBranch)
            {
                continue;
            }

            Rational<T> sum = Rational<T>.Zero;
            for (int e = 1; e < members.Length; e++)
            {
                sum += signs[e] > 0 ? -branches[members[e]] : branches[members[e]];
            }

            voltages[((members[0] - _network.FirstInductorBranch) * _phases) + _loops.Phase(loop)] = sum;
        }

        return voltages;
    }

    private void OfPieces(Rational<T>[] branches, Rational<T>[] voltages)
    {
        for (int phase = 0; phase < _phases; phase++)
        {
            PhaseForest forest = _forests[phase];
            Rational<T>[] potential = Potentials<T>.Walk(forest, branches);
            int[] flowing = [.. Enumerable.Range(0, _network.InductorCount).Where(l => Flows(l, phase))];
            Rational<T>[] offset = Offsets(forest, potential, flowing);
            foreach (int l in flowing)
            {
                (int first, int second) = Groups(forest, l);
                voltages[(l * _phases) + phase] =
                    potential[first] + offset[forest.Component[first]] - potential[second] - offset[forest.Component[second]];
            }
        }
    }

    // The potential of each piece at which the currents that inductors bring to it change by nothing on the whole; the
    // first piece of those that inductors join stays at zero.
    private Rational<T>[] Offsets(PhaseForest forest, Rational<T>[] potential, int[] flowing)
    {
        int pieces = forest.ComponentCount;
        DisjointSets joined = new(pieces);
        foreach (int l in flowing)
        {
            (int first, int second) = Groups(forest, l);
            joined.Join(forest.Component[first], forest.Component[second]);
        }

        int[] unknown = [.. Enumerable.Range(0, pieces).Where(c => Enumerable.Range(0, c).Any(d => joined.Find(d) == joined.Find(c)))];
        SparseRows<T> rows = new(unknown.Length, Math.Max(1, 4 * unknown.Length));
        foreach (int piece in unknown)
        {
            var row = new Rational<T>[unknown.Length + 1];
            foreach (int l in flowing)
            {
                (int first, int second) = Groups(forest, l);
                (int from, int to) = (forest.Component[first], forest.Component[second]);
                if (from == to || (from != piece && to != piece))
                {
                    continue;
                }

                Rational<T> weight = Rational<T>.Of(from == piece ? _inverseHenries[l] : -_inverseHenries[l]);
                row[^1] += weight * (potential[first] - potential[second]);
                Add(row, from, weight);
                Add(row, to, -weight);
            }

            WholeNumbers.AddTo(rows, row);
        }

        Elimination<T> elimination = Elimination<T>.Run(rows, unknown.Length, 0);
        var x = new Rational<T>[unknown.Length + 1];
        x[^1] = Rational<T>.One;
        elimination.SubstituteBack(x);
        var offset = new Rational<T>[pieces];
        for (int k = 0; k < unknown.Length; k++)
        {
            offset[unknown[k]] = x[k];
        }

        return offset;

        void Add(Rational<T>[] row, int piece, Rational<T> weight)
        {
            int k = Array.IndexOf(unknown, piece);
            if (k >= 0)
            {
                row[k] += weight;
            }
        }
    }

    // one without a loop rests
    private bool Flows(int inductor, int phase)
    {
        for (int loop = _loops.VoltageLoopCount; loop < _loops.Count; loop++)
        {
            if (_loops.Phase(loop) == phase && _loops.Branches(loop).Contains(_network.FirstInductorBranch + inductor))
            {
                return true;
            }
        }

        return false;
    }

    private (int First, int Second) Groups(PhaseForest forest, int inductor)
    {
        int branch = _network.FirstInductorBranch + inductor;
        return (forest.Group[_network.BranchFirst[branch]], forest.Group[_network.BranchSecond[branch]]);
    }
}
