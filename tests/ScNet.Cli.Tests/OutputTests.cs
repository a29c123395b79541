using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;

namespace ScNet.Cli.Tests;

public sealed class OutputTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void An_output_that_cannot_be_written_is_one_message_and_exits_with_1()
    {
        using StringWriter error = new();
        using FullWriter output = new();
        int code = Tool.Run(["analyze", _folder.Write("half.toml", NetlistFolder.Half)], new ToolSession { Output = output, Error = error });
        Assert.Equal(1, code);
        Assert.Equal("scnet: the output cannot be written: The disk is full.\n", error.ToString());
    }

    [Fact]
    public async Task A_reader_that_stops_after_the_first_line_does_not_make_the_tool_crash()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        using Process process = Start(["analyze", .. Enumerable.Repeat(half, 500)]);
        string? first = await process.StandardOutput.ReadLineAsync();
        process.StandardOutput.Close();
        string error = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.Equal($"Half ({half})", first);
        Assert.Equal((0, string.Empty), (process.ExitCode, error));
    }

    [Theory]
    [InlineData("analyze", "@half.toml")]
    [InlineData("--help")]
    [InlineData("report", "@half.toml", "--output", "/dev/full")]
    public void A_full_disk_is_one_message_and_exits_with_1(params string[] arguments) =>
        Expect(1, string.Empty, "scnet: the output cannot be written: No space left on device*\n", Shell("exec \"$@\" > /dev/full", arguments));

    [Fact]
    public void A_full_disk_is_told_after_what_was_wrong_before() => Expect(
        1, string.Empty, "@missing.toml: error file-unreadable: *\nscnet: the output cannot be written: No space left on device*\n",
        Shell("exec \"$@\" > /dev/full", "analyze", "@missing.toml", "@half.toml"));

    [Fact]
    public void An_output_that_is_closed_is_one_message_and_exits_with_1() => Expect(
        1, string.Empty, "scnet: the output cannot be written: *\n", Shell("exec \"$@\" >&-", "analyze", "@half.toml"));

    [Theory]
    [InlineData(">/dev/full 2>/dev/full", "analyze", "@half.toml")]
    [InlineData("2>/dev/full", "analyze", "@missing.toml")]
    [InlineData("2>&-", "analyze", "@missing.toml")]
    [InlineData("2>/dev/full", "analyze", "--what")]
    public void Where_messages_cannot_be_written_either_the_exit_code_says_so(string streams, params string[] arguments)
    {
        Finished run = Shell($"exec \"$@\" {streams}", arguments);
        Assert.Equal(string.Empty, run.Output + run.Error);
        Assert.InRange(run.Code, 1, 2);
    }

    [Fact]
    public void An_input_that_cannot_be_read_is_an_error_of_the_input() => Expect(
        1, string.Empty, "standard input: error file-unreadable: *\n", Shell("exec \"$@\" < /", "analyze", "-"));

    [Fact]
    public void An_input_that_is_closed_is_an_error_of_the_input() => Expect(
        1, string.Empty, "standard input: error file-unreadable: *closed*\n", Shell("exec \"$@\" <&-", "analyze", "-"));

    [Theory]
    [InlineData("</dev/null")]
    [InlineData("<\"$4\"")]
    [InlineData("< /proc/self/status")]
    public void An_input_that_is_open_is_read(string input)
    {
        Finished run = Shell($"exec \"$1\" \"$2\" \"$3\" - {input}", "analyze", "@half.toml");
        Assert.DoesNotContain("file-unreadable", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_output_that_grows_beyond_what_files_may_is_one_message_and_exits_with_1()
    {
        string pages = _folder.PathOf("pages.json");
        Expect(
            1, string.Empty, "scnet: the output cannot be written: *\n",
            Shell($"trap '' XFSZ; ulimit -f 4; exec \"$@\" > '{pages}'", ["analyze", "--format", "json", .. Enumerable.Repeat("@half.toml", 40)]));
    }

    [Fact]
    public void A_full_disk_under_a_report_leaves_the_old_file_and_no_part_of_the_new_one()
    {
        string report = _folder.Write("report.html", "old"), half = _folder.Write("half.toml", NetlistFolder.Half);

        // a limit of the size of files stands for the end of the disk: it leaves four blocks of a file that takes hundreds
        Expect(
            1, string.Empty, $"scnet: the output cannot be written: *{report}*\n",
            Shell("trap '' XFSZ; ulimit -f 4; exec \"$@\"", "report", half, "--output", report));
        Assert.Equal("old", File.ReadAllText(report));
        Assert.Equal([half, report], Directory.GetFileSystemEntries(_folder.Folder).Order(StringComparer.Ordinal));
        Expect(0, string.Empty, string.Empty, Shell("exec \"$@\"", "report", half, "--output", report));
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(report), StringComparison.Ordinal);
        Assert.Equal([half, report], Directory.GetFileSystemEntries(_folder.Folder).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("report", "@half.toml", "--output", "/sys/report.html")]
    [InlineData("report", "@half.toml", "--output", "@none/report.html")]
    [InlineData("find", "--ratio", "1/2", "--capacitors", "1", "--netlists", "@half.toml", "--format", "toml")]
    [InlineData("atlas", "--capacitors", "1", "--output", "@half.toml")]
    public void A_place_that_cannot_be_written_to_is_one_message_that_names_it(params string[] arguments)
    {
        Finished run = Shell("exec \"$@\"", arguments);
        string place = arguments.SkipWhile(a => a is not ("--output" or "--netlists")).ElementAt(1);
        Assert.Equal(1, run.Code);
        Assert.Matches($"^scnet: the output cannot be written: .*{place}.*\n$", run.Error);
    }

    [Fact]
    public void A_place_that_cannot_be_written_to_is_told_before_the_work()
    {
        string requirement = RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml");
        Finished run = Shell("exec \"$@\"", "design", requirement, "--netlist", "@none/winner.toml");
        Expect(1, string.Empty, "scnet: the output cannot be written: *@none/winner.toml*\n", run);
    }

    [Theory]
    [InlineData("report", "x.toml", "--output", "")]
    [InlineData("find", "--ratio", "1/2", "--netlists", "")]
    [InlineData("atlas", "--output", "")]
    [InlineData("atlas", "merge", "x", "--output", "")]
    [InlineData("design", "x.toml", "--netlist", "")]
    public void An_empty_name_of_an_output_is_a_mistake_of_the_command_line(params string[] arguments)
    {
        ToolRun run = ToolRun.Of(arguments);
        Assert.Equal((2, string.Empty), (run.Code, run.Output));
        Assert.Contains("but got an empty one", run.ErrorLines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_goes_through_a_pipe_by_the_name_of_standard_output()
    {
        Finished run = Shell("\"$@\" | cat", "report", "@half.toml", "--output", "/dev/stdout");
        Assert.Equal(string.Empty, run.Error);
        Assert.StartsWith("<!DOCTYPE html>", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_process_writes_utf8_without_a_mark_and_returns_the_exit_code()
    {
        using Process process = Start(["analyze", _folder.Write("half.toml", NetlistFolder.Half), _folder.PathOf("missing.toml")]);
        Task<string> error = process.StandardError.ReadToEndAsync();
        using MemoryStream bytes = new();
        await process.StandardOutput.BaseStream.CopyToAsync(bytes);
        await process.WaitForExitAsync();
        Assert.Equal(1, process.ExitCode);
        Assert.Equal((byte)'H', bytes.ToArray()[0]);
        Assert.Contains("4 Ω\n", Encoding.UTF8.GetString(bytes.ToArray()), StringComparison.Ordinal);
        Assert.Contains("missing.toml: error file-unreadable: ", await error, StringComparison.Ordinal);
    }

    private static Process Start(IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new("dotnet", [typeof(Tool).Assembly.Location, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        return Process.Start(start)!;
    }

    // a command line of the shell, in which the tool and its arguments are "$@"; a name after @ is of the folder
    private Finished Shell(string line, params string[] arguments)
    {
        _folder.Write("half.toml", NetlistFolder.Half);
        string[] whole = [.. arguments.Select(a => a.StartsWith('@') ? _folder.PathOf(a[1..]) : a)];
        ProcessStartInfo start = new("sh", ["-c", line, "sh", "dotnet", typeof(Tool).Assembly.Location, .. whole])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };

        // or the runtime asks for more than the size of a file that a test allows
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new Finished(process.ExitCode, output, error.Result.Replace(_folder.Folder + "/", "@", StringComparison.Ordinal));
    }

    // a star in what is expected of standard error stands for anything on a line
    private void Expect(int code, string output, string error, Finished run)
    {
        string pattern = Regex.Escape(error.Replace(_folder.Folder + "/", "@", StringComparison.Ordinal)).Replace("\\*", "[^\n]*", StringComparison.Ordinal);
        Assert.Matches($"^{pattern}$", run.Error);
        Assert.Equal((code, output), (run.Code, run.Output));
    }

    private sealed record Finished(int Code, string Output, string Error);

    private sealed class FullWriter : StringWriter
    {
        public override void Flush() => throw new IOException("The disk is full.");
    }
}
