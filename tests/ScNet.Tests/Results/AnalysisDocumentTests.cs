using System.Buffers;
using System.Text;
using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Results;

namespace ScNet.Tests.Results;

public sealed class AnalysisDocumentTests
{
    private const string HalfJson =
        """
        {
          "converter": "Half",
          "modes": [
            {
              "mode": "default",
              "status": "ok",
              "diagnostics": [],
              "ratio": "1/2",
              "chargeFlow": {
                "determinedBy": "topology",
                "input": ["1/2", "0"],
                "output": ["1/2", "1/2"],
                "capacitors": {
                  "fly": ["1/2", "-1/2"]
                },
                "switches": {
                  "s1": ["1/2", "0"],
                  "s2": ["1/2", "0"],
                  "s3": ["0", "1/2"],
                  "s4": ["0", "-1/2"]
                }
              },
              "slowSwitchingLimit": {
                "coefficients": {
                  "fly": "1/4"
                },
                "ohmsAtOneHertz": 0.5
              },
              "fastSwitchingLimit": {
                "coefficients": {
                  "s1": "1/2",
                  "s2": "1/2",
                  "s3": "1/2",
                  "s4": "1/2"
                },
                "ohms": 4
              },
              "capacitorVoltages": {
                "fly": "1/2"
              },
              "blockingVoltages": {
                "s1": {
                  "perPhase": ["0", "1/2"],
                  "peak": "1/2"
                },
                "s2": {
                  "perPhase": ["0", "-1/2"],
                  "peak": "-1/2"
                },
                "s3": {
                  "perPhase": ["1/2", "0"],
                  "peak": "1/2"
                },
                "s4": {
                  "perPhase": ["1/2", "0"],
                  "peak": "1/2"
                }
              }
            }
          ]
        }
        """;

