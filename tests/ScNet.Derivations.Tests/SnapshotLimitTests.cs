using System.Text;

namespace ScNet.Derivations.Tests;

/// <summary>Saved analyses at their limits.</summary>
public sealed class SnapshotLimitTests
{
    [Fact]
    public void A_file_without_an_end_is_not_read_for_ever()
    {
        if (File.Exists("/dev/zero"))
        {
            ScNetException refusal = Assert.Throws<ScNetException>(() => AnalysisSnapshot.Load("/dev/zero"));
            Assert.Equal(DiagnosticCodes.FileTooLarge, Assert.Single(refusal.Diagnostics).Code);
        }
    }

    [Fact]
    public void Brackets_without_an_end_are_a_mistake_of_the_document()
    {
        foreach (string text in new[] { new string('[', 100_000), string.Concat(Enumerable.Repeat("{\"modes\":", 100_000)), "{\"converter\":\"\\ud800\",\"modes\":[]}" })
        {
            Assert.Single(Assert.Throws<ScNetException>(() => AnalysisSnapshot.Parse(text)).Diagnostics);
        }
    }

    [Fact]
    public void Many_modes_take_memory_in_proportion_to_their_number_and_a_mode_that_is_there_twice_is_found()
    {
        (long small, long large) = (Cost(1_000), Cost(4_000));
        Assert.InRange(large / (double)small, 2, 6);
        Assert.Throws<ScNetException>(() => AnalysisSnapshot.Parse(Document(100).Replace("\"m99\"", "\"m3\"", StringComparison.Ordinal)));

        static long Cost(int modes)
        {
            string text = Document(modes);
            AnalysisSnapshot.Parse(text);
            long start = GC.GetAllocatedBytesForCurrentThread();
            AnalysisSnapshot.Parse(text);
            return GC.GetAllocatedBytesForCurrentThread() - start;
        }
    }

    private static string Document(int modes)
    {
        StringBuilder text = new("{\"converter\":\"n\",\"modes\":[");
        return text.AppendJoin(',', Enumerable.Range(0, modes).Select(i => $"{{\"mode\":\"m{i}\",\"status\":\"error\",\"ratio\":null}}")).Append("]}").ToString();
    }
}
