using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>The stress of every element in one mode, in its periodic steady state without load.</summary>
public sealed class ModeStress
{
    private readonly HeldCorner _plain;

    private ModeStress(
        ModeAnalysis analysis, Interval<double> inputVolts, bool openSwitchesLeak, HeldCorner plain, IReadOnlyList<Interval<Fraction>> kept)
    {
        Analysis = analysis;
        InputVolts = inputVolts;
        ExactInput = InputInterval.Exact(inputVolts);
        _plain = plain;
        Corners = HeldCorner.Of(plain, analysis, kept, openSwitchesLeak);
        Converter converter = analysis.Converter;
        NodePotentials = new NamedList<PerPhase<VoltageSpan>>(
            [.. converter.Nodes.Select((_, node) => new PerPhase<VoltageSpan>(PotentialsOf(node), converter.Phases.Names))], converter.Nodes.Names);
        OverAllPhases = [.. NodePotentials.Select(HullOf)];
        Switches = new NamedList<SwitchStress>(
            [.. converter.Switches.Select((_, i) => StressOf(i))],
            converter.Switches.Names);
        Capacitors = new NamedList<CapacitorStress>(
            [.. converter.Capacitors.Select((c, i) => CapacitorStress.Of(
                c, SpanOfCapacitor(i, kept), analysis.Mode, inputVolts, ExactInput.Maximum!.Value, analysis.LeftToLosses.Contains(i)))],
            converter.Capacitors.Names);
    }

    /// <summary>The mode's analysis.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>The mode.</summary>
    public Mode Mode => Analysis.Mode;

    /// <summary>The input voltages in volts (V) at which the mode runs.</summary>
    public Interval<double> InputVolts { get; }

    /// <summary>The stress of each switch, by name and by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<SwitchStress> Switches { get; }

    /// <summary>The stress of each capacitor, by name and by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<CapacitorStress> Capacitors { get; }

    /// <summary>The potential of each node in each phase, per volt of input, by name and by position as in <see cref="Converter.Nodes"/>.</summary>
    public NamedList<PerPhase<VoltageSpan>> NodePotentials { get; }

    /// <summary>The input voltages as the decimals written.</summary>
    internal Interval<Fraction> ExactInput { get; }

    /// <summary>The choices of voltages of idle capacitors; one where none idles.</summary>
    internal IReadOnlyList<HeldCorner> Corners { get; }

    /// <summary>The potentials and frames that do not rest on idle capacitors.</summary>
    internal NodeSpans Fixed => _plain.Spans;

    /// <summary>The hull of each node's potentials over all phases; undetermined if one is.</summary>
    internal IReadOnlyList<Interval<Fraction>> OverAllPhases { get; }

