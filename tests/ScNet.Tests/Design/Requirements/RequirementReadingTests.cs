using System.Text;
using ScNet.Design.Requirements;
using ScNet.Design.Requirements.Toml;

namespace ScNet.Tests.Design.Requirements;

/// <summary>What a reading says of itself, and what its parts are called.</summary>
public sealed class RequirementReadingTests
{
    [Fact]
    public void Its_text_is_the_requirement_or_every_error_on_a_line()
    {
        Assert.Equal("Small", RequirementReader.Read(RequirementDocuments.Small).ToString());
        RequirementReading wrong = RequirementReader.Read(RequirementDocuments.With("[2.8, 4.2]", "[2.8, -4.2]").Replace("share = 0.9", "share = 90", StringComparison.Ordinal), "a.toml");
        Assert.Equal(["a.toml(2,21)", "a.toml(10,9)"], wrong.ToString().Split('\n').Select(l => l[..l.IndexOf(':', StringComparison.Ordinal)]));
    }

    [Fact]
    public void What_cannot_be_read_from_a_stream_is_reported_with_the_name_of_the_stream()
    {
        using MemoryStream stream = new([0x6E, 0xFF, 0xFE]), nameless = new([0x6E, 0xFF, 0xFE]), sound = new(Encoding.UTF8.GetBytes(RequirementDocuments.Small));
        Assert.Contains("'input.toml' cannot be read", Assert.Throws<ScNetException>(() => RequirementReader.Read(stream, "input.toml").GetRequirement()).Message, StringComparison.Ordinal);
        Assert.Contains("'requirement' cannot be read", Assert.Throws<ScNetException>(() => RequirementReader.Read(nameless).GetRequirement()).Message, StringComparison.Ordinal);
        Assert.Equal("Small", RequirementReader.Read(sound, "input.toml").GetRequirement().Name);
    }

    [Fact]
    public void A_range_of_the_load_is_positive()
    {
        Requirement requirement = RequirementReader.Read(RequirementDocuments.Small).GetRequirement();
        Assert.Throws<ArgumentOutOfRangeException>(() => requirement with { LoadRangeAmperes = new(0, 1) });
        Assert.False((requirement with { LoadRangeAmperes = default }).LoadRangeAmperes.IsDetermined);
    }

    [Fact]
    public void A_range_of_the_output_is_asked_for_at_both_ends_and_three_voltages_evenly_between()
    {
        Requirement requirement = RequirementReader.Read(RequirementDocuments.With("output_volts = [0.8, 1.0]", "output_range_volts = [0.5, 1.5]")).GetRequirement();
        Assert.Equal([0.5, 0.75, 1, 1.25, 1.5], AskedPoints.OutputVolts(requirement));
    }

    [Fact]
    public void Keys_come_in_the_order_of_a_document()
    {
        Assert.Equal(["name", "amperes", "share", "output_volts"], TableShape.Load.Keys);
        Assert.Equal(["loads", "process", "candidates"], TableShape.Root.Keys[^3..]);
        Assert.Equal("farads_per_square_metre_at_volts", TableShape.Capacitor.Keys[^1]);
    }

    [Fact]
    public void Zero_is_only_allowed_where_it_is_told()
    {
        Assert.True(NumberBounds.ZeroOrMore.Contains(0) && NumberBounds.ZeroOrMore.Contains(1e60));
        Assert.False(NumberBounds.Positive.Contains(0) || NumberBounds.Share.Contains(0) || NumberBounds.ZeroOrMore.Contains(-1));
    }

    /// <summary>"cell_volts" means the input voltage, although "cell_coulombs" is the same quantity by its name.</summary>
    [Theory]
    [InlineData("cell_volts", "input_volts")]
    [InlineData("cell_mah", "cell_coulombs")]
    [InlineData("area_mm2", "area_square_metres")]
    public void An_unknown_key_is_taken_by_its_meaning_before_its_name(string key, string known)
    {
        Assert.Equal(known, RequirementKeys.Format.Nearest(key, TableShape.Root.Keys));
        Assert.Equal(known, RequirementKeys.Format.Nearest(key, ["input_volts", "cell_coulombs", "area_square_metres"]));
    }

    /// <summary>"cell" means the charge of the cell; "mohm" is another unit of ohms, however near "mode" is spelled.</summary>
    [Fact]
    public void Meaning_goes_before_quantity_and_quantity_before_spelling()
    {
        Assert.Equal("cell_coulombs", RequirementKeys.Format.Nearest("cell", ["cell_volts", "cell_coulombs"]));
        Assert.Equal("wiring_ohms", RequirementKeys.Format.Nearest("wiring_mohm", ["wiring_mode", "wiring_ohms"]));
    }
}
