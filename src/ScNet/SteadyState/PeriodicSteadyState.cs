using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.SteadyState.Conduction;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState;

/// <summary>
/// The exact periodic steady state of a mode at an operating point: averages, power, the stress of every
/// element with ripple and load drop included, and waveforms on demand.
/// </summary>
/// <remarks>
/// Extremes are those inside the phases, not only at their ends. Cost: one orthogonal decomposition per
/// phase, then per element a product per mode and grid time. Derivation: docs/theory/output-impedance.md.
/// </remarks>
public sealed class PeriodicSteadyState
{
    private readonly double? _idealRatio;
    private readonly bool[][] _closed;
    private readonly SwitchedNetwork _network;
    private readonly KnownPotentials _known;
    private readonly PortRatios _ratios;
    private readonly Lazy<IPeriodicSignals> _signals;
    private readonly Lazy<NamedList<SwitchOperation>> _switches;
    private readonly Lazy<NamedList<CapacitorOperation>> _capacitors;
    private readonly Lazy<NamedList<ParasiticOperation>> _parasitics;
    private readonly Lazy<NamedList<InductorOperation>> _inductors;

    internal PeriodicSteadyState(ModeAnalysis analysis, PreparedMode prepared, OperatingPoint point)
        : this(analysis.Converter, analysis.Mode, RatioOf(analysis), point, prepared.WithImpedance().Ohms(1 / point.FrequencyHz), prepared.Ratios(1 / point.FrequencyHz), prepared.Known)
    {
        _signals = new(() => new PeriodicSignals(Converter, prepared, point, AverageOutputVoltageVolts));
    }

    internal PeriodicSteadyState(ModeAnalysis analysis, PeriodSolver solver, PeriodFigures figures, OperatingPoint point)
        : this(analysis.Converter, analysis.Mode, RatioOf(analysis), point, solver, figures)
    {
    }

    internal PeriodicSteadyState(Converter converter, Mode mode, double? idealRatio, OperatingPoint point, PeriodSolver solver, PeriodFigures figures)
        : this(converter, mode, idealRatio, point, figures.Ohms, figures.Ratios, ExponentialSignals.Known(converter, solver))
    {
        _closed = [.. solver.Structure.Network.Closed];
        double load = _network.Load == LoadKind.Stiff ? AverageOutputVoltageVolts : point.LoadCurrentAmperes;
        _signals = new(() => ExponentialSignals.Of(Converter, solver, point.FrequencyHz, [point.InputVoltageVolts, load]));
    }

