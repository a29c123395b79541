namespace ScNet.Search.Pairs;

/// <summary>What the switches of a network of two phases ask for, for both layouts, without making them.</summary>
/// <remarks>
/// The terminals of a node stand in a row by their potential in the other phase; those that share a node there too are
/// one. Between neighbours in the row passes what all terminals on one side take together, so that the charge–voltage
/// product and the highest step follow in one pass over the terminals in the order of that potential, whatever nodes
/// they belong to. Paths straight from givers to takers have the same product and pass half of all magnitudes
/// (docs/theory/atlas.md); their longest one is left to <see cref="StraightPaths"/>.
/// </remarks>
internal struct SwitchSums
{
    /// <summary>Σ |charge · blocked voltage|.</summary>
    public int ChargeVoltage;

    /// <summary>The number of switches.</summary>
    public int Count;

    /// <summary>Σ |charge| of switches in rows.</summary>
    public int RowCharge;

    /// <summary>The highest voltage blocked by switches in rows, and the least that any switches of the wirings must block.</summary>
    public int RowVoltage;

    /// <summary>Σ |charge| of straight paths.</summary>
    public int StraightCharge;

    /// <summary>Adds the switches of a phase.</summary>
    /// <param name="nodes">The node of each terminal in it.</param>
    /// <param name="charges">The charge that each terminal's branch takes in the phase.</param>
    /// <param name="otherRow">The terminals by potential, then by node, in the other phase.</param>
    /// <param name="otherNodes">The node of each terminal in the other phase.</param>
    /// <param name="otherPotentials">The potential of each terminal in the other phase.</param>
    public void Add(
        ReadOnlySpan<byte> nodes, ReadOnlySpan<int> charges, ReadOnlySpan<byte> otherRow, ReadOnlySpan<byte> otherNodes, ReadOnlySpan<int> otherPotentials)
    {
        // per node of the phase: the last terminal met, what it and those at one with it take, and what all so far take
        Span<sbyte> last = stackalloc sbyte[nodes.Length];
        Span<int> member = stackalloc int[nodes.Length], passed = stackalloc int[nodes.Length];
        last.Fill(-1);
        int chargeVoltage = 0, count = 0, row = 0, voltage = RowVoltage, straight = 0;
        foreach (byte terminal in otherRow)
        {
            int node = nodes[terminal], charge = charges[terminal], previous = last[node];
            last[node] = (sbyte)terminal;
            if (previous < 0)
            {
                (member[node], passed[node]) = (charge, charge);
                continue;
            }

            if (otherNodes[previous] != otherNodes[terminal])
            {
                int step = otherPotentials[terminal] - otherPotentials[previous], magnitude = Math.Abs(passed[node]);
                chargeVoltage += magnitude * step;
                row += magnitude;
                voltage = Math.Max(voltage, step);
                straight += Math.Max(0, member[node]);
                count++;
                member[node] = 0;
            }

            member[node] += charge;
            passed[node] += charge;
        }

        for (int node = 0; node < nodes.Length && last[node] >= 0; node++)
        {
            straight += Math.Max(0, member[node]);
        }

        ChargeVoltage += chargeVoltage;
        Count += count;
        RowCharge += row;
        RowVoltage = voltage;
        StraightCharge += straight;
    }
}
