using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// Which voltages a mode fixes, whatever they are: of capacitors, and of nodes and between nodes phase by phase. The
/// others float, or move with a capacitor that nothing ever charges.
/// </summary>
internal sealed class KnownPotentials
{
    private readonly Func<int, bool> _capacitor;
    private readonly Func<int, int, bool> _node;
    private readonly Func<int, int, bool> _switch;

    private KnownPotentials(Func<int, bool> capacitor, Func<int, int, bool> node, Func<int, int, bool> @switch)
    {
        _capacitor = capacitor;
        _node = node;
        _switch = @switch;
    }

    /// <summary>Whether the voltage of a capacitor is fixed; with parasitic capacitances also of one of those.</summary>
    public bool OfCapacitor(int capacitor) => _capacitor(capacitor);

    /// <summary>Whether a phase, from 0, fixes the potential of a node.</summary>
    public bool OfNode(int node, int phase) => _node(node, phase);

    /// <summary>Whether a phase, from 0, fixes the voltage across a switch.</summary>
    public bool AcrossSwitch(int @switch, int phase) => _switch(@switch, phase);

    /// <summary>What is said of each.</summary>
    public static KnownPotentials Of(Func<int, bool> capacitor, Func<int, int, bool> node, Func<int, int, bool> @switch) => new(capacitor, node, @switch);

    /// <summary>What the ideal point has.</summary>
    public static KnownPotentials Of(IdealPoint ideal, BlockingVoltages blocking) => new(
        i => ideal.CapacitorVoltages[i].IsDetermined,
        (node, phase) => ideal.NodePotentials[node][phase + 1].IsDetermined,
        (s, phase) => blocking.Switches[s][phase + 1].IsDetermined);

    /// <summary>What a network has whose capacitors may be held at different voltages by different phases.</summary>
    public static KnownPotentials Of<T>(SwitchedNetwork network, PhaseForest[] forests, LoopSolution<T> solution)
        where T : struct, IBinaryInteger<T>
    {
        bool[] unconnected = solution.Unconnected();
        List<Rational<T>[]> free = solution.FreeVoltages(unconnected);
        var none = new Rational<T>[network.BranchCount];
        Potentials<T>[] potentials = Array.ConvertAll(forests, forest => Potentials<T>.Of(forest, none, free, unconnected));
        return new(
            i => !unconnected[i] && !ModeFindings.Moves(free, i),
            (node, phase) => potentials[phase].Node(node).IsDetermined,
            (s, phase) => potentials[phase].Difference(network.SwitchFirst[s], network.SwitchSecond[s]).IsDetermined);
    }
}
