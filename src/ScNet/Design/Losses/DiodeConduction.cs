using ScNet.Analysis;
using ScNet.Devices;

namespace ScNet.Design.Losses;

/// <summary>The current that body diodes take over in dead times, between phases in which an inductor drives it on.</summary>
/// <remarks>
/// At an edge the switches that change are open for the dead time. A body diode stands against the voltage that its switch
/// blocks; where its switch carries, before or after the edge, a current in the diode's direction, the diode can
/// take it. With these diodes the currents of the inductors divide as through closed switches. A switch that blocks both
/// ways has no diode that conducts. Source: docs/theory/losses.md, "Dead time".
/// </remarks>
internal sealed class DiodeConduction
{
    private readonly ModeAnalysis _analysis;
    private readonly RippleCurrents _ripple;
    private readonly double[] _averages;

    private DiodeConduction(ModeAnalysis analysis, RippleCurrents ripple)
    {
        _analysis = analysis;
        _ripple = ripple;
        _averages = [.. analysis.Inductors.Select(l => l.Current.ToDouble())];
    }

    /// <summary>The switches that conduct in dead times with the charge of one edge per second of dead time: amperes per ampere of load, and per volt and second.</summary>
    /// <param name="sized">The converter with its devices.</param>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="ripple">The ripple.</param>
    /// <param name="phasesWithoutPath">The numbers of the phases after which no body diodes give every current a path.</param>
    public static IReadOnlyList<DiodeTerm> Of(SizedConverter sized, ModeAnalysis analysis, RippleCurrents ripple, out IReadOnlyList<int> phasesWithoutPath)
    {
        DiodeConduction diodes = new(analysis, ripple);
        List<DiodeTerm> terms = [];
        List<int> without = [];
        for (int j = 0; j < analysis.Converter.Phases.Count; j++)
        {
            if (!diodes.TryEdge(sized, j, terms))
            {
                without.Add(j + 1);
            }
        }

        phasesWithoutPath = [.. without];
        return [.. terms];
    }

    // the edge after phase j from 0
    private bool TryEdge(SizedConverter sized, int phase, List<DiodeTerm> terms)
    {
        Converter converter = _analysis.Converter;
        int next = (phase + 1) % converter.Phases.Count, switches = converter.Switches.Count;
        ReadOnlySpan<bool> before = converter.Network.ClosedIn(_analysis.Mode.Index, phase), after = converter.Network.ClosedIn(_analysis.Mode.Index, next);
        if (before.SequenceEqual(after))
        {
            return true;
        }

        var conducts = new bool[switches];
        for (int s = 0; s < switches; s++)
        {
            conducts[s] = before[s] ? after[s] || IsForward(s, phase) : after[s] && IsForward(s, next);
        }

        double[] edge = [.. _averages.Select((_, l) => _ripple.Inductors.Means[next][l] - (0.5 * _ripple.Inductors.Rises[next][l]))];
        double[] load = new double[switches], own = new double[switches], ignored = new double[converter.Capacitors.Count];
        CurrentSplit split = new(converter, conducts);
        if (!split.TryDivide(_averages, load, ignored) || !split.TryDivide(edge, own, ignored))
        {
            return false;
        }

        for (int s = 0; s < switches; s++)
        {
            if (conducts[s] && before[s] != after[s] && (load[s] != 0 || own[s] != 0))
            {
                StackedSwitch stack = sized.Switches[s];
                double volts = converter.Switches[s].DiodeVolts ?? (stack.Count * stack.Device.BodyDiodeVolts);
                Quantity blocked = _analysis.BlockingVoltages.Switches[s][next + 1];
                terms.Add(new(converter.Switches[s].Name, volts, load[s], own[s], !after[s] && blocked.IsDetermined ? Math.Abs(blocked.ToDouble()) : 0));
            }
        }

        return true;
    }

    private bool IsForward(int @switch, int phase)
    {
        double charge = _analysis.ChargeFlow.Switches[@switch][phase + 1].ToDouble() * (_analysis.Ratio.IsDetermined && _analysis.Ratio.Sign < 0 ? -1 : 1);
        return charge * Direction(@switch) > 0;
    }

    // 1 for a diode that conducts from the first terminal to the second, -1 for the other way, 0 for none
    private int Direction(int @switch)
    {
        if (_analysis.Converter.Switches[@switch].DiodeVolts is not null)
        {
            return -1;
        }

        double[] blocked = [.. _analysis.BlockingVoltages.Switches[@switch].Where(v => v.IsDetermined).Select(v => v.ToDouble())];
        bool blocksUp = blocked.Any(v => v > 0), blocksDown = blocked.Any(v => v < 0);
        return blocksUp == blocksDown ? 0 : blocksUp ? -1 : 1;
    }
}
