using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.SteadyState;

namespace ScNet.Cli.Tests.Commands;

public sealed class OperateCommandTests : IDisposable
{
    /// <summary>Works into an output capacitor; switch "on" never opens, the top plate of "idle" floats.</summary>
    private const string Loaded =
        """
        name = "Loaded"
        input = "vin"
        output = "vout"
        load = "current"

        [capacitors]
        fly = { between = ["p", "n"], farads = 1e-9, esr_ohms = 0.05 }
        out = { between = ["vout", "gnd"], farads = 4e-9 }
        idle = { between = ["q", "gnd"], farads = 1e-9 }

        [switches]
        s1 = { between = ["vin", "p"], on = 1 }
        s2 = { between = ["n", "x"], on = 1 }
        s3 = { between = ["p", "vout"], on = 2 }
        s4 = { between = ["n", "gnd"], on = 2 }
        on = { between = ["x", "vout"], on = [1, 2], ohms = 0.5 }
        sense = { between = ["vin", "q"], on = 1 }
        """;

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_text_is_the_same_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = Operate("0.1", "--dead-time", "2e-9", "--frequency", "2e7", _folder.Write("loaded.toml", Loaded), _folder.Write("two.toml", NetlistFolder.TwoWays));
        Assert.Equal(File.ReadAllText("Commands/operate.expected.txt").ReplaceLineEndings("\n"), _folder.Layout(run.Output));
        Assert.Equal(1, run.Code);
        Assert.Contains("two.toml: mode 'shorted': error input-shorted: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    // an invented process without anything but a gate: f · Q · V_drive / η of four switches of 500 µm
    internal const string GatesOnly =
        """
        format = 1
        name = "gates"
        input_volts = [3.3, 3.3]
        output_volts = [1.5]
        frequency_hertz = [1e4, 1e8]
        area_square_metres = 1e-6

        [[loads]]
        name = "always"
        amperes = 1e-2
        share = 1.0

        [process]
        name = "gates"
        source = "invented"
        gate_rail_efficiency = 0.8

        [process.switches.n]
        rated_volts = 3.6
        gate_drive_volts = 2.0
        gate_rated_volts = 3.6
        ohm_micrometres = 1000.0
        gate_coulombs_per_micrometre = 2e-15
        junction_coulombs_per_micrometre = 1e-21
        square_metres_per_micrometre = 1e-12

        [process.capacitors.c]
        rated_volts = 3.6
        farads_per_square_metre = 1e-2
        """;

    [Fact]
    public void A_requirement_adds_the_losses_with_its_devices()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half), gates = _folder.Write("gates.toml", GatesOnly);
        ToolRun run = Operate("0.02", "--frequency", "2e7", half, "--requirement", gates, "--format", "json");
        Assert.Equal(string.Empty, run.Error);
        JsonNode row = JsonNode.Parse(run.Output)!["rows"]![0]!, budget = row["budget"]!;
        double ohms = NetlistReader.Read(NetlistFolder.Half).Converter!.Switches[0].Ohms, watts = 2e7 * 4 * (1000 / ohms) * 2e-15 * 2 / 0.8;
        Assert.Equal(watts, (double)budget["losses"]!["gateDriveWatts"]!, 1e-12);
        Assert.Equal(watts / 4, (double)budget["lossesOfElements"]!["gateDrive"]!["s1"]!, 1e-12);
        Assert.Equal("n", (string?)budget["devices"]!["s1"]!["device"]);
        Assert.Equal((double)row["dissipationWatts"]! + watts, (double)budget["totalLossWatts"]!, 1e-9);
        Assert.Equal((double)row["outputPowerWatts"]! / ((double)row["inputPowerWatts"]! + watts), (double)budget["efficiency"]!, 1e-9);

