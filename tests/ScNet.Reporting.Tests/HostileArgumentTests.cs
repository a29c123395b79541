using ScNet.Analysis;
using ScNet.Reporting.Tests.Charts;

namespace ScNet.Reporting.Tests;

/// <summary>Every public member answers hostile arguments by a result or a refusal.</summary>
public sealed class HostileArgumentTests
{
    [Fact]
    public void Every_member_takes_or_refuses_whatever_it_is_given()
    {
        HostileCalls calls = HostileCalls.On(typeof(Picture).Assembly.GetExportedTypes(), [ConverterAnalysis.Of(ChartSamples.Read("half"))], ["fly", "s1", "default"]);
        Assert.True(calls.Faults.Count == 0, string.Join('\n', calls.Faults));
        Assert.InRange(calls.MemberCount, 20, 10_000);
    }
}
