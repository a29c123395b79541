using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>What the elements lose is what goes in and does not come out.</summary>
public sealed class ConductionEnergyTests
{
    private static IReadOnlyDictionary<string, Func<Converter>> Converters { get; } = new Dictionary<string, Func<Converter>>
    {
        ["step-down"] = () => Stages.StepDown(new(3, 10), 0.02),
        ["step-down with its output capacitor"] = () => Stages.StepDown(new(3, 10), 0.02, LoadKind.Current, 2e-6),
        ["step-up"] = () => Stages.StepUp(new(3, 10), 0.02, LoadKind.Current, 2e-6),
        ["inverting"] = () => Stages.Inverting(new(3, 10), 0.02),
        ["three-level"] = () => Stages.ThreeLevel(0.02),
        ["dead times"] = () => Stages.WithDeadTimes(0.02),
        ["dead times with an output capacitor"] = () => Stages.WithDeadTimes(0.02, load: LoadKind.Current),
    };

    public static TheoryData<string> Names => [.. Converters.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Losses_of_the_elements_add_up_to_input_less_output_power(string name)
    {
        Converter converter = Converters[name]();
        foreach (double load in (double[])[0.003, 0.2, 1, 6])
        {
            ConductionPoint point = ConductionModel.Of(converter).At(new OperatingPoint(5, name == "inverting" ? -load : load, 8e5));
            PeriodicSteadyState steady = point.Steady;
            double elements = OperatedConverters.ElementDissipationWatts(steady) + point.Diodes.Sum(d => d.DissipationWatts);
            double scale = Math.Abs(steady.InputPowerWatts) + Math.Abs(steady.OutputPowerWatts);
            Assert.Equal(steady.InputPowerWatts - steady.OutputPowerWatts, elements, 1e-10 * scale);
            Assert.Equal(point.DissipationWatts, elements, 1e-10 * scale);
        }
    }
}
