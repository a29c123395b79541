using System.Text.RegularExpressions;
namespace ScNet.Cli.Tests.Commands;

public sealed class UsageTests
{
    public static TheoryData<string[], string> WrongCommandLines => new()
    {
        { [], "scnet: Required command was not provided." },
        { ["invent"], "scnet: Unrecognized command or argument 'invent'." },
        { ["analyze"], "scnet: Expected at least one FILE or --family." },
        { ["analyze", "-", "-"], "scnet: Standard input can be read once only: give - in one place." },
        { ["analyze", ""], "scnet: Expected the name of a file, but got an empty one." },
        { ["analyze", "a.toml", "--fromat", "json"], "scnet: There is no option '--fromat' here. If it is a file, write ./--fromat." },
        { ["analyze", "a.toml", "--format", "xml"], "scnet: Expected text or json after --format, but got 'xml'." },
        { ["analyze", "a.toml", "--format", "JSON"], "scnet: Expected text or json after --format, but got 'JSON'." },
        { ["analyze", "a.toml", "--rating", "1"], "scnet: There is no option '--rating' here. If it is a file, write ./--rating." },
        {
            ["analyze", "a.toml", "--frequency", "1e6,-2"],
            "scnet: Expected positive numbers of hertz (Hz) or ranges after --frequency, such as 1e6,1e7 or 1e5..1e8 or 1e5..1e8:31 (from 1e-60 to 1e60), but got '-2'."
        },
        {
            ["sweep", "a.toml", "--frequency", "1e8..1e6"],
            "scnet: Expected the ranges after --frequency to rise, such as 1e5..1e8, but got '1e8..1e6'."
        },
        { ["sweep", "a.toml"], "scnet: Option '--frequency' is required." },
        { ["sweep", "--frequency", "1e6"], "scnet: Expected at least one FILE or --family." },
        {
            ["sweep", "a.toml", "--frequency", "1e6", "--input-voltage", "1..2"],
            "scnet: Expected both --input-voltage and --load-current for operating points, also for --duty; or none of them, for the output impedance."
        },
        {
            ["sweep", "a.toml", "--frequency", "1e6", "--input-voltage", "2..1", "--load-current", "1"],
            "scnet: Expected positive numbers of volts (V) after --input-voltage, or rising ranges of 2 to 10000 points, such as 1,2.5 or 1..2 or 1..2:5, but got '2..1'."
        },
        {
            ["sweep", "a.toml", "--frequency", "1e6", "--input-voltage", "1", "--load-current", "1", "--duty", "1"],
            "scnet: Expected numbers between 0 and 1 after --duty, or rising ranges of 2 to 10000 points, such as 1,2.5 or 1..2 or 1..2:5, but got '1'."
        },
        { ["operate", "a.toml", "--load-current", "1", "--frequency", "1"], "scnet: Option '--input-voltage' is required." },
        { ["operate", "a.toml", "--input-voltage", "1", "--frequency", "1"], "scnet: Option '--load-current' is required." },
        { ["operate", "a.toml", "--input-voltage", "1", "--load-current", "1"], "scnet: Option '--frequency' is required." },
        {
            ["operate", "a.toml", "--dead-time", "0"],
            "scnet: Expected a positive number of seconds (s) after --dead-time, such as 2.5 or 1e-6 (from 1e-60 to 1e60), but got '0'."
        },
        { ["compare", "a.toml", "--rating", "1"], "scnet: Option '--input-voltage' is required." },
        { ["compare", "a.toml", "--input-voltage", "1"], "scnet: Option '--rating' is required." },
        { ["compare", "--input-voltage", "1", "--rating", "1"], "scnet: Expected at least one FILE or --family." },
        {
            ["compare", "--family", "ladder", "4", "--input-voltage", "1", "--rating", "1"],
            "scnet: Expected 'ladder N' with whole numbers N from 2 to 1000, but got 'ladder'. Put quotation marks round name and sizes: --family \"ladder 4\"."
        },
        { ["compare", "a.toml", "--input-voltage", "1", "--rating", "1", "--sort", "equalSilicon.maximumStackCount"], "scnet: The column equalSilicon.maximumStackCount is there with --silicon only." },
        { ["compare", "a.toml", "--input-voltage", "1", "--rating", "1", "--descending"], "scnet: --descending says in which direction --sort goes. Add --sort HEADING." },
        { ["reach"], "scnet: Expected one FILE or --family." },
        { ["reach", "a.toml", "--family", "ladder 4"], "scnet: Expected one FILE or --family." },
        { ["reach", "a.toml", "b.toml"], "scnet: Expected one FILE or --family." },
        { ["reach", "--pattern"], "scnet: There is no option '--pattern' here. If it is a file, write ./--pattern." },
        { ["reach", "a.toml", "--format", "xml"], "scnet: Expected text or json or csv after --format, but got 'xml'." },
        { ["atlas"], "scnet: Option '--output' is required." },
        { ["atlas", "merge"], "scnet: Option '--output' is required." },
        { ["atlas", "--output", "a", "--shard", "513/512"], "scnet: Expected a part and a number of parts to 100000 after --shard, such as 1/512 or 512/512, but got '513/512'." },
        { ["atlas", "--output", "a", "--capacitors", "0"], "scnet: Expected a whole number from 1 to 8 after --capacitors, but got '0'." },
        { ["schema", "a.toml"], "scnet: Expected netlist, requirement or derivation, but got 'a.toml'." },
        { ["schema", "netlist", "b"], "scnet: Unrecognized command or argument 'b'." },
    };

