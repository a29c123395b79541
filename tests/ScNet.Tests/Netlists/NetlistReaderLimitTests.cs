using System.Text;
using ScNet.Netlists;

namespace ScNet.Tests.Netlists;

public sealed class NetlistReaderLimitTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scnet-reader-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_file_reads_like_its_text()
    {
        string path = Write("half.toml", Encoding.UTF8.GetBytes("\uFEFF" + Documents.Half));

        NetlistReading reading = NetlistReader.ReadFile(path);

        Assert.Equal(Documents.Describe(NetlistReader.Read(Documents.Half).GetConverter()), Documents.Describe(reading.GetConverter()));
    }

    [Fact]
    public void Positions_name_the_file()
    {
        string path = Write("bad.toml", Encoding.UTF8.GetBytes(Documents.HalfWith("farads", "farad")));

        Assert.Equal(new SourcePosition(path, 6, 31), Assert.Single(NetlistReader.ReadFile(path).Diagnostics).Position);
    }

    [Fact]
    public void A_missing_file_is_one_error() => ExpectUnreadable(Path.Combine(_folder.FullName, "none.toml"), "There is no file");

    [Fact]
    public void A_missing_folder_is_one_error() => ExpectUnreadable(Path.Combine(_folder.FullName, "none", "a.toml"), "There is no file");

    [Fact]
    public void A_directory_is_one_error() => ExpectUnreadable(_folder.FullName, "is a directory");

    [Fact]
    public void A_path_that_no_file_can_have_is_one_error() => ExpectUnreadable("a\0b", "cannot be read");

    [Fact]
    public void A_file_without_permission_is_one_error()
    {
        // another handle that shares nothing: refused by the library even for an administrator
        string path = Write("locked.toml", [1]);
        using FileStream locked = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);

        ExpectUnreadable(path, "cannot be read");
    }

    [Fact]
    public void Bytes_that_are_not_UTF8_are_one_error_at_their_place()
    {
        string path = Write("latin.toml", [.. "name = 'a'\n# \u00B5 "u8, 0xB5, .. "\n"u8]);

        Diagnostic error = Assert.Single(NetlistReader.ReadFile(path).Diagnostics);

        Assert.Equal((DiagnosticCodes.FileUnreadable, new SourcePosition(path, 2, 5)), (error.Code, error.Position));
        Assert.Contains("0xB5", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n  # only a comment\n")]
    public void An_empty_document_is_one_error(string text)
    {
        string path = Write("empty.toml", Encoding.UTF8.GetBytes(text));

        Diagnostic error = Assert.Single(NetlistReader.ReadFile(path).Diagnostics);

        Assert.Equal((DiagnosticCodes.MissingKey, new SourcePosition(path, 1, 1)), (error.Code, error.Position));
    }

    [Fact]
    public void A_file_over_the_limit_is_not_read()
    {
        string path = Path.Combine(_folder.FullName, "large.toml");
        using (FileStream stream = File.Create(path))
        {
            stream.SetLength(NetlistReader.MaximumLength + 1L);
        }

        Diagnostic error = Assert.Single(NetlistReader.ReadFile(path).Diagnostics);

        Assert.Equal(DiagnosticCodes.FileTooLarge, error.Code);
        Assert.Contains("16777216 bytes, but the document has 16777217", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_an_end_is_not_read_for_ever()
    {
        if (File.Exists("/dev/zero"))
        {
            Assert.Equal(DiagnosticCodes.FileTooLarge, Assert.Single(NetlistReader.ReadFile("/dev/zero").Diagnostics).Code);
        }
    }

    [Fact]
    public void A_text_over_the_limit_is_not_parsed() =>
        Assert.Equal(DiagnosticCodes.FileTooLarge, Documents.OnlyError(new string(' ', NetlistReader.MaximumLength + 1)).Code);

    [Fact]
    public void A_text_at_the_limit_is_parsed()
    {
        string text = Documents.Half + "\n#" + new string('x', NetlistReader.MaximumLength - Documents.Half.Length - 2);

        Assert.True(NetlistReader.Read(text).HasResult);
    }

    // by name: documents of megabytes would be written out as the names of tests
    private static readonly Dictionary<string, string> s_bombs = new(StringComparer.Ordinal)
    {
        ["brackets open"] = "x = " + new string('[', 100_000),
        ["brackets"] = "x = " + new string('[', 100_000) + new string(']', 100_000),
        ["brackets of a table"] = new string('[', 100_000),
        ["inline tables"] = "x = " + string.Concat(Enumerable.Repeat("{a=", 100_000)),
        ["a dotted key"] = "x" + string.Concat(Enumerable.Repeat(".a", 100_000)) + " = 1",
        ["a dotted heading"] = "[x" + string.Concat(Enumerable.Repeat(".a", 100_000)) + "]",
        ["a dotted key within"] = "x = {a" + string.Concat(Enumerable.Repeat(".a", 100_000)) + " = 1}",
        ["a key again and again"] = string.Concat(Enumerable.Repeat("x = 1\n", 100_000)),
        ["a list again and again"] = string.Concat(Enumerable.Repeat("[[x]]\n", 100_000)),
        ["headings open"] = string.Concat(Enumerable.Repeat("[x", 100_000)),
        ["unknown escapes"] = "x = \"" + string.Concat(Enumerable.Repeat("\\q", 100_000)),
        ["control characters"] = "x = '" + new string('\u0001', 100_000),
        ["lone surrogates"] = "x = '" + new string('\uD800', 100_000),
        ["a long number"] = "x = " + new string('9', 1_000_000),
        ["a long fraction"] = "phases.duty = [0." + new string('3', 1_000_000) + "]",
        ["equals signs"] = new string('=', 5_000_000),
    };

    public static TheoryData<string> Bombs => [.. s_bombs.Keys];

    [Theory]
    [MemberData(nameof(Bombs))]
    public void No_document_hangs_or_overflows_the_stack(string bomb)
    {
        NetlistReading reading = NetlistReader.Read(s_bombs[bomb]);

        Assert.False(reading.HasResult);
        Assert.InRange(reading.Diagnostics.Count, 1, 1001);
        Assert.All(reading.Diagnostics, d => Assert.InRange(d.Message.Length, 1, 600));
    }

    [Fact]
    public void Nesting_over_the_limit_is_told_with_the_limit() => Assert.Contains(
        "more than 64 deep", Documents.OnlyError("x = " + new string('[', 65) + new string(']', 65)).Message, StringComparison.Ordinal);

    [Fact]
    public void Reading_and_building_cells_in_parallel_takes_memory_in_proportion_to_their_number()
    {
        (long read, long built) = Cost(400);
        (long readTwice, long builtTwice) = Cost(800);

        Assert.InRange(readTwice / (double)read, 1.5, 2.4);
        Assert.InRange(builtTwice / (double)built, 1.5, 2.4);

        // a second time, when everything that happens once has happened
        static (long Read, long Built) Cost(int cells)
        {
            Converter converter = Cells(cells);
            string text = NetlistWriter.ToToml(converter);
            NetlistReader.Read(text).GetConverter();
            long start = GC.GetAllocatedBytesForCurrentThread();
            NetlistReader.Read(text).GetConverter();
            long read = GC.GetAllocatedBytesForCurrentThread();
            Cells(cells);
            return (read - start, GC.GetAllocatedBytesForCurrentThread() - read);
        }

        static Converter Cells(int count)
        {
            ConverterBuilder builder = Converter.Create("cells").Input("vin").Output("vout");
            for (int i = 0; i < count; i++)
            {
                builder.Capacitor($"fly{i}", $"p{i}", $"n{i}")
                    .Switch($"a{i}", "vin", $"p{i}", on: 1).Switch($"b{i}", $"n{i}", "vout", on: 1)
                    .Switch($"c{i}", $"p{i}", "vout", on: 2).Switch($"d{i}", $"n{i}", "gnd", on: 2);
            }

            return builder.Build();
        }
    }

    [Fact]
    public void More_modes_phases_and_switches_than_memory_holds_are_an_error()
    {
        StringBuilder text = new("name='n'\ninput='a'\noutput='b'\nphases.count=1000\n[switches]\n");
        for (int i = 0; i < 1000; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"s{i}.between=['a','b']\n");
        }

        for (int i = 0; i < 101; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"[modes.m{i}]\n");
        }

        Diagnostic error = Documents.ExpectError(text.ToString(), DiagnosticCodes.ValueOutOfRange, 1, 1);
        Assert.Contains("101 modes of 1000 phases and 1000 switches", error.Message, StringComparison.Ordinal);
    }

    private string Write(string name, byte[] bytes)
    {
        string path = Path.Combine(_folder.FullName, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private static void ExpectUnreadable(string path, string part)
    {
        NetlistReading reading = NetlistReader.ReadFile(path);

        Assert.Null(reading.Converter);
        Diagnostic error = Assert.Single(reading.Diagnostics);
        Assert.Equal((DiagnosticCodes.FileUnreadable, new SourcePosition(path, 0, 0)), (error.Code, error.Position));
        Assert.Contains(part, error.Message, StringComparison.Ordinal);
    }
}
