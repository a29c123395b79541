using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Triples;

/// <summary>What the capacitors of a triple move, once its voltages are known. One per thread.</summary>
/// <remarks>
/// A flow in balance takes v_out at the input and gives v_in at the output, each times a scale. What the third phase's loops
/// carry of it, x, follows from Σ x w = v_out (u · e_in) − v_in (u · e_out) in the directions u that the other two phases
/// leave, w being the products of its loops with them; d of the d + 1 equations suffice. Of the rest the first
/// phase's one loop carries a fixed share, the second phase what remains (docs/theory/atlas.md).
/// </remarks>
internal sealed class TripleCharges
{
    private readonly long[] _system;
    private readonly long[] _amounts;
    private readonly long[] _rest;

    public TripleCharges(int capacitors)
    {
        int branches = capacitors + LoopSpace.FirstCapacitorColumn;
        _system = new long[branches * branches];
        _amounts = new long[branches];
        _rest = new long[branches];
        Moved = new long[capacitors];
    }

    /// <summary>The magnitudes of what each capacitor takes and gives in all phases, added up.</summary>
    public long[] Moved { get; }

    /// <summary>The charge to the output over all phases, positive, in the same scale.</summary>
    public long Delivered { get; private set; }

    /// <summary>Finds the charges.</summary>
    /// <param name="two">The first two phases.</param>
    /// <param name="loops">The loops of the third.</param>
    /// <param name="products">The products of each of them with the directions that the first two leave.</param>
    /// <param name="dropped">A direction without which the loops' products are independent.</param>
    /// <param name="voltages">The voltages of all branches.</param>
    /// <returns>False where some capacitor moves nothing.</returns>
    public bool TryFind(TwoPhases two, ReadOnlySpan<sbyte[]> loops, ReadOnlySpan<int> products, int dropped, ReadOnlySpan<int> voltages)
    {
        int d = loops.Length, stride = products.Length / d;
        long input = voltages[LoopSpace.InputColumn], output = voltages[LoopSpace.OutputColumn];
        for (int row = 0, direction = 0; row < d; row++, direction++)
        {
            direction += direction == dropped ? 1 : 0;
            for (int loop = 0; loop < d; loop++)
            {
                _system[(row * (d + 1)) + loop] = products[(stride * loop) + direction];
            }

            long[] allowed = two.Allowed[direction];
            _system[(row * (d + 1)) + d] = (input * allowed[LoopSpace.OutputColumn]) - (output * allowed[LoopSpace.InputColumn]);
        }

        if (!NullVector.TryFind(_system.AsSpan(0, d * (d + 1)), d + 1, _amounts.AsSpan(0, d + 1)))
        {
            return false;
        }

        long scale = _amounts[d];
        Array.Clear(_rest);
        for (int loop = 0; loop < d; loop++)
        {
            for (int branch = 0; branch < _rest.Length; branch++)
            {
                _rest[branch] -= _amounts[loop] * loops[loop][branch];
            }
        }

        _rest[LoopSpace.InputColumn] += scale * output;
        _rest[LoopSpace.OutputColumn] -= scale * input;
        Delivered = Math.Abs(scale * input * two.ShareOfLoop);
        return TryShare(two);
    }

    // what the first two phases carry together, parted
    private bool TryShare(TwoPhases two)
    {
        long amount = 0;
        for (int branch = 0; branch < _rest.Length; branch++)
        {
            amount += two.Share[branch] * _rest[branch];
        }

        ReadOnlySpan<sbyte> first = two.First.Row(0);
        for (int c = 0; c < Moved.Length; c++)
        {
            int branch = LoopSpace.FirstCapacitorColumn + c;
            long both = two.ShareOfLoop * _rest[branch], own = amount * first[branch];
            Moved[c] = Math.Abs(own) + Math.Abs(both - own) + Math.Abs(both);
            if (Moved[c] == 0)
            {
                return false;
            }
        }

        return true;
    }
}
