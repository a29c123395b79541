using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The potentials of one phase, found by walking the spanning forest from the root of each component.
/// Potentials compare only within a piece: a component, cut at capacitors that are in no loop.
/// </summary>
internal sealed class Potentials<T>
    where T : struct, IBinaryInteger<T>
{
    private const int GroundPiece = 0;

    private readonly PhaseForest _forest;
    private readonly int[] _piece;
    private readonly Rational<T>[] _value;
    private readonly Rational<T>[][] _movements;

    private Potentials(PhaseForest forest, int[] piece, Rational<T>[] value, Rational<T>[][] movements)
    {
        _forest = forest;
        _piece = piece;
        _value = value;
        _movements = movements;
    }

    /// <summary>Walks the forest of one phase.</summary>
    /// <param name="forest">The phase.</param>
    /// <param name="voltages">The voltage of each branch.</param>
    /// <param name="free">How undetermined voltages can move together.</param>
    /// <param name="unconnected">The capacitors that are in no loop in any phase.</param>
    public static Potentials<T> Of(PhaseForest forest, Rational<T>[] voltages, List<Rational<T>[]> free, bool[] unconnected)
    {
        var piece = new int[forest.GroupCount];
        int pieces = 0;
        foreach (int group in forest.GroupOrder)
        {
            int branch = forest.ParentBranch[group];
            bool isCut = branch < 0 || (branch < unconnected.Length && unconnected[branch]);
            piece[group] = isCut ? pieces++ : piece[forest.ParentGroup[group]];
        }

        Rational<T>[][] movements = [.. free.Select(f => Walk(forest, f))];
        return new Potentials<T>(forest, piece, Walk(forest, voltages), movements);
    }

    /// <summary>The potential of each group against the root of its component.</summary>
    public static Rational<T>[] Walk(PhaseForest forest, Rational<T>[] voltages)
    {
        var value = new Rational<T>[forest.GroupCount];
        foreach (int group in forest.GroupOrder)
        {
            int branch = forest.ParentBranch[group];
            if (branch >= 0)
            {
                Rational<T> step = voltages[branch];
                value[group] = value[forest.ParentGroup[group]] + (forest.SignTowardsParent(group) > 0 ? step : -step);
            }
        }

        return value;
    }

    /// <summary>The potential of a node against the reference.</summary>
    public Quantity Node(int node)
    {
        int group = _forest.Group[node];
        return _piece[group] == GroundPiece && !Moves(group, _forest.Group[SwitchedNetwork.Reference])
            ? _value[group].ToQuantity()
            : Quantity.Undetermined;
    }

    /// <summary>The potential of one node minus that of another.</summary>
    public Quantity Difference(int first, int second)
    {
        int a = _forest.Group[first], b = _forest.Group[second];
        return _piece[a] == _piece[b] && !Moves(a, b) ? (_value[a] - _value[b]).ToQuantity() : Quantity.Undetermined;
    }

    private bool Moves(int a, int b)
    {
        foreach (Rational<T>[] movement in _movements)
        {
            if (!movement[a].Equals(movement[b]))
            {
                return true;
            }
        }

        return false;
    }
}
