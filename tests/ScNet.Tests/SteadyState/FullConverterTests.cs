using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>A converter with its parasitic capacitances as capacitors.</summary>
public sealed class FullConverterTests
{
    [Fact]
    public void Without_parasitic_capacitances_it_is_the_converter_itself()
    {
        Converter half = OperatedConverters.Half().Build();
        Assert.Same(half, Full(half));
    }

    [Fact]
    public void Parasitic_capacitances_are_capacitors_after_its_own()
    {
        Converter full = Full(OperatedConverters.Half(farads: 3).Parasitic("plate", "n", "gnd", 0.25).Build());
        Assert.Equal([3, 0.25], full.Capacitors.Select(c => c.Farads));
        Assert.Equal(("n", "gnd", 0.0), (full.Capacitors[1].PositiveNode, full.Capacitors[1].BottomNode, full.Capacitors[1].EsrOhms));
    }

    private static Converter Full(Converter converter) => FullConverter.Of(converter, FullTopology.Of(converter, ModeAnalysis.Of(converter).Topology));
}
