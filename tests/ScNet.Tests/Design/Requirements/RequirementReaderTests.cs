using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Requirements;

public sealed class RequirementReaderTests
{
    [Fact]
    public void Every_key_reaches_the_requirement()
    {
        Requirement r = RequirementReader.Read(RequirementDocuments.Small).GetRequirement();

        Assert.Equal(("Small", new Interval<double>(2.8, 4.2), new Interval<double>(1e5, 1e8), 1e-6), (r.Name, r.InputVolts, r.FrequencyHz, r.AreaSquareMetres));
        Assert.Equal([new DischargePoint(1, 4.2), new(0.4, 3.6), new(0, 2.8)], r.Discharge);
        Assert.Equal([0.8, 1.0], r.OutputVolts);
        Assert.False(r.OutputIsRange);
        Assert.Equal([new LoadShare("sleep", 1e-5, 0.9), new("active", 1e-3, 0.1, 1.0)], r.Loads);
        SwitchDevice thin = Assert.Single(r.Process.Switches);
        Assert.Equal(("thin", "invented", DevicePolarity.NType, 1.8, 1.5, 1.98), (thin.Name, thin.Source, thin.Polarity, thin.RatedVolts, thin.GateDriveVolts, thin.GateRatedVolts));
        Assert.Equal((0.5, 1000, 2e-15, 1e-15, 7e-13, 0.7), (thin.ThresholdVolts, thin.OnResistanceOhmMicrometres, thin.GateChargeCoulombsPerMicrometre, thin.JunctionChargeCoulombsPerMicrometre, thin.AreaSquareMetresPerMicrometre, thin.BodyDiodeVolts));
        Assert.Equal([new DensityPoint(0, 4e-3), new(1.8, 8e-3)], Assert.Single(r.Process.Capacitors).DensityAgainstBias);
        Assert.Equal((1e-6, 0.1, true), (r.Process.Inductors[0].Henries, r.Process.Inductors[0].Ohms, r.Process.Inductors[0].IsOffChip));
        Assert.Equal((1e-6, 0), (r.Process.Control.FixedWatts, r.Process.Control.CoulombsPerCycle));
        Assert.Equal([new Corner("slow", ThresholdFactor: 1.2)], r.Process.Corners);
        Assert.Equal(["ladder 2 to 4", "half.toml"], r.Candidates.Select(c => c.ToString()));
    }

    [Theory]
    [InlineData("[2.8, 4.2]", "[28e-1, 4.2]")]
    [InlineData("name = \"Small\"", "format = 1\nname = 'Small'")]
    [InlineData("[process.control]\nfixed_watts = 1e-6", "[process]\ncontrol = { fixed_watts = 1e-6, coulombs_per_cycle = 0 }", "name = \"p\"\nsource = \"invented\"\n", "")]
    [InlineData("[process.corners.slow]\nthreshold_factor = 1.2", "[process.corners]\nslow = { threshold_factor = 1.2 }")]
    [InlineData("threshold_volts = 0.5", "threshold_volts = 0.5\npolarity = \"n\"\ndiode_volts = 0.7\nstack_area_factor = 1\nguard_metres = 0")]
    public void Every_spelling_of_the_same_reads_the_same(string old, string replacement, string second = "", string by = "")
    {
        string text = RequirementDocuments.With(old, replacement);
        if (second.Length > 0)
        {
            text = text.Replace("[process]\n" + second, by, StringComparison.Ordinal).Replace("[process]\ncontrol", "[process]\n" + second + "control", StringComparison.Ordinal);
        }

        Assert.Equal(
            RequirementDocuments.Describe(RequirementReader.Read(RequirementDocuments.Small).GetRequirement()),
            RequirementDocuments.Describe(RequirementReader.Read(text).GetRequirement()));
    }

    [Fact]
    public void Arrays_of_tables_may_stand_in_brackets()
    {
        string[] parts = RequirementDocuments.Small.Split("[[loads]]\n");
        string rest = parts[2][parts[2].IndexOf("[process]", StringComparison.Ordinal)..];
        string text = parts[0] + "loads = [{ name = \"sleep\", amperes = 1e-5, share = 0.9 }, { name = \"active\", amperes = 1e-3, share = 0.1, output_volts = 1.0 }]\n" + rest;

        Assert.Equal(
            RequirementDocuments.Describe(RequirementReader.Read(RequirementDocuments.Small).GetRequirement()),
            RequirementDocuments.Describe(RequirementReader.Read(text).GetRequirement()));
    }

