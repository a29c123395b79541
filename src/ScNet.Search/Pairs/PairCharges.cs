using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>The charges of a pair: what the moving phase's loops carry, at which the fixed phase can undo it.</summary>
/// <remarks>
/// With amounts y of the moving loops, the fixed phase carries the negative on every capacitor and anything, α and β,
/// on input and output. That is a sum of its loops when every allowed vector is at right angles to it: one equation per
/// row of N, for the unknown α, β and y, one fewer than unknowns.
/// </remarks>
internal sealed class PairCharges
{
    private readonly long[] _matrix;
    private readonly long[] _amounts;
    private readonly int[] _positions;

    public PairCharges(int capacitors)
    {
        int branches = capacitors + LoopSpace.FirstCapacitorColumn;
        _matrix = new long[branches * (branches + 1)];
        _amounts = new long[branches + 1];
        _positions = new int[capacitors];
        Fixed = new int[branches];
        Moving = new int[branches];
    }

    /// <summary>The charge of each branch in the phase of the fixed space; the output's charge over both phases is positive.</summary>
    public int[] Fixed { get; }

    /// <summary>The charge of each branch in the other phase; the negative on capacitors.</summary>
    public int[] Moving { get; }

    /// <summary>The charge into the output over both phases.</summary>
    public int OutputCharge => Fixed[LoopSpace.OutputColumn] + Moving[LoopSpace.OutputColumn];

    /// <summary>Finds the charges.</summary>
    /// <returns>False where some capacitor carries none.</returns>
    public bool TryFind(PairWalk walk, int place)
    {
        int rows = walk.Allowed.Length, loops = walk.Moving.Orbit.Space.Dimension, width = loops + 2;
        ReadOnlySpan<sbyte> sums = walk.CapacitorSums;
        for (int row = 0; row < rows; row++)
        {
            _matrix[row * width] = walk.Allowed[row][LoopSpace.InputColumn];
            _matrix[(row * width) + 1] = walk.Allowed[row][LoopSpace.OutputColumn];
            for (int loop = 0; loop < loops; loop++)
            {
                _matrix[(row * width) + 2 + loop] = -sums[(row * loops) + loop];
            }
        }

        Span<long> amounts = _amounts.AsSpan(0, width);
        if (!NullVector.TryFind(_matrix.AsSpan(0, rows * width), width, amounts))
        {
            return false;
        }

        int turns = MovingOrbit.Unpack(walk.Moving.Ways[place], _positions);
        Moving.AsSpan().Clear();
        for (int loop = 0; loop < loops; loop++)
        {
            int amount = (int)amounts[2 + loop];
            ReadOnlySpan<sbyte> branches = walk.Moving.Orbit.Space.Row(loop);
            Moving[LoopSpace.InputColumn] += amount * branches[LoopSpace.InputColumn];
            Moving[LoopSpace.OutputColumn] += amount * branches[LoopSpace.OutputColumn];
            for (int c = 0; c < _positions.Length; c++)
            {
                int turned = (turns >> c & 1) == 0 ? amount : -amount;
                Moving[LoopSpace.FirstCapacitorColumn + _positions[c]] += turned * branches[LoopSpace.FirstCapacitorColumn + c];
            }
        }

        Fixed[LoopSpace.InputColumn] = (int)amounts[0];
        Fixed[LoopSpace.OutputColumn] = (int)amounts[1];
        bool isNetwork = true;
        for (int branch = LoopSpace.FirstCapacitorColumn; branch < Fixed.Length; branch++)
        {
            Fixed[branch] = -Moving[branch];
            isNetwork &= Fixed[branch] != 0;
        }

        if (OutputCharge < 0)
        {
            for (int branch = 0; branch < Fixed.Length; branch++)
            {
                Fixed[branch] = -Fixed[branch];
                Moving[branch] = -Moving[branch];
            }
        }

        return isNetwork;
    }
}
