using ScNet.Analysis;
using ScNet.Devices;

namespace ScNet.Design.Losses;

/// <summary>The losses of the elements of a mode, worked out once: all but charge sharing, body diodes and cores.</summary>
/// <remarks>Formulas and sources: docs/theory/losses.md, and <see cref="LossBudget.Formulas"/>.</remarks>
internal sealed class LossTerms
{
    private readonly SizedConverter _sized;
    private readonly Converter _converter;
    private readonly ModeAnalysis _analysis;
    private readonly IdealVoltages _voltages;
    private readonly double[] _duties;
    private readonly List<LossTerm> _terms = [];
    private readonly List<LossNote> _notes = [];

    private LossTerms(SizedConverter sized, ModeAnalysis analysis)
    {
        (_sized, _converter, _analysis) = (sized, sized.Converter, analysis);
        _voltages = IdealVoltages.Of(analysis);
        _duties = [.. _converter.Phases.Select(p => p.Duty.ToDouble())];
    }

    /// <summary>The terms in the order of the kinds, those of zero left out.</summary>
    public IReadOnlyList<LossTerm> Terms => [.. _terms.Where(t => !t.Watts.IsZero).OrderBy(t => t.Kind)];

    /// <summary>The body diodes that conduct in dead time.</summary>
    public IReadOnlyList<DiodeTerm> Diodes { get; private set; } = [];

    /// <summary>The cores of inductors.</summary>
    public IReadOnlyList<CoreTerm> Cores { get; private set; } = [];

    /// <summary>What is bounded only, or not counted.</summary>
    public IReadOnlyList<LossNote> Notes => [.. _notes];

    /// <summary>Works out the terms.</summary>
    /// <param name="sized">The converter with its devices.</param>
    /// <param name="analysis">The analysis of the mode, without parasitic capacitances.</param>
    public static LossTerms Of(SizedConverter sized, ModeAnalysis analysis)
    {
        LossTerms losses = new(sized, analysis);
        losses.Conduct();
        losses.Drive();
        losses.Junctions();
        losses.Plates();
        losses.Leak();
        losses.Run();
        return losses;
    }

    private void Conduct()
    {
        if (!_analysis.CarriesLoad)
        {
            _notes.Add(new(LossKind.Conduction, string.Empty, false, "as averages carry no load: all that the output impedance takes counts as charge sharing"));
            return;
        }

        RippleCurrents ripple = RippleCurrents.Of(_analysis, _duties, out IReadOnlyList<string> unknown);
        _notes.AddRange(unknown.Select(name => new LossNote(LossKind.Windings, name, false, "its ripple, as only losses fix its voltage")));
        (ChargeFlow flow, FastSwitchingLimit limit) = (_analysis.ChargeFlow, _analysis.FastSwitchingLimit);
        AddEach(LossKind.Conduction, _converter.Switches, s => s.Name, (s, i) => Heat(s.Ohms, limit.SwitchCoefficients[i], flow.Switches[i], ripple.Switches, i));
        AddEach(LossKind.Conduction, _converter.Capacitors, c => c.Name, (c, i) => Heat(c.EsrOhms, limit.CapacitorCoefficients[i], flow.Capacitors[i], ripple.Capacitors, i));
        AddEach(LossKind.Windings, _converter.Inductors, l => l.Name, (l, i) => Heat(l.Ohms, limit.InductorCoefficients[i], flow.Inductors[i], ripple.Inductors, i));
        Cores = [.. _sized.Inductors.Select((device, l) => new CoreTerm(_converter.Inductors[l].Name, device, ripple.PeakToPeak(l))).Where(c => c.Device.CoreWatts > 0 && c.RipplePerVoltSecond > 0)];
        if (_converter.Inductors.Count > 0 && _sized.Process.DeadTimeSeconds > 0)
        {
            Diodes = DiodeConduction.Of(_sized, _analysis, ripple, out IReadOnlyList<int> without);
            _notes.AddRange(without.Select(phase => new LossNote(LossKind.BodyDiodes, string.Empty, false, $"after phase {phase}, as no body diodes give the current a path")));
            Recover();
        }
    }

    // what a diode has stored flows back under the voltage that its switch then blocks
    private void Recover()
    {
        for (int s = 0; s < _sized.Switches.Count; s++)
        {
            StackedSwitch stack = _sized.Switches[s];
            string name = NameOfSwitch(stack, s);
            double volts = Diodes.Where(d => d.Element == name).Sum(d => d.BlockedPerVolt);
            _terms.Add(new(LossKind.ReverseRecovery, name, new() { HertzVolts = stack.WidthOfEachMicrometres * stack.Device.RecoveryCoulombsPerMicrometre * volts }));
        }
    }

    // R Σ D ((I a/D + r V/f)² + (Δ V/f)²/12) with the mean r and the rise Δ of the ripple in each phase
    private LossPolynomial Heat(double ohms, Quantity coefficient, PhaseValues charges, StraightLines ripple, int element)
    {
        double mixed = 0, own = 0;
        for (int j = 0; j < _duties.Length && !ripple.IsNone; j++)
        {
            (double mean, double rise) = (ripple.Means[j][element], ripple.Rises[j][element]);
            mixed += 2 * charges[j + 1].ToDouble() * mean;
            own += _duties[j] * ((mean * mean) + (rise * rise / 12));
        }

        return new() { Current2 = ohms * coefficient.ToDouble(), CurrentVoltsPerHertz = ohms * mixed, Volts2PerHertz2 = ohms * own };
    }

