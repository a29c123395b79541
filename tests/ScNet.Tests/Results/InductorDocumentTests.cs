using System.Text.Json.Nodes;
using Fractions;
using ScNet.Analysis;
using ScNet.Results;

namespace ScNet.Tests.Results;

/// <summary>The keys of modes with inductors, or a current load, in the analysis document.</summary>
public class InductorDocumentTests
{
    [Fact]
    public void A_stage_with_an_inductor_has_its_keys()
    {
        JsonNode mode = ModeOf(Converter.Create("down").Input("vin").Output("vout").Duties(0.25, 0.75)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("coil", "x", "vout", ohms: 0.5).Build());
        Assert.Equal("averages", (string?)mode["balance"]);
        Assert.Equal("1", (string?)mode["inductorCurrents"]!["coil"]);
        Assert.Equal(["3/4", "-1/4"], Texts(mode["inductorVoltages"]!["coil"]!["perPhase"]));
        Assert.Equal(["1/4", "3/4"], Texts(mode["chargeFlow"]!["inductors"]!["coil"]));
        Assert.Equal("1", (string?)mode["fastSwitchingLimit"]!["coefficients"]!["coil"]);
        Assert.Equal(0, (double?)mode["chargeSharing"]!["ohmsAtOneHertz"]);
        Assert.Equal(0, (double?)mode["slowSwitchingLimit"]!["ohmsAtOneHertz"]);
    }

    [Fact]
    public void A_winding_without_resistance_has_no_coefficient()
    {
        JsonNode mode = ModeOf(InductiveStages.StepUp(new Fraction(1, 2)).Build());
        Assert.False(mode["fastSwitchingLimit"]!["coefficients"]!.AsObject().ContainsKey("coil"));
    }

    [Fact]
    public void What_losses_decide_is_null()
    {
        JsonNode mode = ModeOf(InductiveStages.MultiLevel(3, new Fraction(1, 5)).Build());
        Assert.Equal("losses", (string?)mode["balance"]);
        Assert.Equal("ok", (string?)mode["status"]);
        Assert.Equal("1/5", (string?)mode["ratio"]);
        Assert.True(mode["capacitorVoltages"]!.AsObject().ContainsKey("fly1"));
        Assert.Null(mode["capacitorVoltages"]!["fly1"]);
        Assert.Equal([null, "-1/5", null, "-1/5"], Texts(mode["inductorVoltages"]!["coil"]!["perPhase"]));
    }

    [Fact]
    public void Averages_that_carry_no_load_have_neither_flow_nor_limits()
    {
        JsonNode mode = ModeOf(InductiveStages.MultiLevel(
            4, [new(1, 5), new(1, 10), new(1, 4), new(1, 10), new(3, 20), new(1, 5)], [[1], [], [2], [], [3], []]).Build());
        Assert.Equal("ok", (string?)mode["status"]);
        Assert.Equal("ripple", (string?)mode["balance"]);
        Assert.Equal("5/8", (string?)mode["capacitorVoltages"]!["fly1"]);
        foreach (string key in (string[])["chargeFlow", "slowSwitchingLimit", "chargeSharing", "fastSwitchingLimit"])
        {
            Assert.True(mode.AsObject().ContainsKey(key));
            Assert.Null(mode[key]);
        }

        Assert.Null(mode["inductorCurrents"]!["coil"]);
        Assert.Equal("load-moves-voltages", (string?)mode["diagnostics"]![0]!["code"]);
    }

    [Fact]
    public void A_current_load_has_charge_sharing_but_no_keys_of_inductors()
    {
        JsonNode mode = ModeOf(Converter.Create("soft").Input("vin").Output("vout", LoadKind.Current).Phases(2)
            .Capacitor("fly", "p", "n").Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build());
        Assert.Equal("0", (string?)mode["chargeSharing"]!["coefficients"]!["fly"]);
        Assert.Equal("1/4", (string?)mode["slowSwitchingLimit"]!["coefficients"]!["fly"]);
        Assert.False(mode.AsObject().ContainsKey("balance"));
        Assert.False(mode["chargeFlow"]!.AsObject().ContainsKey("inductors"));
    }

    [Fact]
    public void An_interrupted_inductor_is_an_error_with_all_keys_null()
    {
        JsonNode mode = ModeOf(Converter.Create("broken").Input("vin").Output("vout").Phases(3)
            .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2).Inductor("coil", "x", "vout").Build());
        Assert.Equal("error", (string?)mode["status"]);
        Assert.Equal("inductor-interrupted", (string?)mode["diagnostics"]![0]!["code"]);
        Assert.Equal(3, (int?)mode["diagnostics"]![0]!["phase"]);
        Assert.True(mode.AsObject().ContainsKey("balance"));
        Assert.Null(mode["balance"]);
    }

    private static JsonNode ModeOf(Converter converter) =>
        JsonNode.Parse(AnalysisDocument.ToJson(ConverterAnalysis.Of(converter)))!["modes"]![0]!;

    private static IEnumerable<string?> Texts(JsonNode? list) => list!.AsArray().Select(v => (string?)v);
}
