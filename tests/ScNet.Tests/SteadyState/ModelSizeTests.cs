using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Cells that halve the voltage, all on one load current: n cells have 2 n resistances in a phase and n free directions, whose flows
/// take 20 · 4 n · n² multiplications. 4e10 are allowed, so 1500 cells are too many.
/// </summary>
public sealed class ModelSizeTests
{
    [Fact]
    public void Flows_that_are_too_large_are_refused_as_the_model_is_made()
    {
        ModeAnalysis analysis = Cells(1500);
        ScNetException refusal = Assert.Throws<ScNetException>(() => SteadyStateModel.Of(analysis));
        Assert.Equal(DiagnosticCodes.SteadyStateTooLarge, Assert.Single(refusal.Diagnostics).Code);
    }

    // Two capacitors side by side leave charges free, for which three phases need the states of 300 more that lead nowhere, as do 2500
    // switches of every phase: three times 10 · 2500² · 300 multiplications.
    [Fact]
    public void An_impedance_that_is_too_large_is_refused_before_it_is_begun()
    {
        ConverterBuilder builder = Converter.Create("dead ends").Input("vin").Output("vout").Phases(3).Capacitor("one", "p", "n").Capacitor("two", "p", "n")
            .Switch("a", "vin", "p", on: 1).Switch("b", "n", "vout", on: 1).Switch("c", "p", "vout", on: [2, 3]).Switch("d", "n", "gnd", on: [2, 3]);
        for (int k = 0; k < 300; k++)
        {
            builder.Capacitor($"idle{k}", "p", $"x{k}");
        }

        for (int k = 0; k < 2500; k++)
        {
            builder.Switch($"dead{k}", "p", $"y{k}", on: [1, 2, 3]);
        }

        Converter converter = builder.Build();
        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
        ScNetException refusal = Assert.Throws<ScNetException>(() => model.Impedance);
        Diagnostic finding = Assert.Single(refusal.Diagnostics);
        Assert.Equal(DiagnosticCodes.SteadyStateTooLarge, finding.Code);
        Assert.Contains("3 phases with up to 2502 resistances, 302 capacitors and ", finding.Message, StringComparison.Ordinal);
    }

    // 600 capacitors with series resistances that switches join in phase 1 and nothing takes a load from: 1200 and 600 resistors. Their waveforms
    // take 2400 · 1200 · 4900 and 1800 · 600 · 3700 multiplications, their rows 10 · 1200² · 1803 and 10 · 600² · 1203: 4.8e10 together.
    [Fact]
    public void Elements_that_are_too_many_are_refused_where_the_impedance_is_there()
    {
        ConverterBuilder builder = OperatedConverters.Half();
        for (int k = 0; k < 600; k++)
        {
            builder.Capacitor($"idle{k}", $"x{k}", Converter.ReferenceNode, 1, esrOhms: 1).Switch($"j{k}", "bus", $"x{k}", on: 1);
        }

        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(builder.Build()));

        // one farad in loops of two ohms
        Assert.Equal(1 / Math.Tanh(1 / 2.4) / 1.2, model.Impedance.Ohms(0.3), 1e-12);
        foreach (Action ask in (Action[])[() => model.At(new OperatingPoint(2, 0.1, 0.3)), () => model.SensitivityAt(0.3), () => model.TwoPortSensitivityAt(0.3)])
        {
            Assert.Equal(DiagnosticCodes.SteadyStateTooLarge, Assert.Single(Assert.Throws<ScNetException>(ask).Diagnostics).Code);
        }
    }

    private static ModeAnalysis Cells(int count)
    {
        ConverterBuilder builder = Converter.Create("cells").Input("vin").Output("vout", LoadKind.Current).Capacitor("out", "vout", "gnd");
        for (int k = 0; k < count; k++)
        {
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}").Switch($"a{k}", "vin", $"p{k}", on: 1).Switch($"b{k}", $"n{k}", "vout", on: 1)
                .Switch($"c{k}", $"p{k}", "vout", on: 2).Switch($"d{k}", $"n{k}", "gnd", on: 2);
        }

        Converter converter = builder.Build();
        return ModeAnalysis.Of(converter, converter.Modes[0]);
    }
}
