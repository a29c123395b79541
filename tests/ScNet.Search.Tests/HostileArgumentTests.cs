using Fractions;
using ScNet.Search.Shards;
using ScNet.Search.Tests.Shards;

namespace ScNet.Search.Tests;

/// <summary>Every public member answers hostile arguments by a result or a refusal.</summary>
public sealed class HostileArgumentTests
{
    [Fact]
    public void Every_member_takes_or_refuses_whatever_it_is_given()
    {
        using ShardFolder shards = new();
        ShardRun part = ShardRun.Of(new AtlasShard(1, 1, 1), shards.Parts);
        Atlas two = Atlas.Of(2);
        object[] roots = [part, shards.Merge(), ThreePhaseAtlas.Of(2), two, AtlasAnswer.Of(new AtlasQuery(new Fraction(1, 3)) { CapacitorCount = 2 }, two), CapacitorMap.All(2).First()];
        HostileCalls calls = HostileCalls.On(typeof(Atlas).Assembly.GetExportedTypes(), roots, ["c1", "s1"]);
        Assert.True(calls.Faults.Count == 0, string.Join('\n', calls.Faults));
        Assert.InRange(calls.MemberCount, 50, 10_000);
    }
}