    // f · (times that it closes) · charge · drive voltage / efficiency of the rail
    private void Drive() => AddEach(LossKind.GateDrive, _sized.Switches, NameOfSwitch, (stack, i) => new()
    {
        Hertz = Closings(i) * stack.GateChargeCoulombs * stack.Device.GateDriveVolts / _sized.Process.GateRailEfficiency,
    });

    // n in series: n junctions, each of charge / rated voltage, each with 1/n of the voltage
    private void Junctions() => AddEach(LossKind.Junctions, _sized.Switches, NameOfSwitch, (stack, i) =>
        _voltages.Across(i) is { } voltage
            ? new() { HertzVolts2 = stack.JunctionChargeCoulombs / stack.Device.RatedVolts / (stack.Count * stack.Count) * Swing(LossKind.Junctions, NameOfSwitch(stack, i), voltage) }
            : Unknown(LossKind.Junctions, NameOfSwitch(stack, i), "as nothing bounds the voltage across it"));

    private void Plates()
    {
        AddEach(LossKind.Plates, _sized.Capacitors, (_, i) => _converter.Capacitors[i].Name, (stack, i) =>
        {
            Capacitor capacitor = _converter.Capacitors[i];
            return Plate(capacitor.Name, capacitor.BottomNode, capacitor.Plates.BodyNode, stack.Device.BottomPlateFraction > 0 ? stack.BottomPlateFarads : capacitor.Plates.BottomFarads)
                + Plate(capacitor.Name, capacitor.PositiveNode, capacitor.Plates.BodyNode, stack.Device.TopPlateFraction > 0 ? stack.TopPlateFarads : capacitor.Plates.TopFarads);
        });
        AddEach(LossKind.Plates, _converter.Parasitics, p => p.Name, (p, _) => Plate(p.Name, p.FirstNode, p.SecondNode, p.Farads));
    }

    private LossPolynomial Plate(string name, string plate, string body, double farads)
    {
        if (farads == 0)
        {
            return default;
        }

        VoltageProfile? voltage = _voltages.Between(_converter.Nodes.PositionOf(plate), _converter.Nodes.PositionOf(body));
        return voltage is null
            ? Unknown(LossKind.Plates, name, $"as nothing bounds the potential of {plate} in some phase")
            : new() { HertzVolts2 = farads * Swing(LossKind.Plates, name, voltage) };
    }

    private void Leak()
    {
        AddEach(LossKind.Leakage, _sized.Capacitors, (_, i) => _converter.Capacitors[i].Name, (stack, i) =>
        {
            Quantity voltage = _analysis.IdealPoint.CapacitorVoltages[i];
            return stack.LeakageAmperes == 0 ? default
                : voltage.IsDetermined ? new() { Volts2 = stack.LeakageAmperes / stack.RatedVolts * voltage.ToDouble() * voltage.ToDouble() }
                : _analysis.LeftToLosses.Contains(i) ? Unknown(LossKind.Leakage, _converter.Capacitors[i].Name, "as only losses fix its voltage")
                : default; // idle: what leaks nothing brings back
        });
        AddEach(LossKind.Leakage, _sized.Switches, NameOfSwitch, (stack, i) =>
        {
            double amperes = stack.WidthOfEachMicrometres * stack.Device.LeakageAmperesPerMicrometre;
            if (amperes == 0)
            {
                return default;
            }

            VoltageProfile? voltage = _voltages.Across(i);
            if (voltage is null or { IsRelative: true })
            {
                return _voltages.EndsInTheAir(i) ? default : Unknown(LossKind.Leakage, NameOfSwitch(stack, i), "as nothing bounds the voltage across it");
            }

            NoteBounds(LossKind.Leakage, NameOfSwitch(stack, i), voltage);
            return new() { Volts = amperes * voltage.MeanMagnitude(_duties) };
        });
    }

    private void Run() => _terms.Add(new(LossKind.Control, string.Empty, new()
    {
        Constant = _sized.Process.Control.FixedWatts,
        HertzVolts = _sized.Process.Control.CoulombsPerCycle,
    }));

    private string NameOfSwitch(StackedSwitch stack, int index) => _converter.Switches[index].Name;

    // how often in a period the switch goes from open to closed
    private int Closings(int @switch)
    {
        PhaseSet closed = _analysis.Mode.ClosedPhases[@switch];
        int count = _converter.Phases.Count, closings = 0;
        for (int number = 1; number <= count; number++)
        {
            closings += closed.Contains(number) && !closed.Contains(number == 1 ? count : number - 1) ? 1 : 0;
        }

        return closings;
    }

    private double Swing(LossKind kind, string name, VoltageProfile voltage)
    {
        double halfSquares = voltage.HalfSquares();
        if (halfSquares > 0)
        {
            NoteBounds(kind, name, voltage);
        }

        return halfSquares;
    }

    private void NoteBounds(LossKind kind, string name, VoltageProfile voltage)
    {
        if (voltage.Floats)
        {
            _notes.Add(new(kind, name, true, voltage.IsFixed ? "with what floats in some phase keeping its potential" : "with the most that the bounds of what floats in some phase allow"));
        }
    }

    private LossPolynomial Unknown(LossKind kind, string name, string reason)
    {
        _notes.Add(new(kind, name, false, reason));
        return default;
    }

    private void AddEach<T>(LossKind kind, IReadOnlyList<T> elements, Func<T, string> name, Func<T, int, LossPolynomial> watts) =>
        AddEach(kind, elements, (element, _) => name(element), watts);

    private void AddEach<T>(LossKind kind, IReadOnlyList<T> elements, Func<T, int, string> name, Func<T, int, LossPolynomial> watts)
    {
        for (int i = 0; i < elements.Count; i++)
        {
            _terms.Add(new(kind, name(elements[i], i), watts(elements[i], i)));
        }
    }
}
