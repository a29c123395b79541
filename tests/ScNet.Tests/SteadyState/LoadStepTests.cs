using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>Load steps against closed forms and against the periodic steady state that they end in.</summary>
public sealed class LoadStepTests
{
    /// <summary>Behind one resistance and on one capacitor the output falls by ΔI·R·(1 − exp(−t/RC)).</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(2.7)]
    [InlineData(40)]
    public void One_resistance_and_one_capacitor(double timeConstants)
    {
        Converter direct = Converter.Create("direct").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("out", "vout", Converter.ReferenceNode, 2e-9).Switch("s", "vin", "vout", on: PhaseSet.Of(1, 2), 3).Build();
        LoadStep step = LoadStep.Of(Analysed(direct), new OperatingPoint(1, 0.01, 50e6), 0.11, timeConstants * 6e-9);
        Assert.Equal(0.1 * 3 * (1 - Math.Exp(-timeConstants)), step.DroopVolts, 1e-12);
        Assert.Equal(0.3, step.LoadLineDropVolts, 1e-12);
        Assert.Equal(1 - 0.03 - step.DroopVolts, step.LowestVolts, 1e-12);
    }

    /// <summary>A series resistance of the output capacitor drops at once: ΔI · R ∥ ESR.</summary>
    [Fact]
    public void The_series_resistance_of_the_output_capacitor_drops_at_once()
    {
        Converter direct = Converter.Create("direct").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("out", "vout", Converter.ReferenceNode, 1, esrOhms: 1).Switch("s", "vin", "vout", on: PhaseSet.Of(1, 2), 3).Build();
        Assert.Equal(0.075, LoadStep.Of(Analysed(direct), new OperatingPoint(1, 0, 1), 0.1, 1e-9).DroopVolts, 1e-9);
    }

    [Fact]
    public void After_long_it_is_the_lowest_of_the_periodic_state_at_the_larger_load_or_lower()
    {
        Converter converter = Loaded();
        OperatingPoint before = new(3.6, 1e-3, 10e6);
        LoadStep step = LoadStep.Of(Analysed(converter), before, 10e-3, 100e-6);
        PeriodicSteadyState after = PeriodicSteadyState.Of(Analysed(converter), new OperatingPoint(3.6, 10e-3, 10e6));
        double[] times = [.. Enumerable.Range(0, 4000).Select(k => k / 4000.0 / 10e6)];
        double least = after.SampleNodePotential("vout", times).Min()!.Value;
        Assert.Equal(least, step.LowestVolts, 1e-6);
        Assert.Equal(after.OutputImpedanceOhms * 9e-3, step.LoadLineDropVolts, 1e-9);
    }

    [Fact]
    public void A_longer_control_period_droops_no_less_and_a_short_one_by_the_charge_alone()
    {
        Converter converter = Loaded();
        OperatingPoint before = new(3.6, 1e-3, 10e6);
        double last = 0;
        foreach (double period in (double[])[1e-9, 10e-9, 100e-9, 1e-6, 10e-6])
        {
            double droop = LoadStep.Of(Analysed(converter), before, 10e-3, period).DroopVolts;
            Assert.True(droop >= last);
            last = droop;
        }

        // in a nanosecond next to nothing comes through the switches: 9 mA on 4 nF of output capacitor
        LoadStep shortest = LoadStep.Of(Analysed(converter), before, 10e-3, 1e-12);
        Assert.InRange(shortest.DroopVolts, 0, shortest.Before.OutputRippleVolts!.Value + (9e-3 * 1e-12 / 4e-9));
    }

    [Fact]
    public void A_stiff_load_is_refused_and_says_what_to_do()
    {
        Converter stiff = SeriesParallel.StepDown(3);
        ArgumentException fault = Assert.Throws<ArgumentException>(() => LoadStep.Of(Analysed(stiff), new OperatingPoint(3, 0, 1), 1, 1));
        Assert.Contains("Build it with the load current", fault.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => LoadStep.Of(Analysed(Loaded()), new OperatingPoint(3, 1, 1), 0.5, 1));
    }

    private static Converter Loaded() => OperatedConverters.Half(LoadKind.Current, farads: 1e-9, ohms: 2)
        .Capacitor("out", "vout", Converter.ReferenceNode, 4e-9).Build();

    private static ModeAnalysis Analysed(Converter converter) => ModeAnalysis.Of(converter, converter.Modes[0]);
}
