using ScNet.Devices;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Design.Losses;

/// <summary>The losses of a converter read off the exact waveforms of one period, for modes whose times follow from the operating point.</summary>
/// <remarks>Derivation: docs/theory/losses.md, "Where a current ends phases".</remarks>
internal sealed class WaveformLosses
{
    private readonly SizedConverter _sized;
    private readonly Converter _converter;
    private readonly PeriodicSteadyState _steady;
    private readonly double[] _seconds;
    private readonly double _hertz;
    private readonly List<Loss> _losses = [];
    private readonly List<LossNote> _notes = [];

    private WaveformLosses(SizedConverter sized, PeriodicSteadyState steady)
    {
        (_sized, _converter, _steady) = (sized, sized.Converter, steady);
        _seconds = steady.Signals.Durations;
        _hertz = steady.Point.FrequencyHz;
    }

    /// <summary>The budget.</summary>
    /// <param name="sized">The converter with its devices.</param>
    /// <param name="steady">Its periodic solution with the same values, without parasitic capacitances.</param>
    public static LossBudget Of(SizedConverter sized, PeriodicSteadyState steady)
    {
        WaveformLosses losses = new(sized, steady);
        losses.Conduct();
        losses.Swing();
        losses.Leak();
        losses.Hand();
        ControlOverhead control = sized.Process.Control;
        losses.Add(LossKind.Control, string.Empty, control.FixedWatts + (losses._hertz * control.CoulombsPerCycle * steady.Point.InputVoltageVolts));
        return new LossBudget(sized, steady.Point, steady.AverageOutputVoltageVolts, [.. losses._losses.OrderBy(l => l.Kind)], [.. losses._notes]);
    }

    // what resistances dissipate, also where capacitors meet at different voltages
    private void Conduct()
    {
        foreach (SwitchOperation s in _steady.Switches)
        {
            Add(LossKind.Conduction, s.Switch.Name, s.DissipationWatts);
        }

        foreach (CapacitorOperation c in _steady.Capacitors)
        {
            Add(LossKind.Conduction, c.Capacitor.Name, c.DissipationWatts);
        }

        foreach (InductorOperation l in _steady.Inductors)
        {
            Add(LossKind.Windings, l.Inductor.Name, l.DissipationWatts);
        }

        for (int l = 0; l < _sized.Inductors.Count; l++)
        {
            Add(LossKind.Cores, _converter.Inductors[l].Name, CoreTerm.Of(_sized.Inductors[l], _hertz, _steady.Inductors[l].RippleAmperes));
        }

        foreach (DiodeOperation d in _steady.Diodes)
        {
            Add(LossKind.BodyDiodes, d.Switch.Name, d.DissipationWatts);
        }

        if (_converter.Capacitors.Count > 0)
        {
            _notes.Add(new(LossKind.ChargeSharing, string.Empty, true, "within conduction, from which waveforms do not tell it"));
        }
    }

    private void Swing()
    {
        for (int s = 0; s < _sized.Switches.Count; s++)
        {
            StackedSwitch stack = _sized.Switches[s];
            int own = s, closings = Stretches().Count(k => IsClosed(k, own) && !IsClosed(Before(k), own));
            Add(LossKind.GateDrive, _converter.Switches[s].Name, _hertz * closings * stack.GateChargeCoulombs * stack.Device.GateDriveVolts / _sized.Process.GateRailEfficiency);
            double farads = stack.JunctionChargeCoulombs / stack.Device.RatedVolts / (stack.Count * stack.Count);
            Swing(LossKind.Junctions, _converter.Switches[s].Name, farads, k => IsClosed(k, own) ? (0, 0) : Ends(k, _steady.AcrossSwitch(k, own)), "the voltage across it");
        }

        for (int c = 0; c < _sized.Capacitors.Count; c++)
        {
            (Capacitor capacitor, StackedCapacitor stack) = (_converter.Capacitors[c], _sized.Capacitors[c]);
            Plate(capacitor.Name, capacitor.BottomNode, capacitor.Plates.BodyNode, stack.Device.BottomPlateFraction > 0 ? stack.BottomPlateFarads : capacitor.Plates.BottomFarads);
            Plate(capacitor.Name, capacitor.PositiveNode, capacitor.Plates.BodyNode, stack.Device.TopPlateFraction > 0 ? stack.TopPlateFarads : capacitor.Plates.TopFarads);
        }

        foreach (Parasitic parasitic in _converter.Parasitics)
        {
            Plate(parasitic.Name, parasitic.FirstNode, parasitic.SecondNode, parasitic.Farads);
        }
    }

    private void Plate(string name, string plate, string body, double farads)
    {
        int first = _converter.Nodes.PositionOf(plate), second = _converter.Nodes.PositionOf(body);
        Swing(LossKind.Plates, name, farads, k => Ends(k, _steady.OfNode(k, first)) is { } p && Ends(k, _steady.OfNode(k, second)) is { } b ? (p.Start - b.Start, p.End - b.End) : null, $"the potential of {plate}");
    }