    [Theory]
    [MemberData(nameof(WrongCommandLines))]
    public void A_wrong_command_line_says_what_is_wrong_and_exits_with_2(string[] arguments, string message)
    {
        ToolRun run = ToolRun.Of(arguments);
        Assert.Equal(2, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains(message, run.ErrorLines);
        Assert.StartsWith("For the options, run: scnet ", run.ErrorLines[^1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--input-voltage", "volts (V)")]
    [InlineData("--rating", "volts (V)")]
    [InlineData("--total-capacitance", "farads (F)")]
    [InlineData("--total-conductance", "siemens (S)")]
    [InlineData("--frequency", "hertz (Hz)")]
    public void A_number_that_is_not_finite_and_positive_is_refused_by_the_name_of_its_option(string option, string unit)
    {
        using CultureScope scope = new("de-DE");
        foreach (string value in new[] { "0", "-1", "-0.0", "NaN", "Infinity", "1e400", "1e-400", "1.1e60", "0.9e-60", "1,5", "1 000", "3.6V", "abc", "" })
        {
            List<string> arguments = ["compare", "a.toml", option, value];
            foreach (string required in new[] { "--input-voltage", "--rating" }.Where(o => o != option))
            {
                arguments.AddRange([required, "1"]);
            }

            ToolRun run = ToolRun.Of([.. arguments]);
            Assert.Equal(2, run.Code);
            Assert.Contains(
                $"scnet: Expected a positive number of {unit} after {option}, such as 2.5 or 1e-6 (from 1e-60 to 1e60), but got '{value}'.", run.ErrorLines);
        }
    }

    [Theory]
    [InlineData("1e60")]
    [InlineData("1e-60")]
    public void The_extremes_of_a_number_reach_the_library(string value)
    {
        ToolRun run = ToolRun.Of(
            "compare", "missing.toml", "--input-voltage", value, "--rating", value, "--total-capacitance", value,
            "--total-conductance", value, "--frequency", value);
        Assert.Equal(1, run.Code);
        Assert.StartsWith("missing.toml: error file-unreadable: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void An_option_given_twice_is_refused()
    {
        ToolRun run = ToolRun.Of("compare", "a.toml", "--input-voltage", "1", "--rating", "1", "--rating", "2");
        Assert.Equal(2, run.Code);
        Assert.Contains("scnet: Option '--rating' expects a single argument but 2 were provided.", run.ErrorLines);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("analyze --help")]
    [InlineData("compare --help")]
    [InlineData("sweep --help")]
    [InlineData("operate --help")]
    [InlineData("reach --help")]
    [InlineData("atlas --help")]
    [InlineData("atlas merge --help")]
    [InlineData("family --help")]
    [InlineData("schema --help")]
    public void Help_goes_to_standard_output_and_exits_with_0(string line)
    {
        ToolRun run = ToolRun.Of(line.Split(' '));
        Assert.Equal(0, run.Code);
        Assert.Empty(run.Error);
        Assert.Contains("scnet", run.Output, StringComparison.Ordinal);
        Assert.Contains("Options:", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void No_line_of_any_help_is_longer_than_the_usual_width()
    {
        string[] commands = [.. ToolRun.Of("--help").Output.Split("Commands:")[1].Split('\n')
            .Where(line => line.Length > 2 && line.StartsWith("  ", StringComparison.Ordinal) && line[2] != ' ')
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[0])];
        Assert.Contains("analyze", commands);
        Assert.All(
            commands.Select(command => ToolRun.Of(command, "--help")).Append(ToolRun.Of("--help")),
            run => Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, ScNet.Results.Pages.Page.UsualWidth)));
    }

    [Fact]
    public void Version_is_that_of_the_tool_and_exits_with_0()
    {
        ToolRun run = ToolRun.Of("--version");
        Assert.Equal(0, run.Code);
        Assert.Empty(run.Error);
        Assert.Matches(@"^\d+\.\d+\.\d+\n$", run.Output);
    }

    [Fact]
    public void A_file_that_begins_with_an_at_sign_is_a_file()
    {
        ToolRun run = ToolRun.Of("analyze", "@nothing.toml");
        Assert.Equal(1, run.Code);
        Assert.StartsWith("@nothing.toml: error file-unreadable: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    // the unknown option keeps it from doing anything; what checks the options of a command together must not stumble over one of them
    [Fact]
    public void A_value_that_means_nothing_is_told_with_every_option_of_every_command()
    {
        int tried = 0;
        string[] commands = [.. Named(ToolRun.Of("--help").Output.Split("Commands:")[1], "^  ([a-z]+)")];
        Assert.Contains("report", commands);
        foreach (string command in commands)
        {
            foreach (string option in Named(ToolRun.Of(command, "--help").Output, "^  (--[a-z-]+) <"))
            {
                ToolRun run = ToolRun.Of(command, "half.toml", option, "\u00A7", "--no-such-option");
                Assert.Equal((2, string.Empty), (run.Code, run.Output));
                Assert.StartsWith("scnet: ", run.Error, StringComparison.Ordinal);
                tried++;
            }
        }

        Assert.True(tried > 60, $"{tried}");

        static IEnumerable<string> Named(string help, string pattern) =>
            Regex.Matches(help, pattern, RegexOptions.Multiline).Select(m => m.Groups[1].Value);
    }
}
