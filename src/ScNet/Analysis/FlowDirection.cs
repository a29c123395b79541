using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// One way in which charge can circulate without breaking Kirchhoff's current law or the balance of a
/// capacitor, and without reaching the load on the whole: what topology leaves to component values. Only
/// the elements that take part are kept.
/// </summary>
internal sealed record FlowDirection(SparseVector Branches, SparseVector Switches)
{
    /// <summary>
    /// Whether no charge takes this way in the slow-switching limit: no chain of capacitors joins it with a
    /// flow to the load, so nothing drives it between equilibria. In the fast limit the drops across
    /// switches may.
    /// </summary>
    public bool IsStillWhenSlow { get; init; }

    /// <summary>
    /// A flow of its own that delivers one unit to the load, of which this direction is a multiple when the
    /// flow that topology gives is taken off; null where the direction lies aside of every way to the load.
    /// It touches less than the direction, and keeps independent parts of a converter apart.
    /// </summary>
    public FlowDirection? Path { get; init; }

    /// <summary>How many times <see cref="Path"/>, less the flow that topology gives, the direction is.</summary>
    public double PathShare { get; init; }

    /// <summary>The path where there is one, else the direction.</summary>
    public FlowDirection Way => Path ?? this;

    /// <summary>Whether some capacitor takes part.</summary>
    public bool MovesCapacitors(int capacitorCount, int phases) => !Branches.IsZero && Branches.Indices[0] < capacitorCount * phases;

    /// <summary>The charge that leaves the source: not zero only where a capacitor is held at different voltages by different phases.</summary>
    public double InputCharge(SwitchedNetwork network)
    {
        double charge = 0;
        for (int e = Branches.Count - 1; e >= 0 && Branches.Indices[e] >= network.InputBranch * network.PhaseCount; e--)
        {
            charge -= Branches.Indices[e] < (network.InputBranch + 1) * network.PhaseCount ? Branches.Values[e] : 0;
        }

        return charge;
    }

    /// <summary>The loops of closed switches of one phase, one direction each.</summary>
    public static IEnumerable<FlowDirection> SwitchLoops(SwitchedNetwork network, PhaseForest forest, bool[] closed, int phase)
    {
        int phases = network.PhaseCount;
        var place = new int[network.NodeCount];
        for (int k = 0; k < place.Length; k++)
        {
            place[forest.NodeOrder[k]] = k;
        }

        for (int s = 0; s < network.SwitchCount; s++)
        {
            int first = network.SwitchFirst[s], second = network.SwitchSecond[s];
            if (!closed[(phase * network.SwitchCount) + s] || first == second
                || forest.ParentSwitch[first] == s || forest.ParentSwitch[second] == s)
            {
                continue;
            }

            // through the switch, and along the tree from both ends to where they meet
            List<int> indices = [(s * phases) + phase];
            List<double> values = [1];
            while (first != second)
            {
                bool isFirst = place[first] > place[second];
                ref int node = ref isFirst ? ref first : ref second;
                int via = forest.ParentSwitch[node];
                indices.Add((via * phases) + phase);
                values.Add(network.SwitchFirst[via] == node == isFirst ? -1 : 1);
                node = forest.ParentNode[node];
            }

            yield return new FlowDirection(default, SparseVector.Of([.. indices], [.. values]));
        }
    }
}
