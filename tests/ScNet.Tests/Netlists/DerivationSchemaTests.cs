using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using ScNet.Derivations.Documents;

namespace ScNet.Tests.Netlists;

public sealed class DerivationSchemaTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(DerivationReader.JsonSchema);

    [Fact]
    public void The_example_satisfies_the_schema() =>
        Assert.True(IsValid(File.ReadAllText(RepositoryFiles.PathOf("docs", "examples", "derivations", "series-parallel-3.toml"))));

    [Theory]
    [InlineData("format = 1\nratio = \"-1/3\"\ninput_charge = { 1 = 0.5 }\n[charges]\nfly1 = [\"1/3\", \"?\"]\n[formulas]\noutput_voltage = \"V_in\"\n", true)]
    [InlineData("ratio = 1\n", false)]
    [InlineData("format = 2\nratio = 1\n", false)]
    [InlineData("format = 1\nratoi = 1\n", false)]
    [InlineData("format = 1\nratio = \"a third\"\n", false)]
    [InlineData("format = 1\nratio = true\n", false)]
    [InlineData("format = 1\ntolerance = 1\n", false)]
    [InlineData("format = 1\ninput_charge = 1\n", false)]
    [InlineData("format = 1\n[voltages]\nfly1 = [1, 2]\n", false)]
    [InlineData("format = 1\n[charges]\nfly1 = 1\n", false)]
    [InlineData("format = 1\n[formulas]\nssl = \"R\"\n", false)]
    public void It_knows_keys_and_types(string text, bool isValid) => Assert.Equal(isValid, IsValid(text));

    [Fact]
    public void Every_key_is_described()
    {
        JsonObject properties = JsonNode.Parse(DerivationReader.JsonSchema)!["properties"]!.AsObject();
        Assert.All(properties, p => Assert.False(string.IsNullOrEmpty((string?)p.Value!["description"]), p.Key));
        Assert.All(properties["formulas"]!["properties"]!.AsObject(), p => Assert.False(string.IsNullOrEmpty((string?)p.Value!["description"]), p.Key));
        string page = File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "derivation-document.md"));
        Assert.All(properties, p => Assert.Contains(p.Key, page, StringComparison.Ordinal));
    }

    private static bool IsValid(string text)
    {
        using JsonDocument json = NetlistSchemaTests.ToJsonDocument(text);
        return s_schema.Evaluate(json.RootElement).IsValid;
    }
}
