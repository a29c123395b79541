using ScNet.Netlists;
using ScNet.Topologies;

namespace ScNet.Reporting.Tests.Drawings;

public sealed class OverlapTests
{
    public static TheoryData<int, LoadKind, bool> Families
    {
        get
        {
            TheoryData<int, LoadKind, bool> families = [];
            for (int f = 0; f < FamilyCatalogue.All.Count; f++)
            {
                families.Add(f, LoadKind.Stiff, false);
                families.Add(f, LoadKind.Current, false);
                if (FamilyCatalogue.All[f].StepUpRatio is not null)
                {
                    families.Add(f, LoadKind.Stiff, true);
                    families.Add(f, LoadKind.Current, true);
                }
            }

            return families;
        }
    }

    public static TheoryData<string> Examples => [.. Directory.GetFiles(RepositoryFiles.PathOf("docs", "examples"), "*.toml").Where(f => !f.EndsWith("requirement.toml", StringComparison.Ordinal)).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Families))]
    public void Nothing_overlaps_in_any_family_up_to_size_four(int family, LoadKind load, bool isStepUp) =>
        ExpectNoOverlap(family, load, isStepUp, largest: 4, manyModes: 4);

    [Theory]
    [Trait("Length", "Long")]
    [MemberData(nameof(Families))]
    public void Nothing_overlaps_in_any_family_up_to_size_eight(int family, LoadKind load, bool isStepUp) =>
        ExpectNoOverlap(family, load, isStepUp, largest: 8, manyModes: DrawnNetworks.ManyModes);

    [Theory]
    [MemberData(nameof(Examples))]
    public void Nothing_overlaps_in_the_examples(string file) =>
        Assert.Empty(DrawnNetworks.Faults(NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", file)).Converter!));

    private static void ExpectNoOverlap(int family, LoadKind load, bool isStepUp, int largest, int manyModes)
    {
        FamilyOptions options = new(isStepUp, Load: load);
        Converter[] members = [.. Members(FamilyCatalogue.All[family], options, largest)];
        Assert.NotEmpty(members);
        Assert.Empty(members.SelectMany(c => DrawnNetworks.Faults(c, manyModes)).Take(10));
    }

    // every choice of numbers up to the largest that gives another network
    private static IEnumerable<Converter> Members(Family family, FamilyOptions options, int largest)
    {
        IEnumerable<int[]> all = [[]];
        for (int i = 0; i < family.Parameters.Count; i++)
        {
            all = [.. all.SelectMany(a => Enumerable.Range(1, largest).Select(n => (int[])[.. a, n]))];
        }

        return all.Where(n => family.Accepts(n)).Select(n => family.Build(n, options)).DistinctBy(Network);
    }

    private static string Network(Converter converter) => string.Join(';',
    [
        .. converter.Capacitors.Select(c => c.ToString()),
        .. converter.Inductors.Select(l => l.ToString()),
        .. converter.Switches.Select(s => s.ToString()),
        .. converter.Modes.SelectMany(m => m.ClosedPhases).Select(p => p.ToString()),
    ]);
}
