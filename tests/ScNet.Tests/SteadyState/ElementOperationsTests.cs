using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Straight waveforms in two phases of 0.2 s and 0.3 s: means (a + b)/2, integrals of the square (a² + ab + b²)/3 · time.</summary>
public sealed class ElementOperationsTests
{
    private const double Hertz = 2;

    private static readonly Converter s_converter = Converter.Create("plates").Input("vin").Output("vout").Duties(0.4, 0.6)
        .Capacitor("none", "a", "b", 2, esrOhms: 0.5)
        .Capacitor("both", "a", "b", 3, plates: new(BottomFarads: 0.1, TopFarads: 0.2))
        .Capacitor("top", "a", "b", 4, plates: new(TopFarads: 0.3))
        .Capacitor("bottom", "a", "b", 5, plates: new(BottomFarads: 0.4))
        .Inductor("coil", "b", "vout", 1, 0.25)
        .Switch("s1", "vin", "a", on: 1, ohms: 3).Switch("s2", "a", Converter.ReferenceNode, on: 2, ohms: 4).Build();

    [Fact]
    public void A_switch_carries_its_current_while_closed_and_blocks_while_open()
    {
        // through it 1 A to 4 A in phase 1: 21/3 · 0.2 s, at 2 Hz; across it −5 V to 2 V in phase 2
        SwitchOperation first = Of(new Signals { Switch = (phase, _) => phase == 0 ? new Line(1, 4, 0.2) : null, Across = (_, _) => new Line(-5, 2, 0.3) }).OfSwitch(0);
        Assert.Same(s_converter.Switches[0], first.Switch);
        Assert.Equal(Math.Sqrt(2.8), first.RmsCurrentAmperes, 1e-15);
        Assert.Equal(4, first.PeakCurrentAmperes);
        Assert.Equal(2.8 * 3, first.DissipationWatts, 1e-14);
        Assert.Equal(new Interval<double>(-5, 2), first.BlockingVolts);
        Assert.Equal(new Interval<double>(-5, 2), first.BlockingWhereDeterminedVolts);
    }

    [Fact]
    public void A_voltage_that_one_open_phase_leaves_open_is_known_where_the_other_fixes_it()
    {
        Signals signals = new() { Across = (phase, _) => phase == 0 ? new Line(-1, 2, 0.2) : throw new InvalidOperationException() };
        SwitchOperation found = Of(signals, closed: [[false, false], [false, false]], known: phase => phase == 0).OfSwitch(1);
        Assert.Equal(default, found.BlockingVolts);
        Assert.Equal(new Interval<double>(-1, 2), found.BlockingWhereDeterminedVolts);
        Assert.Equal((0, 0), (found.RmsCurrentAmperes, found.PeakCurrentAmperes));
    }

    [Fact]
    public void Open_phases_are_taken_together_and_a_switch_that_is_never_open_blocks_nothing()
    {
        Signals signals = new() { Across = (phase, _) => phase == 0 ? new Line(-1, 2, 0.2) : new Line(1, 3, 0.3) };
        SwitchOperation open = Of(signals, closed: [[false, false], [false, false]]).OfSwitch(1);
        Assert.Equal(new Interval<double>(-1, 3), open.BlockingVolts);
        SwitchOperation closed = Of(signals, closed: [[true, true], [true, true]]).OfSwitch(1);
        Assert.Equal(default, closed.BlockingVolts);
        Assert.Equal(default, closed.BlockingWhereDeterminedVolts);
    }

    [Fact]
    public void A_capacitor_has_the_figures_of_its_current_and_voltage()
    {
        CapacitorOperation found = Of(new Signals
        {
            Capacitor = (phase, _) => phase == 0 ? new Line(3, 0, 0.2) : new Line(-2, -2, 0.3),
            CapacitorVolts = (phase, _) => phase == 0 ? new Line(1, 3, 0.2) : new Line(3, 2, 0.3),
        }).OfCapacitor(0);

        // currents: 9/3 · 0.2 + 4 · 0.3; voltages: 2 · 0.2 + 2.5 · 0.3, changes 2 and −1
        Assert.Equal(Math.Sqrt(3.6), found.RmsCurrentAmperes, 1e-14);
        Assert.Equal(3, found.PeakCurrentAmperes);
        Assert.Equal(3.6 * 0.5, found.DissipationWatts, 1e-14);
        Assert.Equal(2.3, found.AverageVoltageVolts!.Value, 1e-14);
        Assert.Equal(2, found.RippleVolts, 1e-15);
        Assert.Equal(0.5 * 2 * 2 * (4 + 1), found.ChargingWatts, 1e-14);
        Assert.Null(found.BottomPlate);
        Assert.Null(found.TopPlate);
    }

    [Fact]
    public void A_voltage_that_nothing_fixes_has_no_average_and_no_resistance_loses_nothing()
    {
        CapacitorOperation found = Of(new Signals { Capacitor = (_, _) => new Line(1e200, 1e200, 0.2) }, capacitorKnown: false).OfCapacitor(2);
        Assert.Null(found.AverageVoltageVolts);
        Assert.Equal(double.PositiveInfinity, found.RmsCurrentAmperes);
        Assert.Equal(0, found.DissipationWatts);
    }

