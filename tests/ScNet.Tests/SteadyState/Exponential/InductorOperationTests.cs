using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>
/// Converters with inductors at an operating point: energy, laws of current, and ripple as in R. W. Erickson and
/// D. Maksimović, Fundamentals of Power Electronics, chapter 2 (from memory).
/// </summary>
public sealed class InductorOperationTests
{
    public static TheoryData<string> Names => [.. Stages.Keys, .. OperatedConverters.All.Keys];

    private static IReadOnlyDictionary<string, Func<Converter>> Stages { get; } = new Dictionary<string, Func<Converter>>
    {
        ["step-down"] = () => StepDown(LoadKind.Stiff),
        ["step-down with its output capacitor"] = () => StepDown(LoadKind.Current),
        ["step-up with a plate and a series resistance"] = StepUp,
        ["three-level with a junction"] = ThreeLevel,
        ["two inductors in series"] = SeriesInductors,
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void Losses_of_the_elements_add_up_to_input_less_output_power(string name)
    {
        Converter converter = Stages.TryGetValue(name, out Func<Converter>? stage) ? stage() : OperatedConverters.All[name]();
        foreach ((double load, double timesCorner) in (IEnumerable<(double, double)>)[(0.7, 1), (0, 3), (-2, 0.05)])
        {
            PeriodicSteadyState steady = Solve(converter, new OperatingPoint(3, load, Frequency(converter) * timesCorner));
            double elements = OperatedConverters.ElementDissipationWatts(steady);
            double scale = Math.Abs(steady.InputPowerWatts) + Math.Abs(steady.OutputPowerWatts) + 1e-12;
            Assert.Equal(steady.InputPowerWatts - steady.OutputPowerWatts, elements, 1e-10 * scale);
            Assert.Equal(steady.DissipationWatts, elements, 1e-10 * scale);
        }
    }

    /// <summary>Two ways to the same waveforms of networks of resistors and capacitors.</summary>
    [Theory]
    [MemberData(nameof(CapacitiveNames))]
    public void Networks_without_inductors_have_the_waveforms_of_the_modal_method(string name)
    {
        Converter converter = OperatedConverters.All[name]();
        OperatingPoint point = new(5, 0.3, Frequency(converter));
        PeriodicSteadyState modal = PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), point), other = Solve(converter, point);
        double[] times = [.. Enumerable.Range(0, 37).Select(k => (k + 0.37) / 37 / point.FrequencyHz)];
        foreach (string s in converter.Switches.Select(s => s.Name))
        {
            Compare(modal.SampleSwitchCurrent(s, times), other.SampleSwitchCurrent(s, times));
            Compare(modal.SampleSwitchVoltage(s, times), other.SampleSwitchVoltage(s, times));
            Near(modal.Switches[s].RmsCurrentAmperes, other.Switches[s].RmsCurrentAmperes);
            Near(modal.Switches[s].PeakCurrentAmperes, other.Switches[s].PeakCurrentAmperes);
            Near(modal.Switches[s].BlockingVolts.Maximum, other.Switches[s].BlockingVolts.Maximum);
        }

        foreach (string c in converter.Capacitors.Select(c => c.Name))
        {
            Compare(modal.SampleCapacitorVoltage(c, times), other.SampleCapacitorVoltage(c, times));
            Compare(modal.SampleCapacitorCurrent(c, times), other.SampleCapacitorCurrent(c, times));
            Near(modal.Capacitors[c].RippleVolts, other.Capacitors[c].RippleVolts);
            Near(modal.Capacitors[c].AverageVoltageVolts, other.Capacitors[c].AverageVoltageVolts);
        }

        foreach (string node in converter.Nodes)
        {
            Compare(modal.SampleNodePotential(node, times), other.SampleNodePotential(node, times));
        }