    private PeriodicSteadyState(Converter converter, Mode mode, double? idealRatio, OperatingPoint point, double ohms, PortRatios ratios, KnownPotentials known)
    {
        Converter = converter;
        Mode = mode;
        _idealRatio = idealRatio;
        _network = converter.Network;
        _closed = [.. Enumerable.Range(0, _network.PhaseCount).Select(j => _network.ClosedIn(mode.Index, j).ToArray())];
        Point = point;
        OutputImpedanceOhms = ohms;
        _known = known;
        _ratios = ratios;
        AverageOutputVoltageVolts = OpenOutputVoltageVolts - (OutputImpedanceOhms * point.LoadCurrentAmperes);
        _signals = null!;
        Diodes = NameIndex.ListOf<DiodeOperation>(converter.Name, "diode", [], d => d.Switch.Name);
        _inductors = new(() => new([.. Converter.Inductors.Select((_, k) => Operations.OfInductor(k))], Converter.Inductors.Names));
        _switches = new(() => new([.. Enumerable.Range(0, _network.SwitchCount).Select(Operations.OfSwitch)], Converter.Switches.Names));
        _capacitors = new(() => new([.. Enumerable.Range(0, _network.CapacitorCount).Select(Operations.OfCapacitor)], Converter.Capacitors.Names));
        _parasitics = new(() => new(
            [.. Converter.Parasitics.Select((_, k) => Operations.OfParasitic(Converter.ParasiticBranches.Count - Converter.Parasitics.Count + k))], Converter.Parasitics.Names));
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>The operating point.</summary>
    public OperatingPoint Point { get; }

    /// <summary>The output impedance in ohms (Ω).</summary>
    public double OutputImpedanceOhms { get; }

    /// <summary>The average output voltage in volts (V): the voltage without load less impedance times load current.</summary>
    public double AverageOutputVoltageVolts { get; }

    /// <summary>The output voltage in volts (V) of the ideal converter: ratio times input voltage; that without load where losses decide the ratio.</summary>
    public double IdealOutputVoltageVolts => _idealRatio is { } ratio ? ratio * Point.InputVoltageVolts : OpenOutputVoltageVolts;

    /// <summary>
    /// The average output voltage in volts (V) without load: the ideal one, but for what ripple and parasitic capacitances change; with
    /// a stiff output the voltage at which its average current vanishes.
    /// </summary>
    public double OpenOutputVoltageVolts => _ratios.Voltage * Point.InputVoltageVolts;

    /// <summary>
    /// The load current in amperes (A) that pulls the output voltage to zero: voltage without load by output impedance;
    /// infinite where the impedance is zero.
    /// </summary>
    public double ZeroOutputCurrentAmperes => OpenOutputVoltageVolts / OutputImpedanceOhms;

    /// <summary>
    /// Whether the load pulls the output voltage to zero or to the other sign. The figures then extrapolate the linear
    /// model and mean nothing for a real load.
    /// </summary>
    public bool IsOverloaded => Point.LoadCurrentAmperes != 0 && IdealOutputVoltageVolts * AverageOutputVoltageVolts <= 0;

    /// <summary>Whether the load gives power instead of taking it: its current flows against the ideal output voltage.</summary>
    public bool IsDrivenByLoad => Point.LoadCurrentAmperes * IdealOutputVoltageVolts < 0;

    /// <summary>
    /// The average input current in amperes (A): current ratio times load current, which without parasitic capacitances is
    /// all and the ratio the ideal one, and what parasitic capacitances draw without load.
    /// </summary>
    public double AverageInputCurrentAmperes => (_ratios.Current * Point.LoadCurrentAmperes) + (_ratios.InputSiemens * Point.InputVoltageVolts);

    /// <summary>Power from the source in watts (W).</summary>
    public double InputPowerWatts => Point.InputVoltageVolts * AverageInputCurrentAmperes;

    /// <summary>Power into the load in watts (W), average voltage times average current.</summary>
    public double OutputPowerWatts => AverageOutputVoltageVolts * Point.LoadCurrentAmperes;

    /// <summary>Each switch; by name or by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<SwitchOperation> Switches => _switches.Value;

    /// <summary>Each capacitor; by name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<CapacitorOperation> Capacitors => _capacitors.Value;

    /// <summary>Each parasitic capacitance of the netlist; by name or by position as in <see cref="Converter.Parasitics"/>. Plates are with their capacitors.</summary>
    public NamedList<ParasiticOperation> Parasitics => _parasitics.Value;

    /// <summary>Each inductor; by name or by position as in <see cref="Converter.Inductors"/>.</summary>
    public NamedList<InductorOperation> Inductors => _inductors.Value;

    /// <summary>What body diodes do in it, by name of the switch; empty where none conducts, as in every solution but those of <see cref="ConductionModel"/>.</summary>
    public NamedList<DiodeOperation> Diodes { get; internal set; }

    /// <summary>
    /// The power lost in all resistances in watts (W): input less output power, as sum of impedance times the square of
    /// the load current and what parasitic capacitances cost, in which nothing large cancels. The losses of the elements,
    /// worked out when asked for, add up to it.
    /// </summary>
    public double DissipationWatts =>
        (OutputImpedanceOhms * Point.LoadCurrentAmperes * Point.LoadCurrentAmperes)
        + ((_ratios.Current - _ratios.Voltage) * Point.InputVoltageVolts * Point.LoadCurrentAmperes)
        + (_ratios.InputSiemens * Point.InputVoltageVolts * Point.InputVoltageVolts);

    /// <summary>
    /// Output power per input power with the resistances as the only loss: on-resistances and series
    /// resistances, which take conduction and charge redistribution alike, but no gate drive, switching or
    /// leakage. Null where either power is not positive.
    /// </summary>
    public double? ResistiveEfficiency => InputPowerWatts > 0 && OutputPowerWatts > 0 ? OutputPowerWatts / InputPowerWatts : null;

    /// <summary>
    /// The ripple of the output voltage, peak to peak over the period, in volts (V); zero with a stiff load, and
    /// null where nothing fixes the output's potential in some phase, though its average is fixed.
    /// </summary>
    public double? OutputRippleVolts => _network.Load == LoadKind.Stiff ? 0
        : Phases().All(j => _known.OfNode(_network.Output, j))
            ? PeakToPeak(j => Signals.Potential(j, Converter.OutputNode))
            : null;

    /// <summary>
    /// The ripple of the current out of the input source, peak to peak over the period, in amperes (A); without what flows through
    /// capacitors that lie across the source.
    /// </summary>
    public double InputRippleAmperes => PeakToPeak(Signals.InputCurrent);

    /// <summary>The root mean square of the current out of the input source over the period in amperes (A).</summary>
    public double InputRmsCurrentAmperes => Math.Sqrt(Point.FrequencyHz * Phases().Sum(j => Signals.InputCurrent(j).SquareIntegral()));

    /// <summary>Solves one analysed mode at an operating point.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="point">The operating point.</param>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public static PeriodicSteadyState Of(ModeAnalysis analysis, OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(point);
        return SteadyStateModel.Of(analysis).At(point);
    }

