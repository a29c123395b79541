using ScNet.Design;

namespace ScNet.Tests.Design;

public sealed class DecouplingCapacitorsTests
{
    [Theory]
    [InlineData(LoadKind.Stiff, new[] { "in", "turned", "out", "bridge" })]
    [InlineData(LoadKind.Current, new[] { "in", "turned" })]
    public void Capacitors_between_nodes_that_sources_hold_belong_to_the_sources(LoadKind load, string[] expected)
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout", load).Capacitor("in", "vin", "gnd").Capacitor("fly", "p", "n").Capacitor("turned", "gnd", "vin")
            .Capacitor("out", "vout", "gnd").Capacitor("bridge", "vin", "vout").Capacitor("up", "vin", "p").Capacitor("down", "n", "gnd")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        Assert.Equal(expected, DecouplingCapacitors.Of(half).Select(c => c.Name));
    }
}
