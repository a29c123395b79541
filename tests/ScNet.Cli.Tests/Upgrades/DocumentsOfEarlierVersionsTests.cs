using ScNet.Derivations;
using ScNet.Derivations.Documents;
using ScNet.Design.Requirements;
using ScNet.Netlists;
using ScNet.Search.Shards;

namespace ScNet.Cli.Tests.Upgrades;

/// <summary>
/// Documents as version 0.1 of the library read and wrote them, kept in a folder of that name: every later version must read them as
/// what they were. Nobody changes them; a later version adds a folder of its own.
/// </summary>
public sealed class DocumentsOfEarlierVersionsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("scnet-tests-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("netlist")]
    [InlineData("hybrid")]
    public void A_netlist_is_read_as_the_converter_whose_analysis_was_saved(string name)
    {
        AnalysisSnapshot saved = AnalysisSnapshot.Load(Sample($"{name}.json"));
        Converter converter = NetlistReader.ReadFile(Sample($"{name}.toml")).GetConverter();
        Assert.Equal(converter.Modes.Count, converter.Modes.Count(m => saved.ToString().Contains($"  {m.Name}: ratio = ", StringComparison.Ordinal)));
        AnalysisDifference difference = AnalysisDifference.Between(saved, AnalysisSnapshot.Of(converter));
        Assert.True(difference.IsEmpty, difference.ToString());
    }

    [Fact]
    public void A_snapshot_says_what_it_said()
    {
        AnalysisSnapshot saved = AnalysisSnapshot.Load(Sample("netlist.json"));
        Assert.Equal(
            ["Memory gears", "  1/3: flow by topology", "  1/2: flow by componentValues", "  2/3: flow by topology", "  1/3: ratio = 1/3 V/V", "  1/3: input charge in phase 1 = 1/3"],
            saved.ToString().Split('\n')[..6]);
        Assert.Equal(File.ReadAllText(Sample("netlist.json")).TrimEnd(), saved.ToJson());
    }

    [Fact]
    public void A_requirement_says_what_it_said()
    {
        Requirement requirement = RequirementReader.ReadFile(Sample("requirement.toml")).GetRequirement();
        Assert.Equal(("Core of the tag", 2.8, 4.2, 162.0, 6e-7), (requirement.Name, requirement.InputVolts.Minimum, requirement.InputVolts.Maximum, requirement.CellCoulombs, requirement.AreaSquareMetres));
        Assert.Equal(["sleep", "active", "burst"], requirement.Loads.Select(l => l.Name));
        Assert.Equal(["n 1.2 V", "n 1.8 V", "p 1.8 V", "n 5 V"], requirement.Process.Switches.Select(s => s.Name));
        GoldenFile.Is(RequirementWriter.ToToml(requirement), [.. Folder, "requirement.written.toml"]);
    }

    [Fact]
    public void A_derivation_is_as_right_as_it_was()
    {
        DerivationReading reading = DerivationReader.ReadFile(Sample("derivation.toml"));
        DerivationReport report = reading.GetDerivation().Check();
        Assert.True(report.IsRight, report.ToString());
        Assert.Equal((10, 2), (reading.Derivation!.Statements.Count, reading.Derivation.Forms.Count));
    }

    [Fact]
    public void A_part_of_an_atlas_is_put_together_to_the_same_bytes()
    {
        string part = Path.Combine(_folder, "atlas-2-1-of-1.shard"), output = Path.Combine(_folder, "whole.atlas");
        File.Copy(Sample("atlas-2-1-of-1.shard"), part);
        ShardMerge merge = ShardMerge.Of(_folder, output);
        Assert.True(merge.HasResult, string.Join('\n', merge.Diagnostics));
        Assert.Equal(File.ReadAllBytes(part), File.ReadAllBytes(output));
    }

    [Fact]
    public void Every_sample_is_read_by_a_test() => Assert.Equal(
        ["atlas-2-1-of-1.shard", "derivation.toml", "hybrid.json", "hybrid.toml", "netlist.json", "netlist.toml", "requirement.toml", "requirement.written.toml"],
        Directory.GetFiles(RepositoryFiles.PathOf(Folder)).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));

    private static string[] Folder => ["tests", "ScNet.Cli.Tests", "Upgrades", "0.1"];

    private static string Sample(string name) => RepositoryFiles.PathOf([.. Folder, name]);
}