    /// <summary>The voltage of a capacitor sampled over one period, in volts (V).</summary>
    /// <param name="capacitor">The capacitor's name.</param>
    /// <param name="timesSeconds">Times in seconds (s) from the start of phase 1; taken modulo the period. On the boundary of two phases the later one counts.</param>
    /// <returns>One value per time, behind the series resistance; null at all times where nothing fixes the voltage.</returns>
    /// <exception cref="ArgumentException">No such capacitor, or a time that is not finite.</exception>
    public double?[] SampleCapacitorVoltage(string capacitor, IReadOnlyList<double> timesSeconds)
    {
        int index = Converter.Capacitors.PositionOf(capacitor);
        return _known.OfCapacitor(index)
            ? Sample(timesSeconds, j => Signals.CapacitorVoltage(j, index))
            : Sample(timesSeconds, _ => null);
    }

    /// <summary>The current into a capacitor's first terminal, sampled over one period, in amperes (A).</summary>
    /// <param name="capacitor">The capacitor's name.</param>
    /// <param name="timesSeconds">Times in seconds (s) from the start of phase 1; taken modulo the period. On the boundary of two phases the later one counts.</param>
    /// <exception cref="ArgumentException">No such capacitor, or a time that is not finite.</exception>
    public double[] SampleCapacitorCurrent(string capacitor, IReadOnlyList<double> timesSeconds)
    {
        int index = Converter.Capacitors.PositionOf(capacitor);
        return Determined(Sample(timesSeconds, j => Signals.CapacitorCurrent(j, index)));
    }

    /// <summary>The current through a switch from its first terminal to its second, sampled over one period, in amperes (A).</summary>
    /// <param name="switch">The switch's name.</param>
    /// <param name="timesSeconds">Times in seconds (s) from the start of phase 1; taken modulo the period. On the boundary of two phases the later one counts.</param>
    /// <exception cref="ArgumentException">No such switch, or a time that is not finite.</exception>
    public double[] SampleSwitchCurrent(string @switch, IReadOnlyList<double> timesSeconds)
    {
        int index = Converter.Switches.PositionOf(@switch);
        return [.. Sample(timesSeconds, j => Signals.SwitchCurrent(j, index)).Select(i => i ?? 0)];
    }

    /// <summary>The voltage across a switch, first terminal minus second, sampled over one period, in volts (V).</summary>
    /// <param name="switch">The switch's name.</param>
    /// <param name="timesSeconds">Times in seconds (s) from the start of phase 1; taken modulo the period.</param>
    /// <returns>
    /// One value per time; null in a phase in which nothing fixes the voltage across the open switch: a side of it
    /// floats, or is connected to a capacitor whose own voltage is not determined.
    /// </returns>
    /// <exception cref="ArgumentException">No such switch, or a time is not finite.</exception>
    public double?[] SampleSwitchVoltage(string @switch, IReadOnlyList<double> timesSeconds)
    {
        int index = Converter.Switches.PositionOf(@switch);
        return Sample(timesSeconds, j => _known.AcrossSwitch(index, j)
            ? Signals.SwitchVoltage(j, index)
            : null);
    }

