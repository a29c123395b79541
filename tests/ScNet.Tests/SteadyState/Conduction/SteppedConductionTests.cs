using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>
/// A step-down stage with losses and its output capacitor, integrated in small steps with an ideal diode that blocks once
/// the current is zero, from the state that was found: it returns after a period, and the current ends when it was said to.
/// </summary>
public sealed class SteppedConductionTests
{
    private const double Ohms = 0.05;
    private const double Esr = 2e-3;
    private const double Duty = 0.3;
    private const double Frequency = 2e5;
    private const int Steps = 40_000;

    [Theory]
    [InlineData(0.3, 1e-4)]
    [InlineData(0.02, 1e-6)]
    [InlineData(1.5, 3e-6)]
    public void The_state_found_returns(double load, double farads)
    {
        ConductionPoint point = ConductionModel.Of(Stages.StepDown(new(3, 10), Ohms, LoadKind.Current, farads)).At(new OperatingPoint(10, load, Frequency));
        Assert.True(point.IsDiscontinuous);
        double start = point.Steady.SampleCapacitorVoltage("out", [0])[0]!.Value;
        (double volts, double end, double average, double peak) = Integrate(start, load, farads);
        Assert.Equal(start, volts, 1e-9);
        Assert.Equal(end, point.ConductingShares[1], 1e-8);
        Assert.Equal(average, point.AverageOutputVoltageVolts, 1e-6);
        Assert.Equal(peak, point.Steady.Inductors["coil"].PeakCurrentAmperes, 1e-6);
    }

    [Fact]
    public void Another_state_does_not_return()
    {
        ConductionPoint point = ConductionModel.Of(Stages.StepDown(new(3, 10), Ohms, LoadKind.Current, 1e-6)).At(new OperatingPoint(10, 0.3, Frequency));
        double start = point.Steady.SampleCapacitorVoltage("out", [0])[0]!.Value + 0.01;
        Assert.NotEqual(start, Integrate(start, 0.3, 1e-6).Volts, 1e-4);
    }

    // classical Runge-Kutta; the end of the current inside a step by a straight line and shorter steps
    private static (double Volts, double End, double Average, double Peak) Integrate(double volts, double load, double farads)
    {
        double current = 0, time = 0, end = 1, sum = 0, peak = 0, step = 1 / Frequency / Steps;
        for (int k = 0; k < Steps; k++)
        {
            bool isOn = k < (int)Math.Round(Duty * Steps), isOff = !isOn && end < 1;
            (double i, double v) = isOff ? (0, volts - (load * step / farads)) : Step(current, volts, step, isOn);
            if (!isOn && !isOff && i < 0)
            {
                double low = 0, high = step;
                for (int halving = 0; halving < 60; halving++)
                {
                    double middle = 0.5 * (low + high);
                    (low, high) = Step(current, volts, middle, isOn).Current > 0 ? (middle, high) : (low, middle);
                }

                end = ((time + low) * Frequency) - Duty;
                (i, v) = (0, Step(current, volts, low, isOn).Volts - (load * (step - low) / farads));
            }

            sum += 0.5 * (volts + v + (Esr * (current + i - (2 * load)))) / Steps;
            (current, volts, peak) = (i, v, Math.Max(peak, i));
            time += step;
        }

        return (volts, end, sum, peak);

        (double Current, double Volts) Step(double i, double v, double h, bool isOn)
        {
            (double i1, double v1) = Slope(i, v, isOn);
            (double i2, double v2) = Slope(i + (0.5 * h * i1), v + (0.5 * h * v1), isOn);
            (double i3, double v3) = Slope(i + (0.5 * h * i2), v + (0.5 * h * v2), isOn);
            (double i4, double v4) = Slope(i + (h * i3), v + (h * v3), isOn);
            return (i + (h / 6 * (i1 + (2 * i2) + (2 * i3) + i4)), v + (h / 6 * (v1 + (2 * v2) + (2 * v3) + v4)));
        }

        (double Current, double Volts) Slope(double i, double v, bool isOn) =>
            (((isOn ? 10 : 0) - ((isOn ? 2 : 3) * Ohms * i) - v - (Esr * (i - load))) / Stages.Henries, (i - load) / farads);
    }
}
