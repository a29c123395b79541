using System.Text.Json.Nodes;

namespace ScNet.Cli.Tests.Commands;

public sealed class TolerancesCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Far_below_the_corner_the_worst_case_is_that_of_the_capacitance_alone()
    {
        // R = 1/(4 C f): ±20 % of C gives 1/1.2 to 1/0.8 of it
        JsonNode row = Rows("tolerances", Half(), "--frequency", "1e3", "--capacitance", "0.2", "--format", "json")[0]!;
        Assert.Equal(250e3, (double)row["nominalOhms"]!, 3);
        Assert.Equal(250e3 / 1.2, (double)row["worstCase"]!["foundMinimumOhms"]!, 3);
        Assert.Equal(250e3 / 0.8, (double)row["worstCase"]!["foundMaximumOhms"]!, 3);
        Assert.InRange((double)row["spread"]!["medianOhms"]!, 245e3, 255e3);
    }

    [Fact]
    public void A_seed_gives_the_same_samples_and_another_others()
    {
        string[] arguments = ["tolerances", Half(), "--frequency", "1e7", "--on-resistance", "0.3", "--samples", "50", "--format", "csv"];
        Assert.Equal(ToolRun.Of([.. arguments, "--seed", "7"]).Output, ToolRun.Of([.. arguments, "--seed", "7"]).Output);
        Assert.NotEqual(ToolRun.Of([.. arguments, "--seed", "7"]).Output, ToolRun.Of([.. arguments, "--seed", "8"]).Output);
        Assert.Contains(",50,", ToolRun.Of(arguments).Output.Split('\n')[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_converter_with_inductors_is_refused_once_and_the_others_are_done()
    {
        ToolRun run = ToolRun.Of("tolerances", Half(), "--family", "inductive 1 3", "--frequency", "1e6,1e7", "--capacitance", "0.1");
        Assert.Equal(1, run.Code);
        Assert.Contains("error inductors-unsupported: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        Assert.StartsWith("Half (", run.Output, StringComparison.Ordinal);
        Assert.Contains("No result\n", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Expected a tolerance: --capacitance, --on-resistance or --esr", "--samples", "5")]
    [InlineData("Expected a fraction from 0 to below 1 after --capacitance, such as 0.2 for ±20 %, but got '20'.", "--capacitance", "20")]
    [InlineData("Expected a whole number from 1 to 1000000 after --samples, but got '0'.", "--capacitance", "0.1", "--samples", "0")]
    public void Wrong_numbers_are_wrong_usage(string message, params string[] options)
    {
        ToolRun run = ToolRun.Of(["tolerances", Half(), "--frequency", "1e6", .. options]);
        Assert.Equal((2, string.Empty), (run.Code, run.Output));
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    private static JsonArray Rows(params string[] arguments) => JsonNode.Parse(ToolRun.Of(arguments).Output)!["rows"]!.AsArray();

    private string Half() => _folder.Write("half.toml", NetlistFolder.Half);
}