    [Fact]
    public void Each_plate_has_its_own_parasitic_capacitance()
    {
        ElementOperations elements = Of(new Signals());
        CapacitorOperation[] found = [.. Enumerable.Range(0, 4).Select(elements.OfCapacitor)];
        Assert.Equal([null, 0.1, null, 0.4], found.Select(c => c.BottomPlate?.Farads));
        Assert.Equal([null, 0.2, 0.3, null], found.Select(c => c.TopPlate?.Farads));
    }

    [Fact]
    public void A_parasitic_capacitance_has_the_figures_of_its_current_and_voltage()
    {
        ParasiticOperation found = Of(new Signals
        {
            Parasitic = (phase, _) => phase == 0 ? new Line(3, 0, 0.2) : new Line(-2, -2, 0.3),
            ParasiticVolts = (phase, _) => phase == 0 ? new Line(1, 3, 0.2) : new Line(3, 2, 0.3),
        }).OfParasitic(3);
        Assert.Equal(0.4, found.Farads);
        Assert.Equal(2, found.SwingVolts, 1e-15);
        Assert.Equal(Math.Sqrt(3.6), found.RmsCurrentAmperes, 1e-14);
        Assert.Equal(0.5 * 2 * 0.4 * 5, found.ChargingWatts, 1e-14);
    }

    [Fact]
    public void An_inductor_has_the_figures_of_its_current()
    {
        // 1 A to 4 A and back: 7 · 0.5 s, a mean of 2.5 A over 0.5 s, all at 2 Hz
        InductorOperation found = Of(new Signals { Inductor = (phase, _) => phase == 0 ? new Line(1, 4, 0.2) : new Line(4, 1, 0.3) }).OfInductor(0);
        Assert.Same(s_converter.Inductors[0], found.Inductor);
        Assert.Equal(Math.Sqrt(7), found.RmsCurrentAmperes, 1e-14);
        Assert.Equal(2.5, found.AverageCurrentAmperes, 1e-14);
        Assert.Equal(3, found.RippleAmperes, 1e-15);
        Assert.Equal(4, found.PeakCurrentAmperes);
        Assert.Equal(7 * 0.25, found.DissipationWatts, 1e-14);
    }

    private static ElementOperations Of(Signals signals, bool[][]? closed = null, Func<int, bool>? known = null, bool capacitorKnown = true) => new(
        s_converter,
        signals,
        KnownPotentials.Of(_ => capacitorKnown, (_, _) => true, (_, phase) => known?.Invoke(phase) ?? true),
        closed ?? [[true, false], [false, true]],
        Hertz);

    // from one value to another
    private sealed class Line(double from, double to, double seconds) : PhaseWaveform
    {
        public override double Change => to - from;

        public override double Mean() => (from + to) / 2;

        public override double SquareIntegral() => ((from * from) + (from * to) + (to * to)) / 3 * seconds;

        public override double At(double time) => from + ((to - from) * time / seconds);

        public override (double Least, double Greatest) Extremes() => (Math.Min(from, to), Math.Max(from, to));
    }

    private sealed class Signals : IPeriodicSignals
    {
        public Func<int, int, PhaseWaveform?> Switch { get; init; } = (_, _) => null;

        public Func<int, int, PhaseWaveform> Across { get; init; } = (_, _) => new Line(0, 0, 1);

        public Func<int, int, PhaseWaveform> Capacitor { get; init; } = (_, _) => new Line(0, 0, 1);

        public Func<int, int, PhaseWaveform> CapacitorVolts { get; init; } = (_, _) => new Line(0, 0, 1);

        public Func<int, int, PhaseWaveform> Inductor { get; init; } = (_, _) => new Line(0, 0, 1);

        public Func<int, int, PhaseWaveform> Parasitic { get; init; } = (_, _) => new Line(0, 0, 1);

        public Func<int, int, PhaseWaveform> ParasiticVolts { get; init; } = (_, _) => new Line(0, 0, 1);

        public double[] Durations { get; } = [0.2, 0.3];

        public PhaseWaveform? SwitchCurrent(int phase, int index) => Switch(phase, index);

        public PhaseWaveform CapacitorCurrent(int phase, int index) => Capacitor(phase, index);

        public PhaseWaveform CapacitorVoltage(int phase, int index) => CapacitorVolts(phase, index);

        public PhaseWaveform InductorCurrent(int phase, int index) => Inductor(phase, index);

        public double ParasiticFarads(int index) => new[] { 0.1, 0.2, 0.3, 0.4 }[index];

        public PhaseWaveform ParasiticCurrent(int phase, int index) => Parasitic(phase, index);

        public PhaseWaveform ParasiticVoltage(int phase, int index) => ParasiticVolts(phase, index);

        public PhaseWaveform SwitchVoltage(int phase, int index) => Across(phase, index);

        public PhaseWaveform InputCurrent(int phase) => throw new NotSupportedException();

        public PhaseWaveform Potential(int phase, string node) => throw new NotSupportedException();
    }
}