        Near(modal.OutputRippleVolts, other.OutputRippleVolts);
    }

    public static TheoryData<string> CapacitiveNames => [.. OperatedConverters.All.Keys];

    [Fact]
    public void The_step_down_stage_has_the_ripple_of_textbooks()
    {
        // with small resistances: dI = (1 - D) V_out / (L f), dV = dI / (8 C f), I_rms² = I² + dI²/12
        const double Load = 2, Frequency = 1e6, Henries = 1e-6, Farads = 1e-5, Duty = 0.25;
        PeriodicSteadyState steady = Solve(StepDown(LoadKind.Current, 1e-6), new OperatingPoint(12, Load, Frequency));
        double ripple = (1 - Duty) * 3 / (Henries * Frequency);
        InductorOperation coil = steady.Inductors["coil"];
        Assert.Equal(Load, coil.AverageCurrentAmperes, 1e-9);
        Assert.Equal(ripple, coil.RippleAmperes, 0.01 * ripple);
        Assert.Equal(ripple / (8 * Farads * Frequency), steady.OutputRippleVolts!.Value, 0.01 * ripple / (8 * Farads * Frequency));
        Assert.Equal(Math.Sqrt((Load * Load) + (ripple * ripple / 12)), coil.RmsCurrentAmperes, 0.01);
        Assert.Equal(Load + (ripple / 2), coil.PeakCurrentAmperes, 0.01);
    }

    [Fact]
    public void The_inductors_current_is_that_of_the_switches()
    {
        PeriodicSteadyState steady = Solve(StepDown(LoadKind.Current), new OperatingPoint(12, 2, 3e5));
        double[] times = [.. Enumerable.Range(0, 50).Select(k => k / 50.3 / 3e5)];
        double[] coil = steady.SampleInductorCurrent("coil", times), high = steady.SampleSwitchCurrent("high", times), low = steady.SampleSwitchCurrent("low", times);
        double[] output = steady.SampleCapacitorCurrent("out", times);
        for (int k = 0; k < times.Length; k++)
        {
            Assert.Equal(coil[k], high[k] - low[k], 1e-12);
            Assert.Equal(coil[k] - 2, output[k], 1e-12);
        }
    }

    /// <summary>An extreme inside a phase: the first peak of a series resonance with known damping.</summary>
    [Fact]
    public void The_peak_of_a_ringing_is_found()
    {
        // off for long: L, C and R from rest at zero after a step of V; the peak is 1 + exp(-π a/w)
        const double L = 1e-6, C = 1e-9, R = 2;
        Converter converter = Converter.Create("ringing").Input("vin").Output("vout", LoadKind.Current)
            .Inductor("coil", "x", "y", L).Capacitor("ring", "y", Converter.ReferenceNode, C).Capacitor("out", "vout", Converter.ReferenceNode, 1)
            .Switch("high", "vin", "x", on: 1, ohms: R).Switch("low", "x", Converter.ReferenceNode, on: 2, ohms: R)
            .Switch("link", "vin", "vout", on: [1, 2]).Build();
        PeriodicSteadyState steady = Solve(converter, new OperatingPoint(1, 0, 1e3));
        double a = R / (2 * L), w = Math.Sqrt((1 / (L * C)) - (a * a)), over = Math.Exp(-Math.PI * a / w);
        Assert.Equal(1 + (2 * over), steady.Capacitors["ring"].RippleVolts, 1e-9);
        Assert.Equal(Math.Exp(-a / w * Math.Atan(w / a)) * Math.Sqrt(C / L), steady.Inductors["coil"].PeakCurrentAmperes, 1e-9);
    }

    private static double Frequency(Converter converter) => converter.Inductors.Count > 0 ? 3e5
        : SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0])).Impedance.CornerFrequencyHz;

    private static PeriodicSteadyState Solve(Converter converter, OperatingPoint point)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        ExponentialTwoPort method = ExponentialTwoPort.Of(converter, converter.Modes[0]);
        return converter.Inductors.Count > 0 ? SteadyStateModel.Of(analysis).At(point)
            : new PeriodicSteadyState(analysis, method.Solver, method.FineAt(point.FrequencyHz), point);
    }

    private static void Compare(double?[] expected, double?[] actual)
    {
        for (int k = 0; k < expected.Length; k++)
        {
            Near(expected[k], actual[k]);
        }
    }

    private static void Compare(double[] expected, double[] actual) =>
        Compare([.. expected.Select(v => (double?)v)], [.. actual.Select(v => (double?)v)]);

    private static void Near(double? expected, double? actual)
    {
        Assert.Equal(expected is null, actual is null);
        Assert.Equal(expected ?? 0, actual ?? 0, 1e-8);
    }

    private static Converter StepDown(LoadKind load, double ohms = 0.01)
    {
        ConverterBuilder builder = Converter.Create("step-down").Input("vin").Output("vout", load).Duties(0.25, 0.75)
            .Inductor("coil", "x", "vout", 1e-6, ohms).Switch("high", "vin", "x", on: 1, ohms).Switch("low", "x", Converter.ReferenceNode, on: 2, 2 * ohms);
        return (load == LoadKind.Stiff ? builder : builder.Capacitor("out", "vout", Converter.ReferenceNode, 1e-5)).Build();
    }

    private static Converter StepUp() => Converter.Create("step-up").Input("vin").Output("vout", LoadKind.Current).Duties(0.4, 0.6)
        .Inductor("coil", "vin", "x", 2e-6, 0.03).Switch("low", "x", Converter.ReferenceNode, on: 1, 0.02).Switch("high", "x", "vout", on: 2, 0.05)
        .Capacitor("out", "vout", Converter.ReferenceNode, 1e-5, 0.004, new CapacitorPlates(1e-9, 2e-9)).Build();

    private static Converter ThreeLevel() => Converter.Create("three-level").Input("vin").Output("vout").Duties(0.2, 0.3, 0.2, 0.3)
        .Capacitor("fly", "a", "b", 1e-5, plates: new CapacitorPlates(1e-8)).Inductor("coil", "x", "vout", 1e-6, 0.02).Parasitic("junction", "x", Converter.ReferenceNode, 1e-10)
        .Switch("s1", "vin", "a", on: 1, 0.01).Switch("s2", "a", "x", on: 3, 0.01).Switch("s3", "x", "b", on: [1, 2, 4], 0.01)
        .Switch("s4", "b", Converter.ReferenceNode, on: [2, 3, 4], 0.01).Build();

    private static Converter SeriesInductors() => Converter.Create("two coils").Input("vin").Output("vout").Duties(0.3, 0.7)
        .Inductor("near", "x", "y", 1e-6, 0.01).Inductor("far", "vout", "y", 3e-6, 0.02)
        .Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", Converter.ReferenceNode, on: 2, 0.01).Build();
}
