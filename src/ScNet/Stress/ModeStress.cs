using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>The stress of every element in one mode, in its periodic steady state without load.</summary>
public sealed class ModeStress
{
    private ModeStress(ModeAnalysis analysis, InputVoltageRange input, FloatingAssumption assumption)
    {
        Analysis = analysis;
        Input = input;
        Converter converter = analysis.Converter;
        Held = HeldVoltages.Of(analysis);
        Pieces = RigidPieces.Of(converter, Held);
        Spans = NodeSpans.Of(analysis, Pieces, Held, assumption);
        NodePotentials = [.. Enumerable.Range(0, converter.Nodes.Count).Select(node => PotentialsOf(node))];
        Switches = [.. converter.Switches.Select((s, i) => SwitchStress.Of(s, SpansOf(i), analysis.Mode, null, input))];
        Capacitors = [.. converter.Capacitors.Select((c, i) =>
            CapacitorStress.Of(c, analysis.IdealPoint.CapacitorVoltages[i], analysis.Mode, input))];
    }

    /// <summary>The mode's analysis.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>The mode.</summary>
    public Mode Mode => Analysis.Mode;

    /// <summary>The input voltages at which the mode runs.</summary>
    public InputVoltageRange Input { get; }

    /// <summary>The stress of each switch; index as in <see cref="Converter.Switches"/>.</summary>
    public IReadOnlyList<SwitchStress> Switches { get; }

    /// <summary>The stress of each capacitor; index as in <see cref="Converter.Capacitors"/>.</summary>
    public IReadOnlyList<CapacitorStress> Capacitors { get; }

    /// <summary>The potential of each node in each phase, per volt of input; index as in <see cref="Converter.Nodes"/>, then phase 1 at index 0.</summary>
    public IReadOnlyList<IReadOnlyList<VoltageSpan>> NodePotentials { get; }

    internal HeldVoltages Held { get; }

    internal RigidPieces Pieces { get; }

    internal NodeSpans Spans { get; }

    /// <summary>Finds the stress of one mode.</summary>
    /// <param name="analysis">The mode's analysis.</param>
    /// <param name="input">The input voltages at which it runs.</param>
    /// <param name="assumption">What floating nodes are taken to do.</param>
    public static ModeStress Of(
        ModeAnalysis analysis, InputVoltageRange input, FloatingAssumption assumption = FloatingAssumption.HeldOrLeaking)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(input);
        return Enum.IsDefined(assumption)
            ? new ModeStress(analysis, input, assumption)
            : throw new ArgumentOutOfRangeException(nameof(assumption), assumption, "Expected an assumption that exists.");
    }

    /// <summary>The mode and each element with its voltages.</summary>
    public override string ToString() =>
        $"mode {Mode}, {Input} input; switches {string.Join(" | ", Switches)}; capacitors {string.Join(" | ", Capacitors)}";

    private VoltageSpan[] PotentialsOf(int node) =>
        [.. Enumerable.Range(0, Analysis.Converter.Phases.Count).Select(phase => Spans.Span(node, phase))];

    private VoltageSpan[] SpansOf(int @switch)
    {
        SwitchedNetwork network = Analysis.Converter.Network;
        PhaseValues blocked = Analysis.BlockingVoltages.Switches[@switch];
        int first = network.SwitchFirst[@switch], second = network.SwitchSecond[@switch];
        return [.. blocked.Select((voltage, phase) => voltage.IsDetermined
            ? VoltageSpan.Fixed(voltage.ToFraction())
            : VoltageSpan.Of(Spans.Potential(first, phase) - Spans.Potential(second, phase), VoltageBasis.Floating))];
    }
}
