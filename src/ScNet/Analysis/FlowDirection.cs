using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// One way in which charge can circulate without breaking Kirchhoff's current law or the balance of a
/// capacitor, and without reaching the load on the whole: what topology leaves to component values.
/// </summary>
internal sealed class FlowDirection
{
    private FlowDirection(double[] branches, double[] switches, bool isStillWhenSlow = false)
    {
        Branches = branches;
        Switches = switches;
        IsStillWhenSlow = isStillWhenSlow;
    }

    /// <summary>
    /// Whether no charge takes this way in the slow-switching limit: a capacitor that only ever meets the
    /// same sources. At higher frequencies the drops across its switches differ from phase to phase and move some.
    /// </summary>
    public bool IsStillWhenSlow { get; }

    /// <summary>Charge through each branch; index branch · phases + phase.</summary>
    public double[] Branches { get; }

    /// <summary>Charge through each switch; index switch · phases + phase.</summary>
    public double[] Switches { get; }

    /// <summary>Whether some capacitor takes part.</summary>
    public bool MovesCapacitors(int capacitorCount, int phases) => Branches.AsSpan(0, capacitorCount * phases).ContainsAnyExcept(0.0);

    /// <summary>Whether some switch takes part.</summary>
    public bool MovesSwitches => Switches.AsSpan().ContainsAnyExcept(0.0);

    public static FlowDirection Of<T>(BranchFlow<T> flow, bool isStillWhenSlow = false)
        where T : struct, IBinaryInteger<T> =>
        new([.. flow.Branches.Select(q => q.ToDouble())], [.. flow.Switches.Select(q => q.ToDouble())], isStillWhenSlow);

    /// <summary>The loops of closed switches of one phase, one direction each.</summary>
    public static IEnumerable<FlowDirection> SwitchLoops(SwitchedNetwork network, PhaseForest forest, bool[] closed, int phase)
    {
        int phases = network.PhaseCount;
        for (int s = 0; s < network.SwitchCount; s++)
        {
            int first = network.SwitchFirst[s], second = network.SwitchSecond[s];
            if (!closed[(phase * network.SwitchCount) + s] || first == second
                || forest.ParentSwitch[first] == s || forest.ParentSwitch[second] == s)
            {
                continue;
            }

            // both paths to the root of the group; what they share cancels
            var switches = new double[network.SwitchCount * phases];
            switches[(s * phases) + phase] = 1;
            AddPathToRoot(second, 1);
            AddPathToRoot(first, -1);
            yield return new FlowDirection(new double[network.BranchCount * phases], switches);

            void AddPathToRoot(int node, int sign)
            {
                for (; forest.ParentSwitch[node] is var via and >= 0; node = forest.ParentNode[node])
                {
                    switches[(via * phases) + phase] += network.SwitchFirst[via] == node ? sign : -sign;
                }
            }
        }
    }
}
