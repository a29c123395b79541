using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Several outputs of small networks by hand, and those that are left out.</summary>
public sealed class ExponentialMultiPortTests
{
    private const double Hertz = 1e3;

    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void A_network_of_resistances_alone_has_those_of_its_paths(LoadKind load)
    {
        // 1 Ω to a, from there 3 Ω to the reference and 2 Ω to the output; side lies at a
        Converter converter = Converter.Create("tee").Input("vin").Output("vout", load)
            .Switch("in", "vin", "a", on: [1, 2]).Switch("shunt", "a", "gnd", on: [1, 2], ohms: 3).Switch("out", "a", "vout", on: [1, 2], ohms: 2)
            .FurtherOutput("side", "a").Build();
        ExponentialMultiPort method = ExponentialMultiPort.Of(converter, converter.Modes[0]);
        MultiPortValues found = method.At(Hertz);
        Near([0.75, 0.75], found.Ratios);
        Near([2.75, 0.75, 0.75, 0.75], found.Ohms);
        Near([0.75, 0.75], found.CurrentRatios);
        Assert.Equal(0.25, found.InputSiemens, 1e-12);
        Assert.Equal([0], method.Supplied);
        Assert.Empty(method.Diagnostics);
    }

    [Fact]
    public void An_output_may_lie_across_an_inductor_whose_average_voltage_is_that_of_its_winding()
    {
        // 2 Ω of winding between two switches of 1 Ω: what the output across takes the winding need not carry
        Converter converter = Converter.Create("coil").Input("vin").Output("vout")
            .Switch("near", "vin", "x", on: [1, 2]).Inductor("coil", "x", "y", 1e-3, 2).Switch("far", "y", "vout", on: [1, 2])
            .FurtherOutput("across", "x", "y").Build();
        MultiPortValues found = ExponentialMultiPort.Of(converter, converter.Modes[0]).At(Hertz);
        Near([1, 0], found.Ratios);
        Near([4, -2, -2, 2], found.Ohms);
    }

    [Fact]
    public void An_output_without_a_path_in_a_phase_is_left_out_and_the_others_keep_their_order()
    {
        ExponentialMultiPort method = Of(Bare().Switch("stub", "vin", "z", on: 1)
            .FurtherOutput("first", "a").FurtherOutput("cut", "z").FurtherOutput("last", "a"));
        Assert.Equal([0, 2], method.Supplied);
        Diagnostic found = Assert.Single(method.Diagnostics);
        Assert.Equal((DiagnosticCodes.LoadInterrupted, 2), (found.Code, found.Phase));
        Assert.Equal(["cut"], found.Elements);
        Near([2, 1, 1, 1, 1, 1, 1, 1, 1], method.At(Hertz).Ohms);
    }

    [Fact]
    public void The_first_output_may_be_the_one_that_is_left_out()
    {
        ExponentialMultiPort cut = Of(Bare().Switch("stub", "vin", "z", on: 1).FurtherOutput("cut", "z").FurtherOutput("last", "a"));
        Assert.Equal([1], cut.Supplied);
        Assert.Equal(["cut"], Assert.Single(cut.Diagnostics).Elements);
        ExponentialMultiPort afloat = Of(Bare().Switch("stub", "vin", "p", on: 1).Inductor("coil", "p", "q", 1e-3, 1).FurtherOutput("across", "p", "q"));
        Assert.Empty(afloat.Supplied);
        Assert.Equal(["across"], Assert.Single(afloat.Diagnostics).Elements);
    }

    [Fact]
    public void An_output_that_would_charge_a_capacitor_for_ever_is_left_out()
    {
        ExponentialMultiPort method = Of(Bare().Capacitor("store", "z", "gnd", 1e-6).FurtherOutput("first", "a").FurtherOutput("held", "z"));
        Assert.Equal([0], method.Supplied);
        Diagnostic found = Assert.Single(method.Diagnostics);
        Assert.Equal((DiagnosticCodes.CapacitorUnbalanced, null), (found.Code, found.Phase));
        Assert.Equal(["held"], found.Elements);
    }

    [Fact]
    public void An_output_whose_ends_float_in_a_phase_is_left_out()
    {
        // in phase 2 nothing but the coil meets either end; no current other than the output's can pass it
        ExponentialMultiPort method = Of(Bare().Switch("stub", "vin", "p", on: 1).Inductor("coil", "p", "q", 1e-3, 1)
            .FurtherOutput("first", "a").FurtherOutput("across", "p", "q"));
        Assert.Equal([0], method.Supplied);
        Diagnostic found = Assert.Single(method.Diagnostics);
        Assert.Equal((DiagnosticCodes.LoadInterrupted, null), (found.Code, found.Phase));
        Assert.Equal(["across"], found.Elements);
    }

    [Fact]
    public void Faults_of_the_converter_itself_are_thrown()
    {
        Converter converter = Converter.Create("open").Input("vin").Output("vout").Inductor("coil", "x", "vout", 1e-6, 0.02)
            .Switch("high", "vin", "x", on: 1).FurtherOutput("input", "vin").Build();
        Diagnostic found = Assert.Single(Assert.Throws<ScNetException>(() => ExponentialMultiPort.Of(converter, converter.Modes[0])).Diagnostics);
        Assert.Equal((DiagnosticCodes.NoPeriodicState, 2), (found.Code, found.Phase));
    }

    [Fact]
    public void An_output_behind_a_capacitor_takes_no_average_current()
    {
        ExponentialMultiPort method = Of(Converter.Create("blocked").Input("vin").Output("vout")
            .Switch("in", "vin", "a", on: [1, 2]).Switch("ground", "a", "gnd", on: [1, 2]).Capacitor("block", "a", "vout", 1e-6).FurtherOutput("side", "a"));
        Diagnostic found = Assert.Single(Assert.Throws<ScNetException>(() => method.At(Hertz)).Diagnostics);
        Assert.StartsWith("No average current passes between the stiff output and the network", found.Message, StringComparison.Ordinal);
        Assert.Null(found.Phase);
    }

    private static ConverterBuilder Bare() => Converter.Create("bare").Input("vin").Output("vout")
        .Switch("in", "vin", "a", on: [1, 2]).Switch("out", "a", "vout", on: [1, 2]);

    private static ExponentialMultiPort Of(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return ExponentialMultiPort.Of(converter, converter.Modes[0]);
    }

    private static void Near(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], actual[k], 1e-12);
        }
    }
}
