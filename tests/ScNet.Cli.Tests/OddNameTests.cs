using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.VisualBasic.FileIO;
using ScNet.Netlists;

namespace ScNet.Cli.Tests;

/// <summary>Names of any characters in every form of every command, each form read by somebody else's reader.</summary>
public sealed partial class OddNameTests : IDisposable
{
    private const string Point = "--input-voltage 4 --load-current 1e-3 --frequency 1e6";

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("analyze @ --frequency 1e6")]
    [InlineData("compare @ --input-voltage 4 --rating 1")]
    [InlineData("sweep @ --frequency 1e6 --format text")]
    [InlineData("operate @ " + Point)]
    [InlineData("stress @ --input-voltage 4 --rating 1")]
    [InlineData("gates @ --input-voltage 4 --gate-voltage 1")]
    [InlineData("tolerances @ --frequency 1e6 --capacitance 0.1 --samples 10")]
    [InlineData("overlay @single --format text")]
    [InlineData("formulas @")]
    [InlineData("formulas @ --format latex")]
    [InlineData("working @ --mode =1+1")]
    [InlineData("working @ --mode =1+1 --format latex")]
    [InlineData("difference @ @single")]
    [InlineData("reach @bridge")]
    public void Text_has_nothing_that_does_not_show_or_turns_its_surroundings_round(string line)
    {
        ToolRun run = Run(line);
        Assert.NotEmpty(run.Output);
        Assert.Empty(OddNames.Hidden(run.Output));
        Assert.Empty(OddNames.Hidden(run.Error));
        Assert.Contains("=", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("compare @ --input-voltage 4 --rating 1", true)]
    [InlineData("sweep @ --frequency 1e6", true)]
    [InlineData("operate @ " + Point, true)]
    [InlineData("stress @ --input-voltage 4 --rating 1", false)]
    [InlineData("gates @ --input-voltage 4 --gate-voltage 1", false)]
    [InlineData("tolerances @ --frequency 1e6 --capacitance 0.1 --samples 10", true)]
    [InlineData("overlay @single", false)]
    [InlineData("formulas @", true)]
    [InlineData("reach @bridge", false)]
    public void Csv_has_a_row_on_a_line_and_nothing_that_a_spreadsheet_works_out(string line, bool hasRowPerMode)
    {
        ToolRun run = Run(line + " --format csv");
        Assert.Empty(OddNames.Hidden(run.Output));
        string[][] rows = [.. Rows(run.Output)];
        Assert.Equal(run.Output.Count(c => c == '\n'), rows.Length);
        Assert.All(rows, r => Assert.Equal(rows[0].Length, r.Length));
        Assert.All(rows.SelectMany(r => r).Where(c => !Harmless().IsMatch(c)), c => Assert.DoesNotMatch("^\\s*[=+@\uFF1D\uFF0B\uFF0D\uFF20-]", c));
        int mode = Array.IndexOf(rows[0], "mode");
        if (hasRowPerMode)
        {
            Assert.Superset(new HashSet<string> { "'=1+1", "'-x", "'@now", "-3", "-1/2", "\\u001B[31mred", "a,b\"c;d" }, rows.Select(r => r[mode]).ToHashSet());
        }
    }

    [Theory]
    [InlineData("analyze @", "mode")]
    [InlineData("compare @ --input-voltage 4 --rating 1", "mode")]
    [InlineData("operate @ " + Point, "mode")]
    [InlineData("tolerances @ --frequency 1e6 --capacitance 0.1 --samples 10", "mode")]
    [InlineData("stress @ --input-voltage 4 --rating 1", null)]
    [InlineData("gates @ --input-voltage 4 --gate-voltage 1", null)]
    [InlineData("overlay @single", null)]
    [InlineData("reach @bridge", null)]
    public void Json_has_every_name_as_it_is_and_shows_none_to_a_terminal_that_does_not_show(string line, string? mode)
    {
        string output = Run(line + " --format json").Output;
        Assert.Empty(OddNames.Hidden(output));
        using JsonDocument document = JsonDocument.Parse(output);
        string[] strings = [.. Strings(document.RootElement)];
        if (mode is not null)
        {
            Assert.Superset(OddNames.Modes.ToHashSet(), strings.ToHashSet());
        }

        Assert.Contains(strings, s => OddNames.Hidden(s).Any());
    }

    [Fact]
    public void A_message_about_a_file_of_an_odd_name_is_one_line()
    {
        ToolRun run = ToolRun.Of("analyze", _folder.PathOf("=a\u001b[31m\n\u202Eb.toml"));
        Assert.Equal(1, run.Code);
        Assert.Single(run.ErrorLines);
        Assert.Empty(OddNames.Hidden(run.Error));
    }

    [Theory]
    [InlineData("\u001b[31m")]
    [InlineData("\u202Ex")]
    public void A_mistake_of_the_command_line_repeats_no_command_of_a_terminal(string word)
    {
        foreach (string[] arguments in new string[][] { [word], ["analyze", "x.toml", "--format", word], ["sweep", "x.toml", "--frequency", word], ["analyze", "--family", word], ["compare", "x.toml", word + "=1"] })
        {
            ToolRun run = ToolRun.Of(arguments);
            Assert.Empty(OddNames.Hidden(run.Error + run.Output));
        }
    }

    [Fact]
    public void The_check_sees_what_does_not_show() => Assert.Equal(
        ["U+001B at 1", "U+202E at 2", "U+FFFE at 3", "U+D800 at 4", "U+E0041 at 6", "U+2028 at 8", "U+000D at 9"],
        OddNames.Hidden("a\u001b\u202E\uFFFE\uD800b\U000E0041\u2028\r\n\U0001F600"));

    private ToolRun Run(string line)
    {
        string file = _folder.Write("=odd.toml", NetlistWriter.ToToml(OddNames.Converter));
        string single = _folder.Write("single.toml", NetlistWriter.ToToml(OddNames.Single));
        string bridge = _folder.Write("bridge.toml", NetlistFolder.Bridge.Replace("\"Bridge\"", "\"=\\u001b\\u202Ebridge\"", StringComparison.Ordinal));
        return ToolRun.Of([.. line.Split(' ').Select(w => w switch { "@" => file, "@single" => single, "@bridge" => bridge, _ => w })]);
    }

    private static IEnumerable<string[]> Rows(string csv)
    {
        using TextFieldParser parser = new(new StringReader(csv)) { Delimiters = [","], HasFieldsEnclosedInQuotes = true, TrimWhiteSpace = false };
        while (!parser.EndOfData)
        {
            yield return parser.ReadFields()!;
        }
    }

    private static IEnumerable<string> Strings(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p => Strings(p.Value).Prepend(p.Name)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Strings),
        JsonValueKind.String => [element.GetString()!],
        _ => [],
    };

    // a number, or a fraction
    [GeneratedRegex(@"^[+-]?\d+(?:\.\d+)?(?:E[+-]?\d+)?(?:/\d+)?$")]
    private static partial Regex Harmless();
}
