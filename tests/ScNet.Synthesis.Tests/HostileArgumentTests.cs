using ScNet.Topologies;

namespace ScNet.Synthesis.Tests;

/// <summary>Every public member answers hostile arguments by a result or a refusal.</summary>
public sealed class HostileArgumentTests
{
    [Fact]
    public void Every_member_takes_or_refuses_whatever_it_is_given()
    {
        SynthesisRequest request = Requests.Of(1, "1/2");
        HostileCalls calls = HostileCalls.On(typeof(SynthesisRequest).Assembly.GetExportedTypes(), [request, SmallestConverter.Find(request), new LeastOverlay(), SeriesParallel.StepDown(2)], ["fly", "1/2"]);
        Assert.True(calls.Faults.Count == 0, string.Join('\n', calls.Faults));
        Assert.InRange(calls.MemberCount, 10, 10_000);
    }
}
