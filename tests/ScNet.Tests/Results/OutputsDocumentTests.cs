using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Results;
using ScNet.SteadyState;

namespace ScNet.Tests.Results;

/// <summary>What the analysis document says of several outputs, and that it says nothing of them where there is one.</summary>
public sealed class OutputsDocumentTests
{
    [Fact]
    public void A_mode_has_ratios_charges_and_both_limits_of_every_output()
    {
        Converter converter = Converter("rail", "p", "n");
        OutputMatrices expected = ModeAnalysis.Of(converter).Outputs;
        JsonNode outputs = Mode(converter)["outputs"]!;

        Assert.Equal("""["vout","rail"]""", outputs["names"]!.ToJsonString());
        Assert.Equal("""["1/2","1/2"]""", outputs["ratios"]!.ToJsonString());
        Assert.Equal("""["1/2","-1/2"]""", outputs["chargeFlow"]!["rail"]!["output"]!.ToJsonString());
        Assert.Equal(expected.Outputs["rail"].ChargeFlow!.Capacitors["fly"].Select(q => q.ToString()), outputs["chargeFlow"]!["rail"]!["capacitors"]!["fly"]!.AsArray().Select(v => v!.GetValue<string>()));
        Assert.Equal(Rows(expected.SlowSwitchingLimit), outputs["slowSwitchingLimit"]!["ohmsAtOneHertz"]!.ToJsonString());
        Assert.Equal(Rows(expected.ChargeSharing), outputs["chargeSharing"]!["ohmsAtOneHertz"]!.ToJsonString());
        Assert.Equal(Rows(expected.FastSwitchingLimit), outputs["fastSwitchingLimit"]!["ohms"]!.ToJsonString());
        Assert.DoesNotContain("null", outputs.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_frequency_has_the_exact_matrix()
    {
        Converter converter = Converter("rail", "p", "n");
        MultiPortPoint expected = SteadyStateModel.Of(ModeAnalysis.Of(converter)).MultiPort.At(0.25);
        JsonNode outputs = Mode(converter, 0.25)["outputImpedance"]![0]!["outputs"]!;

        Assert.Equal("[0.5,0.5]", outputs["ratios"]!.ToJsonString());
        Assert.Equal("[0.5,0.5]", outputs["currentRatios"]!.ToJsonString());
        Assert.Equal(Rows(expected.Ohms), outputs["ohms"]!.ToJsonString());
    }

    [Fact]
    public void An_output_that_carries_no_current_is_null_and_told()
    {
        Converter converter = Converter("rail", "x", "gnd");
        JsonNode mode = Mode(converter, 0.25);

        Assert.Equal("ok", mode["status"]!.GetValue<string>());
        Assert.Contains(mode["diagnostics"]!.AsArray(), d => d!["code"]!.GetValue<string>() == DiagnosticCodes.CapacitorUnbalanced && d["elements"]![0]!.GetValue<string>() == "rail");
        Assert.Equal("""["1/2",null]""", mode["outputs"]!["ratios"]!.ToJsonString());
        Assert.True(mode["outputs"]!["chargeFlow"]!.AsObject().ContainsKey("rail"));
        Assert.Null(mode["outputs"]!["chargeFlow"]!["rail"]);
        Assert.EndsWith(",null],[null,null]]", mode["outputs"]!["fastSwitchingLimit"]!["ohms"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.EndsWith(",null],[null,null]]", mode["outputImpedance"]![0]!["outputs"]!["ohms"]!.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_of_one_output_stays_as_it_was_and_a_mode_without_result_has_none()
    {
        Assert.Null(Mode(OutputNetworks.With(Converter("rail", "p", "n")), 0.25)["outputs"]);
        Assert.Null(Mode(OutputNetworks.With(Converter("rail", "p", "n")), 0.25)["outputImpedance"]![0]!["outputs"]);
        Converter shorted = Converter("rail", "p", "n").WithModes(("shorted", [1, 1, 1, 1, 1, PhaseSet.None]));
        Assert.True(Mode(shorted).AsObject().ContainsKey("outputs"));
        Assert.Null(Mode(shorted)["outputs"]);
    }

    private static string Rows(OutputMatrix<double?> matrix) => $"[{string.Join(",", Enumerable.Range(0, matrix.Count).Select(r =>
        $"[{string.Join(",", Enumerable.Range(0, matrix.Count).Select(c => matrix[r, c]!.Value.ToString("R", System.Globalization.CultureInfo.InvariantCulture)))}]"))}]";

    private static JsonNode Mode(Converter converter, params double[] frequenciesHz)
    {
        AnalysisDocument document = AnalysisDocument.Of(ConverterAnalysis.Of(converter));
        return JsonNode.Parse((frequenciesHz.Length > 0 ? document.WithOutputImpedance(frequenciesHz) : document).ToJson())!["modes"]![0]!;
    }

    private static Converter Converter(string name, string node, string back) => ScNet.Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", 2).Capacitor("alone", "x", "gnd")
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2)
        .Switch("s5", "x", "y", PhaseSet.None).Switch("s6", "y", "gnd", PhaseSet.None)
        .FurtherOutput(name, node, back).Build();
}
