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
    public void Nothing_overlaps_in_any_family_up_to_size_eight(int family, LoadKind load, bool isStepUp)
    {
        FamilyOptions options = new(isStepUp, Load: load);
        Assert.Empty(Members(FamilyCatalogue.All[family], options).SelectMany(DrawnNetworks.Faults).Take(10));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Nothing_overlaps_in_the_examples(string file) =>
        Assert.Empty(DrawnNetworks.Faults(NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", file)).Converter!));

    // every choice of numbers up to eight that gives another network
    private static IEnumerable<Converter> Members(Family family, FamilyOptions options)
    {
        IEnumerable<int[]> all = [[]];
        for (int i = 0; i < family.Parameters.Count; i++)
        {
            all = [.. all.SelectMany(a => Enumerable.Range(1, 8).Select(n => (int[])[.. a, n]))];
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
