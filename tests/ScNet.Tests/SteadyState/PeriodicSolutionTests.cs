using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>A divider by two with 200 switches in a row, between which 199 nodes touch nothing but resistors.</summary>
public sealed class PeriodicSolutionTests
{
    private const int Switches = 200;
    private readonly PreparedPart _part;
    private readonly PeriodicSolution _solution;
    private readonly Converter _converter;

    public PeriodicSolutionTests()
    {
        ConverterBuilder builder = Converter.Create("row").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", Converter.ReferenceNode, on: 2);
        for (int k = 0; k < Switches; k++)
        {
            builder.Switch($"r{k}", k == 0 ? "vin" : $"x{k}", k == Switches - 1 ? "p" : $"x{k + 1}", on: 1);
        }

        _converter = builder.Build();
        PreparedMode prepared = PreparedMode.Of(_converter, ModeAnalysis.Of(_converter).Topology);
        _part = Assert.Single(prepared.Parts);
        _solution = new PeriodicSolution(prepared.Converters[0].Network, _part, new OperatingPoint(2, 0.1, 1e-4), 1, 1);
    }

    // weights of 200 rows would take 1624 bytes for each of two potentials; the waveform itself has a number per mode
    [Fact]
    public void A_potential_that_the_source_fixes_weighs_no_rows_of_node_groups()
    {
        Assert.Equal(Switches, _part.Phases[0].FirstMode);
        int input = _converter.Nodes.PositionOf("vin");
        Assert.Equal(2, _solution.Difference(0, input, 0).At(1e3), 1e-13);
        Assert.InRange(Allocations.Of(() => _solution.Difference(0, input, 0)), 0, (8 * (Switches + 1)) + 1000);
    }
}