    [Theory]
    [InlineData("output_volts = [0.8, 1.0]", "output_range_volts = [0.5, 1.0]")]
    [InlineData("output_volts = [0.8, 1.0]", "output_volts = 1")]
    [InlineData("[2.8, 4.2]", "[2.8, 4.2]")]
    [InlineData("family = \"ladder\"", "families = [\"ladder\", \"dickson\"]\ngears = true")]
    [InlineData("sizes = [2, 4]", "sizes = [2, 4]\nratios = [\"1/2\", 0.25]\ngears = true")]
    [InlineData("sizes = [2, 4]", "sizes = 3")]
    [InlineData("sizes = [2, 4]", "")]
    [InlineData("area_square_metres = 1e-6", "capacitor_area_square_metres = 1e-6\nswitch_area_square_metres = 1e-7")]
    [InlineData("area_square_metres = 1e-6", "area_square_metres = 1e-6\nload_range_amperes = [1e-6, 1]\nripple_volts = 0.01\nsource_ohms = 0.3\ncell_coulombs = 100")]
    public void What_may_be_said_in_another_way_is_taken(string old, string replacement) =>
        Assert.True(RequirementReader.Read(RequirementDocuments.With(old, replacement)).HasResult);

    [Fact]
    public void A_range_of_loads_alone_stands_for_its_ends_and_its_middle()
    {
        string[] parts = RequirementDocuments.Small.Split("[[loads]]\n");
        string rest = parts[2][parts[2].IndexOf("[process]", StringComparison.Ordinal)..];

        Requirement r = RequirementReader.Read(parts[0] + "load_range_amperes = [1e-6, 1e-2]\n" + rest).GetRequirement();

        Assert.Equal(["least", "middle", "most"], r.Loads.Select(l => l.Name));
        Assert.Equal([1e-6, 1e-4, 1e-2], r.Loads.Select(l => double.Round(l.Amperes, 12)));
        Assert.Equal(1, r.Loads.Sum(l => l.Share), 1e-12);
        Assert.Equal("load", Assert.Single(RequirementReader.Read(parts[0] + "load_range_amperes = 1e-3\n" + rest).GetRequirement().Loads).Name);
    }

    [Theory]
    [InlineData("[[candidates]]\nfamily = \"ladder\"\nsizes = [2, 4]\n[[candidates]]\nfile = \"half.toml\"", "", "")]
    [InlineData("[[candidates]]\nfamily = \"ladder\"\nsizes = [2, 4]\n[[candidates]]\nfile = \"half.toml\"", "", "candidates = \"all\"\n")]
    public void All_candidates_are_asked_for_by_a_word_or_by_silence(string old, string replacement, string before) =>
        Assert.Empty(RequirementReader.Read(before + RequirementDocuments.With(old, replacement)).GetRequirement().Candidates);

    [Fact]
    public void The_example_reads_and_names_candidates_of_every_class()
    {
        string path = RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml");
        RequirementReading reading = RequirementReader.ReadFile(path);
        Assert.Empty(reading.Diagnostics);
        Requirement requirement = reading.GetRequirement();
        Assert.StartsWith("# Invented", File.ReadLines(path).First(), StringComparison.Ordinal);
        Assert.InRange(requirement.Discharge.Count, 5, 8);
        Assert.Equal(["sleep", "active", "burst"], requirement.Loads.Select(l => l.Name));

        Candidates candidates = Candidates.Of(requirement, Path.GetDirectoryName(path)!);
        Assert.Empty(candidates.Diagnostics);
        Assert.InRange(candidates.All.Count, 15, 40);
    }

    [Theory]
    [InlineData("family = \"ladder\"", "family = \"lader\"", "There is no family 'lader'")]
    [InlineData("sizes = [2, 4]", "", "No candidate comes of ladder")]
    public void A_family_that_gives_no_candidate_is_told_where_it_is_asked_for(string old, string replacement, string part)
    {
        Requirement requirement = RequirementReader.Read(RequirementDocuments.With(old, replacement), "a.toml").GetRequirement();

        Diagnostic told = Candidates.Of(requirement, "none").Diagnostics[0];

        Assert.Equal(new SourcePosition("a.toml", 39, 3), told.Position);
        Assert.Contains(part, told.Message, StringComparison.Ordinal);
    }
}