    // f ½ C Σ Δ² over the jumps between stretches; what is not known stays where it was
    private void Swing(LossKind kind, string name, double farads, Func<int, (double Start, double End)?> voltage, string what)
    {
        (double Start, double End)?[] all = [.. Stretches().Select(voltage)];
        if (farads == 0)
        {
            return;
        }

        if (Array.FindLast(all, v => v is not null) is not { End: var before })
        {
            _notes.Add(new(kind, name, false, $"as nothing fixes {what}"));
            return;
        }

        double sum = 0;
        foreach ((double start, double end) in all.OfType<(double, double)>())
        {
            sum += (start - before) * (start - before);
            before = end;
        }

        Add(kind, name, 0.5 * _hertz * farads * sum);
        if (sum > 0 && all.Contains(null))
        {
            _notes.Add(new(kind, name, true, "with what floats in some phase keeping its potential"));
        }
    }

    private void Leak()
    {
        for (int c = 0; c < _sized.Capacitors.Count; c++)
        {
            StackedCapacitor stack = _sized.Capacitors[c];
            double volts = _steady.Capacitors[c].AverageVoltageVolts ?? 0;
            Add(LossKind.Leakage, _converter.Capacitors[c].Name, stack.LeakageAmperes / stack.RatedVolts * volts * volts);
        }

        for (int s = 0; s < _sized.Switches.Count; s++)
        {
            int own = s;
            double amperes = _sized.Switches[s].WidthOfEachMicrometres * _sized.Switches[s].Device.LeakageAmperesPerMicrometre;
            int[] open = [.. Stretches().Where(k => !IsClosed(k, own))];
            Add(LossKind.Leakage, _converter.Switches[s].Name, amperes * _hertz * open.Sum(k => _seconds[k] * Math.Abs(_steady.AcrossSwitch(k, own)?.Mean() ?? 0)));
            if (amperes > 0 && open.Any(k => _steady.AcrossSwitch(k, own) is null))
            {
                _notes.Add(new(LossKind.Leakage, _converter.Switches[s].Name, false, "where nothing fixes the voltage across it"));
            }
        }
    }

    // in the dead time at an edge a body diode carries what its switch carries forwards beside it; a netlist with diodes has its own dead times
    private void Hand()
    {
        if (_sized.Process.DeadTimeSeconds == 0 || _converter.Inductors.Count == 0 || _converter.Switches.Any(s => s.DiodeVolts is not null))
        {
            foreach ((Switch @switch, StackedSwitch stack) in _converter.Switches.Zip(_sized.Switches).Where(s => s.First.DiodeVolts is not null && s.Second.Device.RecoveryCoulombsPerMicrometre > 0))
            {
                _notes.Add(new(LossKind.ReverseRecovery, @switch.Name, false, "as the netlist has diodes and dead times of its own"));
            }

            return;
        }

        for (int s = 0; s < _sized.Switches.Count; s++)
        {
            int own = s, direction = Direction(s);
            double amperes = Stretches().Where(k => IsClosed(k, own) != IsClosed(Before(k), own)).Sum(k => Math.Max(0, direction * AtEdge(k, own)));
            StackedSwitch stack = _sized.Switches[s];
            Add(
                LossKind.ReverseRecovery, _converter.Switches[s].Name,
                _hertz * stack.WidthOfEachMicrometres * stack.Device.RecoveryCoulombsPerMicrometre * Stretches().Where(k => !IsClosed(k, own) && IsClosed(Before(k), own) && direction * AtEdge(k, own) > 0)
                    .Sum(k => Math.Abs(_steady.AcrossSwitch(k, own)?.At(0) ?? 0)));
            Add(LossKind.BodyDiodes, _converter.Switches[s].Name, amperes * _hertz * _sized.Process.DeadTimeSeconds * stack.Count * stack.Device.BodyDiodeVolts);
        }
    }

    // the current of a switch that closes or opens at the start of a stretch
    private double AtEdge(int stretch, int @switch) => IsClosed(stretch, @switch)
        ? _steady.Signals.SwitchCurrent(stretch, @switch)?.At(0) ?? 0
        : _steady.Signals.SwitchCurrent(Before(stretch), @switch)?.At(_seconds[Before(stretch)]) ?? 0;

    // of the current that its diode can carry: against what it blocks; none where it blocks both ways
    private int Direction(int @switch)
    {
        double[] blocked = [.. Stretches().Where(k => !IsClosed(k, @switch)).Select(k => _steady.AcrossSwitch(k, @switch)?.Mean() ?? 0)];
        double scale = 1e-9 * _steady.Point.InputVoltageVolts;
        (bool up, bool down) = (blocked.Any(v => v > scale), blocked.Any(v => v < -scale));
        return up == down ? 0 : up ? -1 : 1;
    }

    private (double Start, double End)? Ends(int stretch, PhaseWaveform? signal) => signal is null ? null : (signal.At(0), signal.At(_seconds[stretch]));

    private IEnumerable<int> Stretches() => Enumerable.Range(0, _seconds.Length);

    private int Before(int stretch) => stretch == 0 ? _seconds.Length - 1 : stretch - 1;

    private bool IsClosed(int stretch, int @switch) => _steady.IsClosed(stretch, @switch);

    private void Add(LossKind kind, string element, double watts)
    {
        if (watts != 0)
        {
            _losses.Add(new Loss(kind, element, watts));
        }
    }
}
