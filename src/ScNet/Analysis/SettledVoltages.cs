using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>The voltages of a mode without load, each as exact as what fixes it.</summary>
/// <param name="IdealPoint">Ratio, capacitor voltages and node potentials.</param>
/// <param name="BlockingVoltages">The voltages of the switches.</param>
/// <param name="InductorVoltages">The voltages of the inductors.</param>
/// <param name="Balance">What fixed the last of them.</param>
/// <param name="Diagnostics">Warnings that depend on component values.</param>
internal sealed record SettledVoltages(
    IdealPoint IdealPoint, BlockingVoltages BlockingVoltages, PhaseTable InductorVoltages, VoltageBalance Balance, IReadOnlyList<Diagnostic> Diagnostics)
{
    // phases of the same switches are one; how far back one is looked for
    private const int MostPhasesBack = 4;

    /// <summary>The capacitors, by position, that resistances bring to a voltage of their own, whatever they were left with.</summary>
    public IReadOnlyList<int> LeftToLosses { get; init; } = [];

    /// <summary>Reads all voltages off the space that laws leave; what still moves is undetermined.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="forests">The phases of the mode.</param>
    /// <param name="space">The voltages.</param>
    /// <param name="unconnected">The capacitors that are in no loop in any phase.</param>
    /// <param name="inductors">The voltages of the inductors.</param>
    /// <param name="balance">What fixed the last of the voltages.</param>
    /// <param name="warnings">Warnings that depend on component values.</param>
    public static SettledVoltages Of<T>(
        Converter converter,
        PhaseForest[] forests,
        VoltageSpace<T> space,
        bool[] unconnected,
        PhaseTable inductors,
        VoltageBalance balance,
        Diagnostic[] warnings)
        where T : struct, IBinaryInteger<T>
    {
        SwitchedNetwork network = converter.Network;
        int phases = network.PhaseCount;
        var nodes = new Quantity[network.NodeCount * phases];
        var blocking = new Quantity[network.SwitchCount * phases];
        for (int phase = 0; phase < phases; phase++)
        {
            int same = Array.IndexOf(forests, forests[phase], Math.Max(0, phase - MostPhasesBack));
            Potentials<T>? potentials = same < phase ? null : Potentials<T>.Of(forests[phase], space.Origin, space.Movements, unconnected);
            for (int node = 0; node < network.NodeCount; node++)
            {
                nodes[(node * phases) + phase] = potentials?.Node(node) ?? nodes[(node * phases) + same];
            }

            for (int s = 0; s < network.SwitchCount; s++)
            {
                blocking[(s * phases) + phase] = potentials?.Difference(network.SwitchFirst[s], network.SwitchSecond[s]) ?? blocking[(s * phases) + same];
            }
        }

        var capacitors = new Quantity[network.CapacitorCount];
        for (int i = 0; i < capacitors.Length; i++)
        {
            capacitors[i] = unconnected[i] || space.Moves(i) ? Quantity.Undetermined : space.Origin[i].ToQuantity();
        }

        NameIndex phaseNames = converter.Phases.Names;
        IdealPoint ideal = new(
            space.Moves(network.OutputBranch) ? Quantity.Undetermined : space.Origin[network.OutputBranch].ToQuantity(),
            new NamedList<Quantity>(capacitors, converter.Capacitors.Names),
            new PhaseTable(nodes, converter.Nodes.Names, phaseNames));
        return new SettledVoltages(
            ideal,
            new BlockingVoltages(new PhaseTable(blocking, converter.Switches.Names, phaseNames), converter.Switches.Names),
            inductors,
            balance,
            warnings);
    }
}