        ToolRun text = Operate("0.02", "--frequency", "2e7", half, "--requirement", gates);
        Assert.Contains("  gate drive ", text.Output, StringComparison.Ordinal);
        Assert.Contains("  Devices: 1 × n for s1, s2, s3, s4; 1 × c for fly\n", text.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("budget", Operate("0.02", "--frequency", "2e7", half, "--format", "json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_requirement_that_cannot_be_read_or_whose_devices_do_not_stand_it_is_an_error()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        ToolRun unread = Operate("0.02", "--frequency", "2e7", half, "--requirement", _folder.Write("bad.toml", "name = 5"));
        Assert.Equal(1, unread.Code);
        Assert.Contains("bad.toml", unread.ErrorLines[0], StringComparison.Ordinal);
        ToolRun weak = Operate("0.02", "--frequency", "2e7", half, "--requirement", _folder.Write("weak.toml", GatesOnly.Replace("\nrated_volts = 3.6", "\nrated_volts = 0.1", StringComparison.Ordinal)));
        Assert.Equal(1, weak.Code);
        Assert.Contains("device-rating-exceeded", weak.Error, StringComparison.Ordinal);
        Assert.Contains("Output voltage", weak.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Inductors_have_rows_of_their_own_in_text_and_json()
    {
        string file = _folder.Write("step-down.toml", """
            name = "step-down"
            input = "vin"
            output = "vout"
            [phases]
            duty = [0.25, 0.75]
            [inductors]
            coil = { between = ["x", "vout"], henries = 1e-6, ohms = 0.02 }
            [switches]
            high = { between = ["vin", "x"], ohms = 0.01, on = [1] }
            low = { between = ["x", "gnd"], ohms = 0.01, on = [2] }
            """);
        ToolRun text = Operate("2", "--frequency", "1e6", file), json = Operate("2", "--frequency", "1e6", "--format", "json", file);
        Assert.Equal((0, 0), (text.Code, json.Code));
        Assert.Matches(@"coil\s+2 A", text.Output);
        Converter converter = NetlistReader.ReadFile(file).GetConverter();
        InductorOperation coil = PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new OperatingPoint(3.6, 2, 1e6)).Inductors["coil"];
        JsonNode row = JsonNode.Parse(json.Output)!["rows"]![0]!["inductors"]!["coil"]!;
        Assert.Equal(coil.RippleAmperes, (double)row["rippleAmperes"]!);
        Assert.Equal(coil.AverageCurrentAmperes, (double)row["averageCurrentAmperes"]!);
        Assert.Equal(coil.DissipationWatts, (double)row["dissipationWatts"]!);
    }

    [Fact]
    public void The_json_holds_the_numbers_of_the_library()
    {
        using CultureScope scope = new("de-DE");
        string loaded = _folder.Write("loaded.toml", Loaded);
        ToolRun run = Operate("0.1", "--frequency", "2e7", "--format", "json", loaded, _folder.PathOf("missing.toml"));
        Converter converter = NetlistReader.ReadFile(loaded).GetConverter();
        PeriodicSteadyState steady = PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new OperatingPoint(3.6, 0.1, 2e7));
        JsonNode document = JsonNode.Parse(run.Output)!;
        Assert.Equal((3.6, 0.1, 2e7, 0), ((double)document["conditions"]!["inputVoltageVolts"]!, (double)document["conditions"]!["loadCurrentAmperes"]!, (double)document["conditions"]!["hertz"]!, (double)document["conditions"]!["deadTimeSeconds"]!));
        JsonNode row = document["rows"]![0]!;
        Assert.Equal(("Loaded", "default", "ok", false), ((string?)row["converter"], (string?)row["mode"], (string?)row["status"], (bool)row["isOverloaded"]!));
        Assert.Equal(steady.AverageOutputVoltageVolts, (double)row["outputVoltageVolts"]!);
        Assert.Equal(1.8, (double)row["idealOutputVoltageVolts"]!);
        Assert.Equal(steady.OutputRippleVolts, (double)row["outputRippleVolts"]!);
        Assert.Equal(steady.OutputPowerWatts / steady.InputPowerWatts, (double)row["resistiveEfficiency"]!);
        Assert.Equal(steady.DissipationWatts, (double)row["dissipationWatts"]!);
        JsonNode s1 = row["switches"]!["s1"]!, on = row["switches"]!["on"]!, fly = row["capacitors"]!["fly"]!;
        Assert.Equal(steady.Switches[0].PeakCurrentAmperes, (double)s1["peakCurrentAmperes"]!);
        Assert.Equal(steady.Switches[0].BlockingVolts.Maximum, (double?)s1["maximumBlockingVolts"]);
        Assert.True((bool)s1["isBlockingDetermined"]!);
        Assert.Null(on["minimumBlockingVolts"]);
        Assert.True((bool)on["isBlockingDetermined"]!);
        Assert.Equal(steady.Capacitors[0].AverageVoltageVolts, (double)fly["averageVoltageVolts"]!);
        Assert.Equal(steady.Capacitors[0].RippleVolts, (double)fly["rippleVolts"]!);
        Assert.Equal(("error", null), ((string?)document["rows"]![1]!["status"], (string?)document["rows"]![1]!["converter"]));
        Assert.Equal(1, run.Code);
    }

    [Fact]
    public void The_csv_has_the_figures_of_the_json_by_the_same_names()
    {
        string[] files = [_folder.Write("half.toml", NetlistFolder.Half), _folder.PathOf("missing.toml")];
        string[][] lines = [.. Operate("0.01", ["--frequency", "2e7", "--format", "csv", .. files]).Output.Split('\n').Select(line => line.Split(','))];
        JsonNode row = JsonNode.Parse(Operate("0.01", ["--frequency", "2e7", "--format", "json", .. files]).Output)!["rows"]![0]!;
        Assert.Equal("outputImpedance.ohms", lines[0][7]);
        foreach ((string header, string cell) in lines[0].Zip(lines[1]).Skip(4))
        {
            JsonNode? value = header.Split('.').Aggregate((JsonNode?)row, (node, key) => node![key]);
            Assert.Equal(value!.ToJsonString(), cell, ignoreCase: true);
        }

        Assert.Equal(["error", .. Enumerable.Repeat(string.Empty, lines[0].Length - 4)], lines[2][3..]);
    }

    [Fact]
    public void A_current_that_pulls_the_output_to_zero_is_pointed_out()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        ToolRun run = Operate("0.1", "--frequency", "1e6", half);
        Assert.Equal(0, run.Code);
        Assert.Contains(
            "\n  Overload: the output voltage is pulled to zero by 7.2 mA already. The figures extrapolate the\n      linear model and mean nothing for a real load.\n",
            run.Output,
            StringComparison.Ordinal);
        Assert.Contains("  Output voltage    -23.2 V, ideally 1.8 V\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("  Efficiency        none (", run.Output, StringComparison.Ordinal);
        JsonNode row = JsonNode.Parse(Operate("0.1", "--frequency", "1e6", "--format", "json", half).Output)!["rows"]![0]!;
        Assert.True((bool)row["isOverloaded"]!);
        Assert.Null(row["resistiveEfficiency"]);
    }

    [Fact]
    public void No_load_and_a_driving_load_are_no_overload()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        ToolRun idle = Operate("0", "--frequency", "1e6", half), driven = Operate("-1e-3", "--frequency", "1e6", half);
        Assert.Contains("  Output voltage    1.8 V, ideally 1.8 V\n", idle.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Overload", idle.Output + driven.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("drives", idle.Output, StringComparison.Ordinal);
        Assert.Contains("  The load drives the converter: ", driven.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5e-7", "500 ns of phase 1 (and at least 1 as), but got 500 ns.")]
    [InlineData("1e30", "500 ns of phase 1 (and at least 1 as), but got 1E+30 s.")]
    [InlineData("1e-30", "500 ns of phase 1 (and at least 1 as), but got 1E-30 s.")]
    public void A_dead_time_that_does_not_fit_is_a_failure_of_the_file(string seconds, string message)
    {
        ToolRun run = Operate("0.001", "--frequency", "1e6", "--dead-time", seconds, _folder.Write("half.toml", NetlistFolder.Half));
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Equal($"@/half.toml: Expected, for --dead-time, less than the {message}", _folder.Relative(Assert.Single(run.ErrorLines)));
    }

    [Fact]
    public void A_dead_time_is_taken_as_the_decimal_written()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        JsonNode row = JsonNode.Parse(Operate("0.001", "--frequency", "1e6", "--dead-time", "1e-8", "--format", "json", half).Output)!["rows"]![0]!;
        Converter dead = NetlistReader.ReadFile(half).GetConverter().WithDeadTime(new Fractions.Fraction(1, 100));
        Assert.Equal(OutputImpedance.Of(ModeAnalysis.Of(dead, dead.Modes[0])).Ohms(1e6), (double)row["outputImpedance"]!["ohms"]!);
        Assert.False((bool)row["switches"]!["s1"]!["isBlockingDetermined"]!);
    }

    [Theory]
    [InlineData("abc")]
    [InlineData("")]
    [InlineData("NaN")]
    [InlineData("1e61")]
    [InlineData("-1e-61")]
    [InlineData("0,1")]
    public void A_load_current_that_is_no_number_is_refused(string text)
    {
        ToolRun run = Operate(text, "--frequency", "1e6", "a.toml");
        Assert.Equal(2, run.Code);
        Assert.Contains(
            $"scnet: Expected a number of amperes (A) after --load-current, such as 0.25, 0 or -1e-3 (zero, or 1e-60 to 1e60 of either sign), but got '{text}'.",
            run.ErrorLines);
    }

    private static ToolRun Operate(string amperes, params string[] rest) =>
        ToolRun.Of(["operate", "--input-voltage", "3.6", "--load-current", amperes, .. rest]);

    // D = 1/5, L = 1 µH, f = 1 MHz, 4 V and 50 mA: R. W. Erickson and D. Maksimović, Fundamentals of Power Electronics, chapter 5
    // (from memory): M = 2/(1 + √(1 + 4K/D²)) with K = 2 L f I/V_out; with I given, M = D²/(D² + 2 L f I/V_in)
    [Fact]
    public void A_phase_that_a_current_ends_makes_the_ratio_depend_on_the_load()
    {
        string light = _folder.Write("light.toml", """
            name="Light"
            input="vin"
            output="vout"
            phases.duty=["1/5","4/5"]
            [inductors]
            coil={between=["x","vout"],henries=1e-6,until_zero=2}
            [switches]
            high={between=["vin","x"],ohms=1e-6,on=1}
            low={between=["x","gnd"],ohms=1e-6,on=2}
            """);
        ToolRun run = ToolRun.Of("operate", light, "--input-voltage", "4", "--load-current", "0.05", "--frequency", "1e6", "--format", "json");
        Assert.Equal(0, run.Code);
        double volts = JsonNode.Parse(run.Output)!["rows"]![0]!["outputVoltageVolts"]!.GetValue<double>();
        Assert.Equal(4 * 0.04 / (0.04 + (2 * 1e-6 * 1e6 * 0.05 / 4)), volts, 1e-5);
    }
}
