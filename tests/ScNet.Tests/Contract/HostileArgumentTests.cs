using ScNet.Analysis;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.Tests.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Contract;

/// <summary>Every public member answers hostile arguments by a result or a refusal.</summary>
public sealed class HostileArgumentTests
{
    private static readonly string[] s_grounds = ["ScNet", "ScNet.Netlists", "ScNet.Topologies"];

    [Fact]
    public void Nouns_netlists_and_families_take_or_refuse_whatever_they_are_given() => Check(t => s_grounds.Contains(t.Namespace), least: 200);

    [Fact]
    [Trait("Length", "Long")]
    public void Every_member_takes_or_refuses_whatever_it_is_given() => Check(_ => true, least: 1500);

    private static void Check(Func<Type, bool> isMeant, int least)
    {
        HostileCalls calls = HostileCalls.On(typeof(Converter).Assembly.GetExportedTypes().Where(isMeant), Objects(), ["fly", "s1", "default"]);
        Assert.True(calls.Faults.Count == 0, string.Join('\n', calls.Faults));
        Assert.InRange(calls.MemberCount, least, 10_000);
    }

    // small ones, so that thousands of calls take seconds
    private static IEnumerable<object> Objects()
    {
        Converter half = RatedNetworks.Half().Build();
        ConverterAnalysis analysis = ConverterAnalysis.Of(half);
        ConverterRatings ratings = ConverterRatings.Of(RatedNetworks.Stress(half, new Interval<double>(2.8, 4.2)), new RatingLimits { Switch = DemoDevices.NType1V8, Capacitor = DemoDevices.Dense1V2 });
        return
        [
            half, analysis, ratings, ConverterGateDrive.Of(ratings), RatedNetworks.Example("four-level-stage"), RatedNetworks.Example("two-rails"),
            NetlistReader.Read("name = 5\n", "a.toml"), FamilyCatalogue.All, new FamilyRequest(FamilyCatalogue.All[0], [3], IsStepUp: true), new FamilyOptions(),
            ScNet.Tests.Design.Choice.CoreRequirement.Process, new StackedSwitch(DemoDevices.NType1V2, 1, 1e-6),
        ];
    }
}
