using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>
/// Inductive stages against the results of textbooks: R. W. Erickson and D. Maksimović, Fundamentals of Power
/// Electronics, chapters 2 and 3 (from memory), and closed forms derived here.
/// </summary>
public sealed class TextbookTests
{
    [Theory]
    [InlineData(0.1, LoadKind.Stiff)]
    [InlineData(0.25, LoadKind.Current)]
    [InlineData(0.8, LoadKind.Stiff)]
    public void The_step_down_stage_gives_the_duty_and_loses_in_its_resistances(double duty, LoadKind load)
    {
        // equal switches: M = D, R = R_on + R_winding
        PeriodFigures found = CircuitTwoPort.Find(StepDown(duty, load, 0.01, 0.01, 0.02), 1e6);
        Assert.Equal(duty, found.Ratios.Voltage, 1e-12);
        Assert.Equal(duty, found.Ratios.Current, 1e-12);
        Assert.Equal(0.03, found.Ohms, 1e-12);
    }

    /// <summary>Inductor and resistances as one exponential: a square wave of one volt through L and R, in closed form.</summary>
    [Theory]
    [InlineData(0.25, 1e3)]
    [InlineData(0.5, 1e5)]
    [InlineData(0.9, 3e5)]
    public void The_open_step_down_stage_draws_what_its_ripple_loses(double duty, double frequencyHz)
    {
        const double Henries = 1e-6, Ohms = 0.03;
        double period = 1 / frequencyHz, rate = Ohms / Henries;

        // i(t) = (1 - D)/R + a exp(-rate t) while on, -D/R + b exp(-rate t) while off; its average is zero
        double on = Math.Exp(-rate * duty * period), off = Math.Exp(-rate * (1 - duty) * period);
        double a = -(1 - off) / (1 - (on * off)) / Ohms;
        double siemens = duty * ((1 - duty) / Ohms) + (frequencyHz * a * (1 - on) / rate);
        PeriodFigures found = CircuitTwoPort.Find(StepDown(duty, LoadKind.Stiff, 0.01, 0.01, 0.02), frequencyHz);
        Assert.Equal(siemens, found.Ratios.InputSiemens, 1e-8 * siemens);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.75)]
    public void The_step_up_stage_multiplies_by_the_inverse_of_the_rest_and_its_winding_by_the_square(double duty)
    {
        // at a high frequency: M = 1/D', R = (R_winding + R_on)/D'^2 with equal switches and an output that holds
        double rest = 1 - duty;
        Circuit circuit = new Circuit(LoadKind.Stiff, duty, rest).Inductor("vin", "x", 1e-3, 0.02)
            .Switch("x", Converter.ReferenceNode, 0.01, 1).Switch("x", "vout", 0.01, 2);
        PeriodFigures found = CircuitTwoPort.Find(circuit, 1e6);
        Assert.Equal(1 / rest, found.Ratios.Voltage, 1e-8);
        Assert.Equal(0.03 / (rest * rest), found.Ohms, 1e-8);
        Assert.True(found.Ratios.InputSiemens < 1e-6);
    }

    [Fact]
    public void The_inverting_stage_gives_minus_the_quotient_of_the_duties()
    {
        Circuit circuit = new Circuit(LoadKind.Stiff, 0.4, 0.6).Inductor("x", Converter.ReferenceNode, 1e-3, 0.02)
            .Switch("vin", "x", 0.01, 1).Switch("x", "vout", 0.01, 2);
        PeriodFigures found = CircuitTwoPort.Find(circuit, 1e6);
        Assert.Equal(-0.4 / 0.6, found.Ratios.Voltage, 1e-8);
        Assert.Equal(0.03 / 0.36, found.Ohms, 1e-8);
    }

    /// <summary>By symmetry: common practice, no source. Ripple leaves this voltage to the losses.</summary>
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.7)]
    public void The_three_level_stage_balances_its_capacitor_at_one_half(double duty)
    {
        Circuit circuit = Hybrids.ThreeLevel(duty, farads: 1e-4);
        PeriodFigures found = CircuitTwoPort.Find(circuit, 1e6);
        Assert.Equal(duty, found.Ratios.Voltage, 1e-5);
        Assert.Equal(0.5, Hybrids.OpenVoltage(circuit, found, capacitor: 0), 1e-9);
        Assert.InRange(SlowestDecay.Of([.. found.Inverse], 2).Periods, 1, 1e9);
    }

    /// <summary>Two thirds and one third in the usual order of the phases (common practice, no source), up to the losses.</summary>
    [Fact]
    public void The_four_level_stage_balances_its_capacitors_at_two_thirds_and_one_third()
    {
        Circuit circuit = Hybrids.FourLevel(0.2, farads: 1e-4, ohms: 1e-4);
        PeriodFigures found = CircuitTwoPort.Find(circuit, 1e6);
        Assert.Equal(0.2, found.Ratios.Voltage, 1e-5);
        Assert.Equal(2.0 / 3, Hybrids.OpenVoltage(circuit, found, 0), 1e-5);
        Assert.Equal(1.0 / 3, Hybrids.OpenVoltage(circuit, found, 1), 1e-5);
    }

    /// <summary>3 % of bottom plate on 1 nF, switches of 2 Ω, 10 MHz: figures of a separate program, all given digits.</summary>
    [Fact]
    public void A_bottom_plate_takes_from_the_half()
    {
        PeriodFigures found = CircuitTwoPort.Find(Hybrids.HalfWithPlate(), 1e7);
        Assert.Equal(0.49628, found.Ratios.Voltage, 5e-6);
        Assert.Equal(24.814, found.Ohms, 5e-4);
        Assert.Equal(74.44e-6, found.Ratios.InputSiemens, 5e-9);
    }

    /// <summary>Nothing but a lossless resonance and one switch resistance far away from it: still periodic and lossless where it must be.</summary>
    [Fact]
    public void Ringing_without_damping_has_a_periodic_state()
    {
        // 100 cycles per phase of an inductor and a capacitor that only one phase's resistance damps
        Circuit circuit = new Circuit(LoadKind.Current, 0.5, 0.5).Inductor("x", "vout", 1e-6).Capacitor("vout", Converter.ReferenceNode, 1e-10)
            .Capacitor("x", Converter.ReferenceNode, 1e-12).Switch("vin", "x", 1, 1).Switch("x", Converter.ReferenceNode, 1, 2);
        PeriodFigures found = CircuitTwoPort.Find(circuit, 31_415.9);
        Assert.Equal(0.5, found.Ratios.Voltage, 1e-9);
        Assert.Equal(1, found.Ohms, 1e-9);
        Assert.True(found.RelativeError < 1e-11);
    }

    [Fact]
    public void An_inductor_without_a_path_is_a_fault_of_its_phase_and_a_capacitance_is_a_path()
    {
        Circuit open = new Circuit(LoadKind.Stiff, 0.25, 0.75).Inductor("x", "vout", 1e-6, 0.02).Switch("vin", "x", 0.01, 1);
        Assert.Equal((NetworkFault.InductorWithoutPath, 1), (open.Structure().Fault, open.Structure().FaultPhase));
        Assert.Equal(NetworkFault.None, open.Capacitor("x", Converter.ReferenceNode, 1e-12).Structure().Fault);
    }

    [Fact]
    public void An_inductor_across_the_input_is_a_fault() => Assert.Equal(
        NetworkFault.InductorAcrossSources,
        StepDown(0.5, LoadKind.Stiff, 1, 1, 0).Inductor("vin", Converter.ReferenceNode, 1).Structure().Fault);

    /// <summary>Two inductors in series act as their sum, whatever the division.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(1e-6)]
    public void Inductors_in_series_are_one(double share)
    {
        Circuit two = new Circuit(LoadKind.Stiff, 0.3, 0.7).Inductor("x", "y", 1e-6 * share, 0.02 * share).Inductor("vout", "y", 1e-6 * (1 - share), 0.02 * (1 - share))
            .Switch("vin", "x", 0.03, 1).Switch("x", Converter.ReferenceNode, 0.01, 2);
        PeriodFigures expected = CircuitTwoPort.Find(StepDown(0.3, LoadKind.Stiff, 0.03, 0.01, 0.02), 1e5), actual = CircuitTwoPort.Find(two, 1e5);
        Assert.Equal(expected.Ohms, actual.Ohms, 1e-12);
        Assert.Equal(expected.Ratios.Voltage, actual.Ratios.Voltage, 1e-12);
        Assert.Equal(expected.Ratios.InputSiemens, actual.Ratios.InputSiemens, 1e-11 * expected.Ratios.InputSiemens);
    }

    private static Circuit StepDown(double duty, LoadKind load, double highOhms, double lowOhms, double windingOhms) =>
        new Circuit(load, duty, 1 - duty).Inductor("x", "vout", 1e-6, windingOhms)
            .Switch("vin", "x", highOhms, 1).Switch("x", Converter.ReferenceNode, lowOhms, 2);
}
