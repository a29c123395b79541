using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>The inductors whose current has ended in a phase before and stays zero where they have no path.</summary>
internal static class RestingCurrents
{
    /// <summary>As in <see cref="LoopSet.Of"/>; empty where no inductor's current ends a phase.</summary>
    public static bool[] Of(SwitchedNetwork network, PhaseForest[] forests, Mode mode) =>
        network.InductorCount == 0 || mode.UntilZeroPhases.All(p => p.Count == 0) ? [] : Find(network, forests, mode);

    private static bool[] Find(SwitchedNetwork network, PhaseForest[] forests, Mode mode)
    {
        int phases = forests.Length;
        var rests = new bool[network.HeldCurrentCount * phases];
        for (int k = 0; k < network.HeldCurrentCount; k++)
        {
            int branch = network.HeldCurrents[k], inductor = branch - network.FirstInductorBranch;
            for (int phase = 0; phase < phases && inductor >= 0; phase++)
            {
                int last = phase, steps = 0;
                while (!HasPath(last) && steps++ < phases)
                {
                    last = (last + phases - 1) % phases;
                }

                rests[(k * phases) + phase] = last != phase && mode.UntilZeroPhases[inductor].Contains(last + 1);
            }

            bool HasPath(int phase) => forests[phase].AreConnected(network.BranchFirst[branch], network.BranchSecond[branch]);
        }

        return rests;
    }
}
