using System.Text.Json.Nodes;

namespace ScNet.Cli.Tests.Commands;

public sealed class FileErrorTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Each_bad_file_has_one_message_and_the_good_ones_are_done()
    {
        string[] bad =
        [
            _folder.PathOf("missing.toml"),
            _folder.PathOf("*.toml"),
            _folder.Folder,
            _folder.Write("empty.toml", string.Empty),
            _folder.Write("wrong.toml", NetlistFolder.Half.Replace("on = 1", "on = 3", StringComparison.Ordinal)),
            Huge(),
            Binary(),
        ];
        string good = _folder.Write("half.toml", NetlistFolder.Half);
        foreach (string[] options in new string[][] { ["analyze"], ["compare", "--input-voltage", "3.6", "--rating", "2"] })
        {
            ToolRun run = ToolRun.Of([.. options, .. bad, good]);
            Assert.Equal(1, run.Code);
            Assert.All(bad, path => Assert.Contains(run.ErrorLines, line => line.StartsWith(path, StringComparison.Ordinal)));
            Assert.All(bad.Where(path => !path.EndsWith("wrong.toml", StringComparison.Ordinal)), path =>
                Assert.Single(run.ErrorLines, line => line.StartsWith(path + ":", StringComparison.Ordinal) || line.StartsWith(path + "(", StringComparison.Ordinal)));
            Assert.All(run.ErrorLines, line => Assert.Contains(": error ", line, StringComparison.Ordinal));
            Assert.Contains("1/2 (0.5)", run.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", run.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_message_begins_with_file_line_and_column()
    {
        string path = _folder.Write("wrong.toml", NetlistFolder.Half.Replace("on = 1 }", "on = 3 }", StringComparison.Ordinal));
        ToolRun run = ToolRun.Of("analyze", path);
        Assert.Equal(1, run.Code);
        Assert.Empty(run.Output);
        Assert.Equal(2, run.ErrorLines.Length);
        Assert.StartsWith($"{path}(9,", run.ErrorLines[0], StringComparison.Ordinal);
        Assert.Contains(": error unknown-phase: ", run.ErrorLines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_bad_file_is_a_document_of_the_json_array_and_a_row_of_the_comparison()
    {
        string missing = _folder.PathOf("missing.toml");
        string good = _folder.Write("half.toml", NetlistFolder.Half);
        ToolRun analysis = ToolRun.Of("analyze", missing, good, "--format", "json");
        JsonArray documents = JsonNode.Parse(analysis.Output)!.AsArray();
        Assert.Equal(1, analysis.Code);
        Assert.Null(documents[0]!["converter"]);
        Assert.Empty(documents[0]!["modes"]!.AsArray());
        Assert.Equal(missing, (string?)documents[0]!["diagnostics"]![0]!["file"]);
        Assert.Equal("file-unreadable", (string?)documents[0]!["diagnostics"]![0]!["code"]);
        Assert.Equal("Half", (string?)documents[1]!["converter"]);

        ToolRun comparison = ToolRun.Of("compare", missing, good, "--input-voltage", "1", "--rating", "1", "--format", "json");
        JsonArray rows = JsonNode.Parse(comparison.Output)!["rows"]!.AsArray();
        Assert.Equal(1, comparison.Code);
        Assert.Equal(["error", "ok"], rows.Select(r => (string?)r!["status"]));
        Assert.Equal("file-unreadable", (string?)rows[0]!["diagnostics"]![0]!["code"]);

        ToolRun csv = ToolRun.Of("compare", missing, good, "--input-voltage", "1", "--rating", "1", "--format", "csv");
        Assert.Equal(1, csv.Code);
        Assert.StartsWith($"{missing},,,error,,", csv.Output.Split('\n')[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Only_bad_files_leave_standard_output_empty()
    {
        ToolRun run = ToolRun.Of("compare", _folder.PathOf("missing.toml"), "--input-voltage", "1", "--rating", "1");
        Assert.Equal(1, run.Code);
        Assert.Empty(run.Output);
    }

    private string Huge()
    {
        string path = _folder.PathOf("huge.toml");
        using FileStream stream = File.Create(path);
        byte[] line = "# nothing but a remark that fills the file\n"u8.ToArray();
        for (int length = 0; length < 50_000_000; length += line.Length)
        {
            stream.Write(line);
        }

        return path;
    }

    private string Binary()
    {
        string path = _folder.PathOf("binary.toml");
        File.WriteAllBytes(path, [0xff, 0xfe, 0x00, 0x01]);
        return path;
    }
}
