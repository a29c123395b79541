using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Tests.Design.Requirements;

public sealed class RequirementWriterTests
{
    private static readonly Requirement s_small = RequirementReader.Read(RequirementDocuments.Small).GetRequirement();

    [Fact]
    public void A_document_starts_with_the_version_of_the_format() =>
        Assert.StartsWith("format = 1\nname = \"Small\"\n", RequirementWriter.ToToml(s_small), StringComparison.Ordinal);

    [Fact]
    public void A_range_of_one_value_is_written_as_that_value()
    {
        string text = RequirementWriter.ToToml(s_small with { Discharge = [], InputVolts = new(3.5, 3.5) });
        Assert.Contains("\ninput_volts = 3.5\n", text, StringComparison.Ordinal);
        Assert.Contains("\nfrequency_hertz = [", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_source_of_most_kinds_is_written_once_in_the_process()
    {
        // two of the three kinds keep theirs
        SwitchDevice thin = s_small.Process.Switches[0] with { Source = "measured" };
        string text = RequirementWriter.ToToml(s_small with { Process = s_small.Process with { Switches = [thin] } });
        Assert.Contains("[process]\nname = \"p\"\nsource = \"invented\"\n", text, StringComparison.Ordinal);
        Assert.Contains("[process.switches.thin]\nsource = \"measured\"\n", text, StringComparison.Ordinal);
        Assert.Equal(2, text.Split("source = ").Length - 1);
    }
}
