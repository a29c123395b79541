using ScNet.Analysis;
using ScNet.Numerics;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>Phases of long ladders, whose modes are found by their chains of loops, are what any phase is.</summary>
public sealed class PhaseOfChainsTests
{
    // the values vary by a few times, or two capacitors lie fourteen decades apart, too far for chains
    [Theory]
    [InlineData(false, 1.0)]
    [InlineData(true, 1.0)]
    [InlineData(false, 1e-14)]
    public void The_rows_of_a_long_ladder_are_a_rotation_of_its_resistors(bool isUp, double smallest)
    {
        Converter ladder = Spread(isUp, smallest);
        PreparedPart part = Prepare(ladder).Parts[0];
        Assert.True(part.Flows.Resistors[0].Length >= 24);
        Assert.Equal(2, part.Phases.Length);
        PhaseModesChecks.AssertIsRotation(part.Phases, part.Flows, ladder);
    }

    /// <summary>A rotation keeps products of charges, and what impulses of charge dissipate: Σ λ q² is Σ a²/C.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_terms_of_a_chain_keep_the_products_of_charges(bool isUp)
    {
        Converter ladder = Spread(isUp, smallest: 1);
        ModeAnalysis analysis = ModeAnalysis.Of(ladder, ladder.Modes[0]);
        FullTopology topology = FullTopology.Of(ladder, analysis.Topology);
        ResistorFlows flows = ResistorFlows.Of(ladder, topology);
        PreparedPart part = Prepare(ladder).Parts[0];
        for (int phase = 0; phase < 2; phase++)
        {
            LoopChains chains = LoopChains.TryOf(ladder, topology.Forests[phase], flows, phase)!;
            PhaseTerms[] both = [PhaseTerms.TryOf(chains, flows, phase)!, part.Phases[phase].Terms];
            Assert.True(part.IsChain(phase));
            foreach (PhaseTerms terms in both)
            {
                Assert.Equal(flows.Resistors[phase].Length, terms.Count);
                Assert.Equal(flows.Resistors[phase].Length, terms.Ramps.Length);
                Assert.All(terms.Ramps, ramp => Assert.Equal(0, ramp));
                double[][] columns = [flows.Particular[phase], .. flows.Directions.Select(d => d[phase])];
                for (int a = 0; a < columns.Length; a++)
                {
                    for (int b = 0; b < columns.Length; b++)
                    {
                        double product = Enumerable.Range(0, terms.Count).Sum(row => Charge(terms, row, a) * Charge(terms, row, b));
                        Assert.Equal(columns[a].Zip(columns[b], (x, y) => x * y).Sum(), product, 1e-12);
                    }
                }
            }

            double impulses = Enumerable.Range(0, both[0].Count).Sum(row => both[0].Rates[row] * both[0].Particular(row) * both[0].Particular(row));
            Assert.Equal(impulses, Enumerable.Range(0, both[1].Count).Sum(row => both[1].Rates[row] * both[1].Particular(row) * both[1].Particular(row)), 1e-10 * impulses);
            Assert.True(impulses > 0);
        }

        static double Charge(PhaseTerms terms, int row, int column) => column == 0 ? terms.Particular(row) : terms.Directions(row)[column - 1];
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_rates_of_a_phase_are_those_of_its_chains_to_the_last_digit(bool isUp)
    {
        Converter ladder = Spread(isUp, smallest: 1);
        FullTopology topology = FullTopology.Of(ladder, ModeAnalysis.Of(ladder, ladder.Modes[0]).Topology);
        PreparedPart part = Prepare(ladder).Parts[0];
        for (int phase = 0; phase < 2; phase++)
        {
            double[] rates = LoopChains.TryOf(ladder, topology.Forests[phase], part.Flows, phase)!.TryRotate(new DenseRows(part.Flows.Resistors[phase].Length, 1))!;
            Assert.Equal(rates.Where(r => r > 0).Order(), part.Phases[phase].Rates.Where(r => r > 0).Order());
        }
    }

    // rates found by chains and by dense rows serve the same impedance
    [Fact]
    public void The_impedance_is_the_same_whether_rows_were_made_before_or_not()
    {
        Converter ladder = Spread(isUp: true, smallest: 1);
        double expected = Prepare(ladder).Ohms(3);
        PreparedPart part = Prepare(ladder).Parts[0];
        Assert.NotEmpty(part.Phases);
        Assert.Equal(expected, part.Kernel.Ohms(3), 1e-11 * expected);
    }

    private static Converter Spread(bool isUp, double smallest)
    {
        Converter ladder = isUp ? Ladder.StepUp(14) : Ladder.StepDown(26);
        double[] farads = [.. ladder.Capacitors.Select((_, i) => i == 3 ? smallest : 1 + (0.7 * (i % 5)))];
        return ladder.WithValues(farads, [.. ladder.Switches.Select((_, i) => 1 + (0.3 * (i % 4)))], [.. ladder.Capacitors.Select((_, i) => isUp ? 0.1 + (0.01 * (i % 3)) : 0)]);
    }

    private static PreparedMode Prepare(Converter converter) => PreparedMode.Of(converter, ModeAnalysis.Of(converter, converter.Modes[0]).Topology);
}
