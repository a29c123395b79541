using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState;

/// <summary>What several outputs see of one another beside what the main one sees alone, and what nothing moves.</summary>
public sealed class MultiPortTests
{
    private const double FrequencyHz = 3e5;

    [Fact]
    public void In_open_circuit_outputs_have_their_ideal_ratios_to_the_last_digit()
    {
        MultiPortPoint point = Of(Ladder().Build()).At(FrequencyHz);
        Assert.Equal([1 / 3.0, 2 / 3.0, 1 / 3.0], point.Ratios);
        Assert.Equal([1 / 3.0, 2 / 3.0, 1 / 3.0], point.CurrentRatios);
    }

    [Fact]
    public void Parasitic_capacitances_move_the_ratios_of_further_outputs()
    {
        MultiPortPoint point = Of(Ladder().Parasitic("stray", "p", Converter.ReferenceNode, 1e-7).Build()).At(FrequencyHz);
        Assert.All(point.Ratios, ratio => Assert.InRange(ratio!.Value, 0.01, 0.99));
        Assert.NotEqual(2 / 3.0, point.Ratios["mid"]!.Value, 1e-6);
        Assert.NotEqual(2 / 3.0, point.CurrentRatios["mid"]!.Value, 1e-6);
    }

    // the rung lies between the other two, so that what it sees are differences of their rows and columns
    [Fact]
    public void An_output_between_two_others_sees_the_differences_of_theirs()
    {
        OutputMatrix<double?> ohms = Of(Ladder().Build()).At(FrequencyHz).Ohms;
        double own = ohms["mid", "mid"]!.Value, scale = 1e-10 * own;
        Assert.Equal(ohms["mid", "vout"]!.Value - ohms["vout", "vout"]!.Value, ohms["rung", "vout"]!.Value, scale);
        Assert.Equal(ohms["mid", "mid"]!.Value - ohms["vout", "mid"]!.Value, ohms["rung", "mid"]!.Value, scale);
        Assert.Equal(ohms["mid", "rung"]!.Value - ohms["vout", "rung"]!.Value, ohms["rung", "rung"]!.Value, scale);
        Assert.Equal(ohms["mid", "mid"]!.Value - ohms["mid", "vout"]!.Value, ohms["mid", "rung"]!.Value, scale);
        Assert.True(Math.Abs(ohms["vout", "mid"]!.Value - ohms["mid", "mid"]!.Value) > 1e-3 * own);
    }

    [Fact]
    public void The_figures_of_the_main_output_are_those_of_the_two_port_and_the_error_the_larger_one()
    {
        Converter converter = Ladder().Build();
        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(converter));
        (TwoPortPoint main, MultiPortPoint point) = (model.TwoPort.At(FrequencyHz), model.MultiPort.At(FrequencyHz));
        Assert.Equal(main.Ohms, point.Ohms[0, 0]);
        Assert.Equal((main.Ratio, main.CurrentRatio), (point.Ratios[0]!.Value, point.CurrentRatios[0]!.Value));
        Assert.Equal((main.InputSiemens, FrequencyHz), (point.InputSiemens, point.FrequencyHz));
        foreach (double hertz in new[] { 1, FrequencyHz, 1e14 })
        {
            double found = ExponentialMultiPort.Of(converter, converter.Modes[0]).At(hertz).RelativeError;
            Assert.NotEqual(found, main.RelativeError);
            Assert.Equal(Math.Max(found, main.RelativeError), model.MultiPort.At(hertz).RelativeError);
        }
    }

    [Fact]
    public void An_output_without_path_leaves_the_places_of_the_others()
    {
        Converter converter = Ladder().FurtherOutput("idle", "alone").Capacitor("alone", "alone", Converter.ReferenceNode).Build();
        MultiPort port = Of(converter);
        Assert.Equal(DiagnosticCodes.CapacitorUnbalanced, Assert.Single(port.Diagnostics).Code);
        (MultiPortPoint point, MultiPortPoint without) = (port.At(FrequencyHz), Of(Ladder().Build()).At(FrequencyHz));
        Assert.Equal([1 / 3.0, 2 / 3.0, 1 / 3.0, null], point.Ratios);
        for (int i = 0; i < 4; i++)
        {
            Assert.Null(point.Ohms[i, 3]);
            Assert.Null(point.Ohms[3, i]);
            for (int k = 0; k < 3 && i < 3; k++)
            {
                Assert.Equal(without.Ohms[i, k]!.Value, point.Ohms[i, k]!.Value, 1e-10 * Math.Abs(without.Ohms[1, 1]!.Value));
            }
        }
    }

    [Fact]
    public void Without_further_outputs_there_is_the_main_one_alone_and_nothing_to_warn_of()
    {
        Converter half = OperatedConverters.Half().Build();
        MultiPort port = Of(half);
        Assert.Empty(port.Diagnostics);
        MultiPortPoint point = port.At(0.2);
        Assert.Equal([0.5], point.Ratios);
        Assert.Equal(1, point.Ohms.Count);
        Assert.Same(half, port.Converter);
        Assert.Same(half.Modes[0], port.Mode);
    }

    // exponentials of the state equation may be off by more than what the decompositions promise, but nobody asks them
    [Fact]
    public void Without_further_outputs_the_error_is_that_of_the_two_port()
    {
        Converter half = OperatedConverters.Half().Build();
        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(half));
        double[] frequencies = [1e-3, 0.2, 1, 1e3, 1e14];
        Assert.Contains(
            frequencies, hertz => ExponentialMultiPort.Of(half, half.Modes[0]).At(hertz).RelativeError > model.TwoPort.At(hertz).RelativeError);
        Assert.All(frequencies, hertz => Assert.Equal(model.TwoPort.At(hertz).RelativeError, model.MultiPort.At(hertz).RelativeError));
    }

    private static MultiPort Of(Converter converter) => SteadyStateModel.Of(ModeAnalysis.Of(converter)).MultiPort;

    private static ConverterBuilder Ladder() => Converter.Create("Ladder").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("c1", "vout", "gnd", 1e-6).Capacitor("c2", "mid", "vout", 2e-6)
        .Capacitor("fly", "p", "n", 1e-6).Capacitor("fly2", "q", "r", 1e-6)
        .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "mid", 1, 2).Switch("s3", "p", "mid", 2, 2).Switch("s4", "n", "vout", 2, 2)
        .Switch("s5", "q", "mid", 1, 2).Switch("s6", "r", "vout", 1, 2).Switch("s7", "q", "vout", 2, 2).Switch("s8", "r", "gnd", 2, 2)
        .FurtherOutput("mid", "mid").FurtherOutput("rung", "mid", "vout");
}
