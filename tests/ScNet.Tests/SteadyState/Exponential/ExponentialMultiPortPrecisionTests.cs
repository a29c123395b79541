using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Which precision several outputs are solved in, and where there are no figures.</summary>
public sealed class ExponentialMultiPortPrecisionTests
{
    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void Plain_precision_is_kept_where_its_error_is_small(LoadKind load) =>
        Assert.InRange(Of(Tee(load)).At(1e3).RelativeError, 1e-16, PeriodSolver.WantedError);

    /// <summary>With a capacitor of 10¹² time constants in a period beside another plain rounding could move some thousandths.</summary>
    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void Doubled_precision_is_taken_where_it_is_not(LoadKind load)
    {
        MultiPortValues found = Of(Tee(load).Capacitor("store", "a", "gnd", 1).Switch("tap", "vin", "y", on: [1, 2]).Capacitor("tiny", "y", "gnd", 1e-12)).At(1);
        Assert.InRange(found.RelativeError, 1e-22, 1e-15);
        Assert.Equal(0.25, found.InputSiemens, 1e-15);
    }

    /// <summary>In no time nothing moves, so whatever charge there is returns.</summary>
    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void A_period_of_no_time_returns_every_charge(LoadKind load) =>
        Refuses(Of(Tee(load).Capacitor("store", "a", "gnd", 1e-6)), double.PositiveInfinity, "A disturbance returns unchanged after every period");

    /// <summary>No charge in no time is no average.</summary>
    [Fact]
    public void Figures_that_are_no_numbers_are_refused() =>
        Refuses(Of(Tee(LoadKind.Current)), double.PositiveInfinity, "A disturbance returns unchanged after every period");

    [Fact]
    public void An_output_that_nothing_but_its_capacitor_meets_takes_no_average_current() => Refuses(
        Of(Converter.Create("alone").Input("vin").Output("vout").Switch("in", "vin", "a", on: [1, 2]).Switch("shunt", "a", "gnd", on: [1, 2])
            .Capacitor("hold", "vout", "gnd", 1e-6).FurtherOutput("side", "a")),
        1e3,
        "No average current passes between the stiff output and the network");

    // 1 Ω to a, from there 3 Ω to the reference and 2 Ω to the output
    private static ConverterBuilder Tee(LoadKind load) => Converter.Create("tee").Input("vin").Output("vout", load)
        .Switch("in", "vin", "a", on: [1, 2]).Switch("shunt", "a", "gnd", on: [1, 2], ohms: 3).Switch("out", "a", "vout", on: [1, 2], ohms: 2)
        .FurtherOutput("side", "a");

    private static ExponentialMultiPort Of(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return ExponentialMultiPort.Of(converter, converter.Modes[0]);
    }

    private static void Refuses(ExponentialMultiPort method, double frequencyHz, string beginning)
    {
        Diagnostic found = Assert.Single(Assert.Throws<ScNetException>(() => method.At(frequencyHz)).Diagnostics);
        Assert.StartsWith(beginning, found.Message, StringComparison.Ordinal);
        Assert.Null(found.Phase);
    }
}
