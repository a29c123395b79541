using System.Globalization;
using System.Text;
using ScNet.Analysis;
using ScNet.Netlists;

namespace ScNet.Tests.Netlists;

/// <summary>Documents at their limits work in memory that grows no faster than they do, or are refused.</summary>
public sealed class DocumentsAtTheirLimitsTests
{
    private const string Head = "name='n'\ninput='vin'\noutput='vout'\n";

    public static TheoryData<string, Func<int, string>> Growing => new()
    {
        { "cells", Cells },
        { "further outputs that nothing touches", n => Document("load='current'\n", n, ("capacitors", i => $"c{i}={{between=['x{i}','gnd']}}"), ("outputs", i => $"o{i}={{between=['y{i}','gnd']}}")) },
        { "unknown keys", n => Document(string.Empty, n, ("capacitors", i => $"c{i}={{betwen=['a','b']}}")) },
        { "unknown switches", n => Document(string.Empty, n, ("switches", i => $"s{i}={{between=['vin','vout']}}"), ("modes.m", i => $"t{i}=1")) },
        { "one name", n => Document(string.Empty, n, ("capacitors", _ => "c={between=['a','b']}")) },
        { "switches between open nodes", n => Document(string.Empty, n, ("switches", i => $"s{i}={{between=['x{i}','x{i + 1}'],on=[]}}")) },
        { "modes", n => Document(string.Empty, n, ("switches", i => i == 0 ? "s={between=['vin','vout']}" : string.Empty)) + string.Concat(Enumerable.Range(0, n).Select(i => $"[modes.m{i}]\ns=1\n")) },
    };

    [Theory]
    [MemberData(nameof(Growing))]
    public void Reading_and_analysing_takes_memory_in_proportion_to_the_document(string what, Func<int, string> document)
    {
        (long small, long large) = (Cost(document(300)), Cost(document(1200)));
        Assert.True(large <= 6.0 * small, $"{what}: four times as much takes {large / (double)small:F1} times the memory");

        // a second time, when everything that happens once has happened
        static long Cost(string text)
        {
            Work(text);
            long start = GC.GetAllocatedBytesForCurrentThread();
            Work(text);
            return GC.GetAllocatedBytesForCurrentThread() - start;
        }

        static void Work(string text)
        {
            if (NetlistReader.Read(text).Converter is { } converter)
            {
                _ = ModeAnalysis.Try(converter, converter.Modes[0]);
            }
        }
    }

    [Fact]
    public void Open_voltages_that_would_fill_the_memory_are_an_error_with_a_remedy()
    {
        Converter chain = NetlistReader.Read(Chain(6000)).GetConverter();
        Diagnostic error = Assert.Single(ModeAnalysis.Try(chain, chain.Modes[0]).Diagnostics);
        Assert.Equal((DiagnosticSeverity.Error, DiagnosticCodes.VoltagesTooOpen), (error.Severity, error.Code));
        Assert.Contains("Join capacitors that lie in series", error.Message, StringComparison.Ordinal);
        Converter shorter = NetlistReader.Read(Chain(100)).GetConverter();
        Assert.NotNull(ModeAnalysis.Try(shorter, shorter.Modes[0]).Analysis);
    }

    [Fact]
    public void A_thousand_phases_are_analysed_and_one_more_is_refused()
    {
        string phases = string.Join(',', Enumerable.Range(1, 500).Select(i => (2 * i).ToString(CultureInfo.InvariantCulture))), others = string.Join(',', Enumerable.Range(0, 500).Select(i => ((2 * i) + 1).ToString(CultureInfo.InvariantCulture)));
        string text = Head + "phases.count=1000\n[capacitors]\nfly={between=['p','n']}\n[switches]\n"
            + $"a={{between=['vin','p'],on=[{others}]}}\nb={{between=['n','vout'],on=[{others}]}}\nc={{between=['p','vout'],on=[{phases}]}}\nd={{between=['n','gnd'],on=[{phases}]}}\n";
        ModeAnalysis analysis = ModeAnalysis.Of(NetlistReader.Read(text).GetConverter());
        Assert.Equal("1/2", analysis.Ratio.ToString());
        Assert.Contains(NetlistReader.Read(text.Replace("count=1000", "count=1001", StringComparison.Ordinal)).Diagnostics, d => d.Code == DiagnosticCodes.ValueOutOfRange && d.Position is not null);
    }

    [Fact]
    [Trait("Length", "Long")]
    public void A_document_of_a_million_signs_is_read_and_one_of_more_is_refused_at_once()
    {
        string text = Cells(19_000);
        Assert.InRange(text.Count(c => "=,.[{\\\n".Contains(c, StringComparison.Ordinal)), 700_000, 1_000_000);
        Assert.Equal(19_000, NetlistReader.Read(text).GetConverter().Capacitors.Count);
        string larger = Cells(30_000);
        long start = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(DiagnosticCodes.FileTooLarge, Assert.Single(NetlistReader.Read(larger).Diagnostics).Code);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - start, 0, 1_000_000);
    }

    private static string Cells(int count) => Document(
        string.Empty,
        count,
        ("capacitors", i => $"c{i}={{between=['p{i}','n{i}']}}"),
        ("switches", i => $"a{i}={{between=['vin','p{i}'],on=1}}\nb{i}={{between=['n{i}','vout'],on=1}}\nd{i}={{between=['p{i}','vout'],on=2}}\ne{i}={{between=['n{i}','gnd'],on=2}}"));

    private static string Chain(int count) => Document(string.Empty, count, ("capacitors", i => $"c{i}={{between=['x{i}','x{i + 1}']}}"))
        + $"[switches]\na={{between=['vin','x0'],on=1}}\nb={{between=['x{count}','vout'],on=1}}\nc={{between=['x0','vout'],on=2}}\nd={{between=['x{count}','gnd'],on=2}}\n";

    private static string Document(string more, int count, params (string Table, Func<int, string> Line)[] tables)
    {
        StringBuilder text = new(Head + more);
        foreach ((string table, Func<int, string> line) in tables)
        {
            text.Append('[').Append(table).Append("]\n");
            for (int i = 0; i < count; i++)
            {
                text.Append(line(i)).Append('\n');
            }
        }

        return text.ToString();
    }
}
