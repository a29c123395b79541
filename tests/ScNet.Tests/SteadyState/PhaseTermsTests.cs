using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Twelve cells side by side on a stiff output, each a loop of its own with switches of 1 + k and 2 Ω in phase 1: the charge that a
/// flow sends through cell k is that of both switches, and its mode has it times the root of all ohms.
/// </summary>
public sealed class PhaseTermsTests
{
    private const int Cells = 12;

    [Fact]
    public void Each_mode_of_a_chain_has_the_charges_of_its_cell_in_every_direction()
    {
        Converter cells = Build();
        FullTopology topology = FullTopology.Of(cells, ModeAnalysis.Of(cells).Topology);
        ResistorFlows flows = ResistorFlows.Of(cells, topology);
        PhaseTerms terms = PhaseTerms.TryOf(LoopChains.TryOf(cells, topology.Forests[0], flows, 0)!, flows, 0)!;
        Assert.Equal(Cells - 1, flows.Directions.Count);
        Assert.Equal(2 * Cells, terms.Count);
        for (int k = 0; k < Cells; k++)
        {
            // 1/(R C)
            double ohms = 3 + k, rate = 1 / (ohms * (0.5 + k));
            int row = Assert.Single(Enumerable.Range(0, terms.Count), r => Math.Abs(terms.Rates[r] - rate) < 1e-12 * rate);
            int position = flows.Position(0, cells.Switches.PositionOf($"b{k}"));
            double scale = Math.Sqrt(ohms / 2), sign = Math.Sign(terms.Particular(row) * flows.Particular[0][position]);
            Assert.Equal(scale * flows.Particular[0][position], sign * terms.Particular(row), 1e-13);
            for (int d = 0; d < flows.Directions.Count; d++)
            {
                Assert.Equal(scale * flows.Directions[d][0][position], sign * terms.Directions(row)[d], 1e-13);
            }
        }
    }

    private static Converter Build()
    {
        ConverterBuilder builder = Converter.Create("cells").Input("vin").Output("vout");
        for (int k = 0; k < Cells; k++)
        {
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}", 0.5 + k)
                .Switch($"a{k}", "vin", $"p{k}", on: 1, ohms: 1 + k).Switch($"b{k}", $"n{k}", "vout", on: 1, ohms: 2)
                .Switch($"c{k}", $"p{k}", "vout", on: 2).Switch($"d{k}", $"n{k}", Converter.ReferenceNode, on: 2);
        }

        return builder.Build();
    }
}