    /// <summary>Finds the stress of one mode. Other modes are not looked at: the voltage of a capacitor that it leaves idle is undetermined.</summary>
    /// <param name="analysis">The mode's analysis.</param>
    /// <param name="inputVolts">The input voltages in volts (V) at which it runs.</param>
    /// <param name="openSwitchesLeak">
    /// Whether open switches at a floating node may leak: it then lies anywhere between its potentials of the phase
    /// before, which its parasitic capacitances hold, and those at the other ends of its open switches. Without
    /// leakage it lies between its potentials of the phase before. See docs/theory/stress.md, "Floating nodes".
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">An input voltage is missing, not positive or not from 1e-60 to 1e60.</exception>
    public static ModeStress Of(
        ModeAnalysis analysis, Interval<double> inputVolts, bool openSwitchesLeak = true)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return Of(analysis, inputVolts, openSwitchesLeak, [.. analysis.Converter.Capacitors.Select(_ => default(Interval<Fraction>))]);
    }

    /// <summary>The same with what other modes leave each capacitor with.</summary>
    internal static ModeStress Of(
        ModeAnalysis analysis, Interval<double> inputVolts, bool openSwitchesLeak, IReadOnlyList<Interval<Fraction>> kept)
    {
        InputInterval.Check(inputVolts, nameof(inputVolts));
        return new ModeStress(analysis, inputVolts, openSwitchesLeak, HeldCorner.Plain(analysis, openSwitchesLeak), kept);
    }

    /// <summary>The mode and each element with its voltages.</summary>
    public override string ToString() =>
        $"mode {Mode}, {InputVolts.ToString("V")} input; switches {string.Join(" | ", Switches)}; capacitors {string.Join(" | ", Capacitors)}";

    private SwitchStress StressOf(int @switch)
    {
        Converter converter = Analysis.Converter;
        VoltageSpan[] spans = SpansOf(@switch);
        PerPhase<VoltageSpan> phases = new(spans, converter.Phases.Names);
        return SwitchStress.Of(
            converter, @switch, spans, Mode, null, InputVolts, ExactInput.Maximum!.Value, ReasonOf, _ => phases,
            c => Analysis.LeftToLosses.Contains(converter.Capacitors.PositionOf(c.Name)));
    }

    private static Interval<Fraction> HullOf(PerPhase<VoltageSpan> spans) =>
        spans.Aggregate(Intervals.Empty<Fraction>(), (hull, span) => hull.Hull(span.PerVoltOfInput));

    private VoltageSpan[] PotentialsOf(int node) => [.. Enumerable.Range(0, Analysis.Converter.Phases.Count).Select(phase =>
        OverCorners(spans => new VoltageSpan(
            spans.Potential(node, phase),
            !spans.IsPinned(node, phase) ? VoltageBasis.Floating : Fixed.IsPinned(node, phase) ? VoltageBasis.Fixed : VoltageBasis.Idle)))];

    private VoltageSpan[] SpansOf(int @switch)
    {
        SwitchedNetwork network = Analysis.Converter.Network;
        PhaseValues blocked = Analysis.BlockingVoltages.Switches[@switch];
        int first = network.SwitchFirst[@switch], second = network.SwitchSecond[@switch];
        return [.. blocked.Select((voltage, phase) => voltage.IsDetermined
            ? VoltageSpan.Fixed(voltage.ToFraction())
            : OverCorners(spans => spans.FixedDifference(first, second, phase) is { } known
                ? new VoltageSpan(Intervals.Point(known), VoltageBasis.Idle)
                : new VoltageSpan(spans.Potential(first, phase).Minus(spans.Potential(second, phase)), VoltageBasis.Floating)))];
    }

    private VoltageSpan OverCorners(Func<NodeSpans, VoltageSpan> span)
    {
        VoltageSpan hull = span(Corners[0].Spans);
        for (int k = 1; k < Corners.Count && hull.IsDetermined; k++)
        {
            hull = hull.Hull(span(Corners[k].Spans));
        }

        return hull;
    }

    private VoltageSpan SpanOfCapacitor(int capacitor, IReadOnlyList<Interval<Fraction>> kept) =>
        _plain.Held[capacitor] is { } known ? VoltageSpan.Fixed(known)
        : Corners[0].Held[capacitor] is null ? default
        : new VoltageSpan(kept[capacitor], VoltageBasis.Idle);

    private (IReadOnlyList<Capacitor> Idle, IReadOnlyList<string> Floating) ReasonOf(int @switch, int phase)
    {
        Converter converter = Analysis.Converter;
        NodeSpans spans = Corners[0].Spans;
        int[] ends = [converter.Network.SwitchFirst[@switch], converter.Network.SwitchSecond[@switch]];
        IEnumerable<int> idle = ends.Where(node => !spans.Potential(node, phase).IsDetermined)
            .SelectMany(node => spans.UnknownCapacitors(node, phase)).Distinct().Order();
        return ([.. idle.Select(c => converter.Capacitors[c])],
            [.. ends.Where(node => !spans.Potential(node, phase).IsDetermined).Distinct().Select(node => converter.Nodes[node])]);
    }
}