    /// <summary>The current through an inductor from its first terminal to its second, sampled over one period, in amperes (A).</summary>
    /// <param name="inductor">The inductor's name.</param>
    /// <param name="timesSeconds">Times in seconds (s) from the start of phase 1; taken modulo the period.</param>
    /// <exception cref="ArgumentException">No such inductor, or a time that is not finite.</exception>
    public double[] SampleInductorCurrent(string inductor, IReadOnlyList<double> timesSeconds)
    {
        int index = Converter.Inductors.PositionOf(inductor);
        return Determined(Sample(timesSeconds, j => Signals.InductorCurrent(j, index)));
    }

    /// <summary>The current out of the input source, sampled over one period, in amperes (A).</summary>
    /// <param name="timesSeconds">Times in seconds (s) from the start of phase 1; taken modulo the period. On the boundary of two phases the later one counts.</param>
    /// <exception cref="ArgumentException">A time is not finite.</exception>
    public double[] SampleInputCurrent(IReadOnlyList<double> timesSeconds) => Determined(Sample(timesSeconds, Signals.InputCurrent));

    /// <summary>The potential of a node against the reference, sampled over one period, in volts (V).</summary>
    /// <param name="node">The node's name.</param>
    /// <param name="timesSeconds">Times in seconds (s) from the start of phase 1; taken modulo the period. On the boundary of two phases the later one counts.</param>
    /// <returns>One value per time; null in a phase in which the node floats or is connected to a capacitor whose voltage is not determined.</returns>
    /// <exception cref="ArgumentException">No such node, or a time that is not finite.</exception>
    public double?[] SampleNodePotential(string node, IReadOnlyList<double> timesSeconds)
    {
        int index = Converter.Nodes.PositionOf(node);
        return Sample(timesSeconds, j => _known.OfNode(index, j) ? Signals.Potential(j, node) : null);
    }

    /// <summary>The operating point, the output voltage and the powers.</summary>
    public override string ToString() =>
        $"{Converter.Name}, mode {Mode}, {Point}: {UnitText.Of(AverageOutputVoltageVolts, "V")} output, {UnitText.Of(InputPowerWatts, "W")} in, {UnitText.Of(OutputPowerWatts, "W")} out";

    internal IPeriodicSignals Signals => _signals.Value;

    /// <summary>Whether a switch is closed in a phase, from 0, or in a stretch into which events divide phases.</summary>
    internal bool IsClosed(int stretch, int @switch) => _closed[stretch][@switch];

    /// <summary>The voltage across a switch there; null where nothing fixes it.</summary>
    internal PhaseWaveform? AcrossSwitch(int stretch, int @switch) => _known.AcrossSwitch(@switch, stretch) ? Signals.SwitchVoltage(stretch, @switch) : null;

    /// <summary>The potential of a node there; null where nothing fixes it.</summary>
    internal PhaseWaveform? OfNode(int stretch, int node) => _known.OfNode(node, stretch) ? Signals.Potential(stretch, Converter.Nodes[node]) : null;

    private ElementOperations Operations => new(Converter, Signals, _known, _closed, Point.FrequencyHz);

    private static double? RatioOf(ModeAnalysis analysis) => analysis.Ratio.IsDetermined ? analysis.Ratio.ToDouble() : null;

    // phases, or the stretches into which events divide them
    private IEnumerable<int> Phases() => Enumerable.Range(0, _closed.Length);

    private double PeakToPeak(Func<int, PhaseWaveform> waveform) => WaveformRange.PeakToPeak(Phases().Select(waveform));

    private double?[] Sample(IReadOnlyList<double> times, Func<int, PhaseWaveform?> waveform) => new PeriodSamples(Signals.Durations, Point.FrequencyHz).Of(times, waveform);

    private static double[] Determined(double?[] values) => [.. values.Select(v => v!.Value)];
}
