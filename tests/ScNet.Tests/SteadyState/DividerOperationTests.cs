using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>The 2:1 divider, worked out by hand: one exponential per phase.</summary>
public sealed class DividerOperationTests
{
    private const double InputVolts = 3.6;
    private const double Amperes = 0.08;
    private const double Farads = 2e-9;
    private const double Ohms = 3;
    private const double FrequencyHz = 2e7;
    private const double Tolerance = 1e-12;

    // Two switches in series charge from the input to the output, two discharge into the output.
    private static readonly double s_decay = Math.Exp(-0.5 / FrequencyHz / (2 * Ohms * Farads));
    private static readonly double s_swing = 0.5 * Amperes / FrequencyHz / Farads;
    private static readonly double s_drive = s_swing / (1 - s_decay);
    private static readonly double s_output = (0.5 * InputVolts) - (0.5 * s_swing * (1 + s_decay) / (1 - s_decay));

    private readonly PeriodicSteadyState _steady = Operate(new OperatingPoint(InputVolts, Amperes, FrequencyHz));

    [Fact]
    public void The_output_voltage_and_the_powers_are_those_of_the_hand_derivation()
    {
        Assert.Equal(s_output, _steady.AverageOutputVoltageVolts, Tolerance);
        Assert.Equal(((0.5 * InputVolts) - s_output) / Amperes, _steady.OutputImpedanceOhms, 1e-10);
        Assert.Equal(0.5 * Amperes, _steady.AverageInputCurrentAmperes, Tolerance);
        Assert.Equal(0.5 * Amperes * InputVolts, _steady.InputPowerWatts, Tolerance);
        Assert.Equal(s_output * Amperes, _steady.OutputPowerWatts, Tolerance);
        Assert.Equal(_steady.InputPowerWatts - _steady.OutputPowerWatts, _steady.DissipationWatts, Tolerance);
        Assert.Equal(0, _steady.OutputRippleVolts);
    }

    [Fact]
    public void The_capacitor_swings_between_the_hand_derived_voltages()
    {
        CapacitorOperation fly = Assert.Single(_steady.Capacitors);
        double high = s_output + s_drive, low = high - s_swing;
        double[] ends = _steady.CapacitorVoltage("fly", [0, 0.5 / FrequencyHz, 1 / FrequencyHz]);
        Assert.Equal([low, high, low], ends, (a, b) => Math.Abs(a - b) < Tolerance);
        Assert.Equal(s_swing, fly.RippleVolts, Tolerance);
        Assert.Equal(0.5 * InputVolts, fly.AverageVoltageVolts!.Value, Tolerance);
        Assert.Equal(0, fly.DissipationWatts);
    }

    [Fact]
    public void Peaks_and_effective_currents_are_those_of_an_exponential()
    {
        double peak = s_drive / (2 * Ohms);
        double square = FrequencyHz * peak * peak * Ohms * Farads * (1 - (s_decay * s_decay));
        double[] signs = [1, 1, 1, -1];
        foreach ((SwitchOperation s, double sign) in _steady.Switches.Zip(signs))
        {
            Assert.Equal(sign * peak, s.PeakCurrentAmperes, Tolerance);
            Assert.Equal(Math.Sqrt(square), s.RmsCurrentAmperes, Tolerance);
            Assert.Equal(square * Ohms, s.DissipationWatts, Tolerance);
        }

        CapacitorOperation fly = Assert.Single(_steady.Capacitors);
        Assert.Equal(peak, Math.Abs(fly.PeakCurrentAmperes), Tolerance);
        Assert.Equal(Math.Sqrt(2 * square), fly.RmsCurrentAmperes, Tolerance);
    }

    [Fact]
    public void Blocking_ranges_hold_ripple_load_drop_and_the_drop_across_closed_switches()
    {
        double high = s_output + s_drive, low = high - s_swing;

        // phase 2: the node between two equal resistances lies in the middle of capacitor and output voltage
        AssertRange(InputVolts - (0.5 * (high + s_output)), InputVolts - (0.5 * (low + s_output)), 0);

        // phase 2: the bottom plate lies below the reference by the same drop
        AssertRange((0.5 * (s_output - high)) - s_output, (0.5 * (s_output - low)) - s_output, 1);

        // phase 1: what is left of the input divides equally
        double first = 0.5 * (InputVolts - s_output - low), last = 0.5 * (InputVolts - s_output - high);
        AssertRange(InputVolts - first - s_output, InputVolts - last - s_output, 2);
        AssertRange(s_output + last, s_output + first, 3);
    }

    [Fact]
    public void Without_load_nothing_flows_and_voltages_are_ideal()
    {
        PeriodicSteadyState idle = Operate(new OperatingPoint(InputVolts, 0, FrequencyHz));
        Assert.Equal(0.5 * InputVolts, idle.AverageOutputVoltageVolts, Tolerance);
        Assert.Equal(0, idle.AverageInputCurrentAmperes);
        Assert.Equal(0, idle.DissipationWatts);
        Assert.All(idle.Switches, s => Assert.Equal((0, 0), (s.RmsCurrentAmperes, s.PeakCurrentAmperes)));
        Assert.Equal(0, idle.Capacitors[0].RippleVolts, Tolerance);
        Assert.Equal(0.5 * InputVolts, idle.Capacitors[0].AverageVoltageVolts!.Value, Tolerance);
        Assert.Equal(_steady.OutputImpedanceOhms, idle.OutputImpedanceOhms);
        Assert.Equal(0.5 * InputVolts, idle.Switches[0].BlockingVolts.Maximum!.Value, Tolerance);
    }

    [Fact]
    public void Beyond_overload_the_linear_model_goes_on()
    {
        PeriodicSteadyState overload = Operate(new OperatingPoint(InputVolts, 10 * Amperes, FrequencyHz));
        Assert.Equal((0.5 * InputVolts) - (10 * Amperes * _steady.OutputImpedanceOhms), overload.AverageOutputVoltageVolts, 1e-10);
        Assert.True(overload.AverageOutputVoltageVolts < 0);
        Assert.Equal(overload.InputPowerWatts - overload.OutputPowerWatts, overload.DissipationWatts, 1e-9);
    }

    [Fact]
    public void A_current_in_the_other_direction_mirrors_every_deviation()
    {
        PeriodicSteadyState mirrored = Operate(new OperatingPoint(InputVolts, -Amperes, FrequencyHz));
        Assert.Equal(InputVolts - s_output, mirrored.AverageOutputVoltageVolts, Tolerance);
        Assert.Equal(-_steady.Switches[0].PeakCurrentAmperes, mirrored.Switches[0].PeakCurrentAmperes, Tolerance);
        Assert.Equal(_steady.DissipationWatts, mirrored.DissipationWatts, Tolerance);
    }

    private static PeriodicSteadyState Operate(OperatingPoint point)
    {
        Converter half = OperatedConverters.Half(farads: Farads, ohms: Ohms).Build();
        return PeriodicSteadyState.Of(ModeAnalysis.Of(half, half.Modes[0]), point);
    }

    private void AssertRange(double least, double greatest, int @switch)
    {
        Interval<double> range = _steady.Switches[@switch].BlockingVolts;
        Assert.Equal(least, range.Minimum!.Value, Tolerance);
        Assert.Equal(greatest, range.Maximum!.Value, Tolerance);
    }
}
