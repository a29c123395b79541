using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>A voltage wanted that is, to the last digit, the one at the frequency that sets the on-times, or with half or twice the rest.</summary>
public sealed class ReferenceFrequencyTests
{
    private const double Frequency = 1 << 20;

    [Theory]
    [InlineData(0.1, 0.75)]
    [InlineData(0.2, 0.75)]
    [InlineData(5, 0.75)]
    [InlineData(0.1, 1.5)]
    [InlineData(0.1, 0.375)]
    public void The_frequency_is_the_one_of_these_times(double load, double rest)
    {
        Converter stage = Stages.StepDown(new(1, 4), 0.01, LoadKind.Current);
        double volts = new ConductionSolver(stage, stage.Modes[0], 10, load).Solve([0.25 / Frequency, rest / Frequency]).Period.OutputVolts;
        ConductionPoint point = ConductionModel.Of(stage).AtOutputVoltage(10, load, volts, Frequency);
        double expected = Frequency / (0.25 + rest);
        Assert.Equal(expected, point.Point.FrequencyHz, 1e-12 * expected);
        Assert.Equal(volts, point.AverageOutputVoltageVolts, 1e-12 * volts);
    }
}
