using System.Diagnostics;
using System.Text;

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
        Assert.DoesNotContain("Exception", error, StringComparison.Ordinal);
        Assert.InRange(process.ExitCode, 0, 1);
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

    private sealed class FullWriter : StringWriter
    {
        public override void Flush() => throw new IOException("The disk is full.");
    }
}