    private static readonly string[] s_resultKeys =
        ["ratio", "chargeFlow", "slowSwitchingLimit", "fastSwitchingLimit", "capacitorVoltages", "blockingVoltages"];

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_document_of_a_halver_is_the_same_text_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        Assert.Equal(HalfJson.ReplaceLineEndings("\n"), AnalysisDocument.ToJson(ConverterAnalysis.Of(Half())));
    }

    [Fact]
    public void The_example_of_the_contract_has_its_values()
    {
        JsonNode mode = JsonNode.Parse(AnalysisDocument.ToJson(ConverterAnalysis.Of(Half(farads: 1e-9))))!["modes"]![0]!;
        Assert.Equal(2.5e8, (double)mode["slowSwitchingLimit"]!["ohmsAtOneHertz"]!, 2.5e8 * 1e-15);
        Assert.Equal(4.0, (double)mode["fastSwitchingLimit"]!["ohms"]!);
        mode["slowSwitchingLimit"]!["ohmsAtOneHertz"] = 0.5;
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(HalfJson)!["modes"]![0], mode), mode.ToJsonString());
    }

    [Fact]
    public void Frequencies_add_the_exact_impedance_beside_the_estimate()
    {
        Converter half = Half(farads: 1e-9);
        JsonArray points = JsonNode.Parse(AnalysisDocument.Of(ConverterAnalysis.Of(half)).WithOutputImpedance([1e6, 1e12]).ToJson())!
            ["modes"]![0]!["outputImpedance"]!.AsArray();
        Assert.Equal([1e6, 1e12], points.Select(p => (double)p!["hertz"]!));
        // the limits are 250 Ω at 1 MHz and 4 Ω: √(250² + 4²) = 250.032; far up only the fast one is left
        Assert.Equal(250.0, (double)points[0]!["ohms"]!, 1e-3);
        Assert.Equal(250.032, (double)points[0]!["rootSumSquareOhms"]!, 1e-4);
        Assert.Equal(4.0, (double)points[1]!["ohms"]!, 1e-6);
        Assert.Throws<ArgumentOutOfRangeException>(() => AnalysisDocument.Unreadable(null, []).WithOutputImpedance([1e6, 0]));
    }

    [Fact]
    public void Stream_buffer_and_text_hold_the_same_bytes_without_a_mark()
    {
        AnalysisDocument document = AnalysisDocument.Of(ConverterAnalysis.Of(Half()));
        byte[] text = Encoding.UTF8.GetBytes(document.ToJson());
        ArrayBufferWriter<byte> buffer = new();
        document.WriteTo(buffer);
        using MemoryStream stream = new();
        document.WriteTo(stream);
        Assert.Equal(text, buffer.WrittenSpan.ToArray());
        Assert.Equal(text, stream.ToArray());
        Assert.True(stream.CanWrite);
        Assert.Equal((byte)'{', text[0]);
    }

    [Fact]
    public void Several_documents_are_one_array_in_the_order_given()
    {
        AnalysisDocument[] documents =
        [
            AnalysisDocument.Of(ConverterAnalysis.Of(Half())),
            AnalysisDocument.Unreadable("b.toml", []),
        ];
        ArrayBufferWriter<byte> buffer = new();
        AnalysisDocument.Write(documents, buffer);
        using MemoryStream stream = new();
        AnalysisDocument.Write(documents, stream);
        string text = AnalysisDocument.ToJson(documents);
        JsonArray array = JsonNode.Parse(text)!.AsArray();
        Assert.Equal(["Half", null], array.Select(d => d!["converter"]?.GetValue<string>()));
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(HalfJson), array[0]));
        Assert.Equal(Encoding.UTF8.GetBytes(text), buffer.WrittenSpan.ToArray());
        Assert.Equal(Encoding.UTF8.GetBytes(text), stream.ToArray());
        Assert.Equal("[]", AnalysisDocument.ToJson(Array.Empty<AnalysisDocument>()));
    }

    [Fact]
    public void A_file_that_could_not_be_read_has_no_converter_no_modes_and_its_errors_with_their_places()
    {
        Diagnostic[] diagnostics =
        [
            new(DiagnosticSeverity.Error, "unknown-key", "A key.", ["x"], 2, new SourcePosition("half.toml", 3, 14)),
            new(DiagnosticSeverity.Error, "file-unreadable", "A file."),
        ];
        JsonNode expected = JsonNode.Parse(
            """
            { "converter": null, "modes": [], "diagnostics": [
              { "severity": "error", "code": "unknown-key", "message": "A key.", "elements": ["x"], "phase": 2,
                "file": "half.toml", "line": 3, "column": 14 },
              { "severity": "error", "code": "file-unreadable", "message": "A file.", "elements": [], "phase": null,
                "file": "named.toml", "line": null, "column": null } ] }
            """)!;
        JsonNode? actual = JsonNode.Parse(AnalysisDocument.Unreadable("named.toml", diagnostics).ToJson());
        Assert.True(JsonNode.DeepEquals(expected, actual), actual?.ToJsonString());
    }

    [Fact]
    public void A_mode_with_an_error_has_null_results_and_the_other_modes_keep_theirs()
    {
        Converter converter = Converter.Create("Two ways").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p").Switch("s2", "n", "vout").Switch("s3", "p", "vout").Switch("s4", "n", "gnd")
            .Switch("s5", "vin", "gnd")
            .Mode("shorted", ("s1", 1), ("s2", 1), ("s3", 2), ("s4", 2), ("s5", 1))
            .Mode("sound", ("s1", 1), ("s2", 1), ("s3", 2), ("s4", 2))
            .Build();
        JsonArray modes = JsonNode.Parse(AnalysisDocument.ToJson(ConverterAnalysis.Of(converter)))!["modes"]!.AsArray();
        JsonObject shorted = modes[0]!.AsObject();
        Assert.Equal("error", (string?)shorted["status"]);
        Assert.All(s_resultKeys, key => Assert.True(shorted.ContainsKey(key) && shorted[key] is null, key));
        JsonNode? error = shorted["diagnostics"]!.AsArray().Single(d => (string?)d!["code"] == DiagnosticCodes.InputShorted);
        Assert.Equal("error", (string?)error!["severity"]);
        Assert.Equal(1, (int?)error["phase"]);
        Assert.Contains("s5", error["elements"]!.AsArray().Select(e => (string?)e));
        Assert.Equal("ok", (string?)modes[1]!["status"]);
        Assert.Equal("1/2", (string?)modes[1]!["ratio"]);
    }

    [Theory]
    [InlineData("\"quoted\" \\ 'name'")]
    [InlineData("Δύο·½ 電荷 😀")]
    [InlineData("line\nbreak\ttab\u0001")]
    [InlineData("<b>&+")]
    [InlineData("")]
    public void Any_name_comes_back_as_it_was(string name)
    {
        string capacitor = "fly" + name;
        Converter converter = Converter.Create("x" + name).Input("vin").Output("vout")
            .Capacitor(capacitor, "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2)
            .Build();
        JsonNode document = JsonNode.Parse(AnalysisDocument.ToJson(ConverterAnalysis.Of(converter)))!;
        Assert.Equal("x" + name, (string?)document["converter"]);
        Assert.Equal("1/2", (string?)document["modes"]![0]!["capacitorVoltages"]![capacitor]);
        Assert.Equal("1/4", (string?)document["modes"]![0]!["slowSwitchingLimit"]!["coefficients"]![capacitor]);
    }

    [Fact]
    public void A_name_that_is_no_valid_text_does_not_stop_the_document()
    {
        AnalysisDocument document = AnalysisDocument.Unreadable("a\ud800.toml", []);
        Assert.Null(JsonNode.Parse(document.ToJson())!["converter"]);
        Diagnostic odd = new(DiagnosticSeverity.Error, "syntax", "Half a character: \ud800.", ["\udc00"]);
        string? message = (string?)JsonNode.Parse(AnalysisDocument.Unreadable(null, [odd]).ToJson())!["diagnostics"]![0]!["message"];
        Assert.Equal("Half a character: \ufffd.", message);
    }

    [Fact]
    public void A_warning_of_the_netlist_is_a_warning_of_every_mode_once()
    {
        Converter converter = Converter.Create("Dangling").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2)
            .Switch("s5", "p", "nowhere", 1)
            .Build();
        JsonNode mode = JsonNode.Parse(AnalysisDocument.ToJson(ConverterAnalysis.Of(converter)))!["modes"]![0]!;
        Assert.Equal("ok", (string?)mode["status"]);
        JsonNode? warning = Assert.Single(
            mode["diagnostics"]!.AsArray(), d => (string?)d!["code"] == DiagnosticCodes.FloatingTerminal);
        Assert.Equal("warning", (string?)warning!["severity"]);
        Assert.Equal(["s5"], warning["elements"]!.AsArray().Select(e => (string?)e));
    }

    [Fact]
    public void Numbers_are_numbers_undetermined_values_null_and_a_series_resistance_has_its_capacitors_name()
    {
        Converter converter = Half(esrOhms: 0.5);
        Quantity third = Quantity.Numeric(1.0 / 3);
        Quantity unknown = Quantity.Undetermined;
        ModeResults results = new(
            new SettledVoltages(
                new IdealPoint(third, Tables.List(unknown), Tables.Of(new Quantity[10], 5, 2)),
                new BlockingVoltages(Tables.Of([0, unknown, 1, 2, 3, 4, 5, 6], 4, 2), Tables.Names("switch", 4)),
                Tables.Of([], 0, 2),
                VoltageBalance.Averages,
                []),
            new LoadedResults(
                new ChargeFlow(
                    FlowDetermination.ComponentValues,
                    Tables.Row(third, Quantity.Numeric(1e-9)),
                    Tables.Row(Quantity.Numeric(0), unknown),
                    Tables.Of([third, -third], 1, 2),
                    Tables.Of(new Quantity[8], 4, 2),
                    Tables.Of([], 0, 2)),
                new SlowSwitchingLimit(Tables.List(third), 1e20),
                new FastSwitchingLimit(Tables.List(1, 2, 3, unknown), Tables.List(Quantity.Exact(1, 7)), Tables.List(), double.PositiveInfinity),
                [],
                []),
            []);
        TopologySolution topology = new() { Mode = converter.Modes[0], Diagnostics = [], Forests = [], CarriesLoad = true };
        ModeAnalysis analysis = new(converter, converter.Modes[0], topology, results);
        string text = AnalysisDocument.Of(converter, [analysis.Outcome]).ToJson();
        JsonNode mode = JsonNode.Parse(text)!["modes"]![0]!;
        Assert.Equal("componentValues", (string?)mode["chargeFlow"]!["determinedBy"]);
        Assert.Equal(1.0 / 3, (double?)mode["ratio"]);
        Assert.Null(mode["capacitorVoltages"]!["fly"]);
        Assert.Contains("\"input\": [0.3333333333333333, 1E-09]", text, StringComparison.Ordinal);
        Assert.Contains("\"output\": [0, null]", text, StringComparison.Ordinal);
        Assert.Equal(1e20, (double?)mode["slowSwitchingLimit"]!["ohmsAtOneHertz"]);
        Assert.Equal("1/7", (string?)mode["fastSwitchingLimit"]!["coefficients"]!["fly"]);
        Assert.Null(mode["fastSwitchingLimit"]!["coefficients"]!["s4"]);
        Assert.Null(mode["fastSwitchingLimit"]!["ohms"]);
        Assert.Null(mode["blockingVoltages"]!["s1"]!["peak"]);
        Assert.Equal("4", (string?)mode["blockingVoltages"]!["s3"]!["peak"]);
    }

    private static Converter Half(double farads = 0.5, double esrOhms = 0) => Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads, esrOhms)
        .Switch("s1", "vin", "p", on: 1, ohms: 2).Switch("s2", "n", "vout", on: 1, ohms: 2)
        .Switch("s3", "p", "vout", on: 2, ohms: 2).Switch("s4", "n", "gnd", on: 2, ohms: 2)
        .Build();
}
