using ScNet.Analysis;
using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Charges, drives and what they make of the states of one phase.</summary>
public sealed class ModeFlowTests
{
    private const double Tolerance = 1e-14;

    // one loop: half a unit of charge flows through R into C in phase 1, and out of it in phase 2; the mode carries it with √R at the rate 1 / (R C)
    [Fact]
    public void One_capacitor_takes_half_the_charge_and_gives_it_back()
    {
        const double Farads = 0.2;
        Converter half = OperatedConverters.Half(farads: Farads).Build().WithValues(ohms: [1, 2, 3, 4]);
        double[] loopOhms = [3, 7];
        for (int phase = 0; phase < 2; phase++)
        {
            PhaseModes modes = Modes(half, phase);
            ModeFlow flow = ModeFlow.Of(modes, [], 0.5, 1);
            int mode = modes.ModeCount - 1;
            Assert.Equal(1, mode - modes.FirstMode + 1);
            Assert.Equal(0.5 * Math.Sqrt(loopOhms[phase]), Math.Abs(flow.Charge[mode]), Tolerance);
            Assert.Equal(flow.Charge[mode] / (loopOhms[phase] * Farads), flow.Drive[mode], Tolerance);

            // the state is the voltage times the root of the farads
            Assert.Equal((phase == 0 ? -0.5 : 0.5) / Math.Sqrt(Farads), Assert.Single(flow.Fall()), Tolerance);
        }
    }

    // the load takes its share of the time from the output capacitor, and each phase brings half
    [Theory]
    [InlineData(0.3, 1)]
    [InlineData(0.6, 4)]
    public void A_load_current_lowers_the_output_capacitor_and_drives_the_mode(double duty, double load)
    {
        const double Farads = 2, OutputFarads = 0.5, LoopOhms = 2;
        PhaseModes modes = Modes(OperatedConverters.Loaded(0), 0);
        ModeFlow flow = ModeFlow.Of(modes, [], duty, load);
        double[] fall = [.. flow.Fall().Order()];
        double[] expected = [-0.5 * load / Math.Sqrt(Farads), (duty - 0.5) * load / Math.Sqrt(OutputFarads)];
        Assert.Equal(expected.Order().First(), fall[0], Tolerance * load);
        Assert.Equal(expected.Order().Last(), fall[1], Tolerance * load);

        // λ q less what the falling output would drive through the loop by itself, duty / (Co √R)
        int mode = modes.ModeCount - 1;
        double rate = ((1 / Farads) + (1 / OutputFarads)) / LoopOhms, sign = Math.Sign(flow.Charge[mode]);
        double drive = load * ((rate * 0.5 * Math.Sqrt(LoopOhms)) - (duty / (OutputFarads * Math.Sqrt(LoopOhms))));
        Assert.Equal(sign * drive, flow.Drive[mode], Tolerance * load);
    }

    // three cells side by side: what flows through a cell's switch is what its capacitor takes
    [Fact]
    public void Directions_move_each_capacitor_by_what_flows_through_its_switches()
    {
        Converter cells = ThreeCells();
        ModeAnalysis analysis = ModeAnalysis.Of(cells, cells.Modes[0]);
        ResistorFlows flows = ResistorFlows.Of(cells, FullTopology.Of(cells, analysis.Topology));
        double[] amounts = [0.7, -0.4];
        Assert.Equal(amounts.Length, flows.Directions.Count);
        StateSpace space = StateSpace.Of(cells);
        for (int phase = 0; phase < 2; phase++)
        {
            double[] fall = ModeFlow.Of(Modes(cells, phase), amounts, 0.5, 3).Fall();
            for (int k = 0; k < 3; k++)
            {
                int position = flows.Position(phase, cells.Switches.PositionOf(phase == 0 ? $"a{k}" : $"c{k}"));
                double through = 3 * flows.Particular[phase][position];
                for (int d = 0; d < amounts.Length; d++)
                {
                    through += amounts[d] * flows.Directions[d][phase][position];
                }

                // flows are times the root of the ohms, and discharge the capacitor in phase 2
                double charge = (phase == 0 ? -1 : 1) * through / Math.Sqrt(flows.Ohms(flows.Resistors[phase][position]));
                double change = charge / cells.Capacitors[k].Farads;
                Assert.Equal(change, StateSpace.Dot(space.CapacitorRow(k), fall), 1e-12);
            }
        }
    }

    [Fact]
    public void A_flow_without_load_has_the_charges_of_its_directions_alone()
    {
        PhaseModes modes = Modes(ThreeCells(), 0);
        ModeFlow flow = ModeFlow.Of(modes, [2, 5], 0.5, 0);
        Assert.True(modes.FirstMode > 0);
        for (int row = 0; row < modes.ModeCount; row++)
        {
            Assert.Equal((2 * modes.Direction(row, 0)) + (5 * modes.Direction(row, 1)), flow.Charge[row], 1e-13);
            Assert.Equal(row < modes.FirstMode ? 0 : modes.Rates[row] * flow.Charge[row], flow.Drive[row], 1e-12);
        }
    }

    [Fact]
    public void Rates_and_excess_of_separate_cells_are_those_of_each()
    {
        PhaseModes modes = Modes(ThreeCells(), 0);
        ModePairs pairs = new(modes, new double[modes.ModeCount], new double[modes.ModeCount], 0.3);
        double[] rates = [1 / (8 * 0.1), 1 / (5 * 0.2), 1 / (6 * 0.3)];
        Assert.Equal(modes.ModeCount, pairs.Excess.Length);
        Assert.All(Enumerable.Range(0, modes.FirstMode), k => Assert.Equal(0, pairs.Excess[k]));
        Assert.All(rates, r => Assert.Contains(pairs.Excess, e => Math.Abs(e - ModalFunctions.Excess(r, 0.3)) < 1e-15));
    }

    // sums pair by pair, each mode forwards with the other reversed
    [Fact]
    public void Products_of_pairs_are_the_sums_over_all_pairs()
    {
        PhaseModes modes = Modes(ThreeCells(), 0);
        int first = modes.FirstMode;
        Assert.Equal(first + 3, modes.ModeCount);
        double[] none = new double[first], share = [.. none, 2, 0, -3], other = [.. none, 1, -5, 4];
        foreach (double[] forward in new double[][] { [.. none, 3, 0, 7], [.. none, 0, 11, 2], [.. none, 3, 5, 0] })
        {
            double[] reversed = [.. none, 13, 0, 17];
            ModePairs pairs = new(modes, forward, reversed, 0.3);
            foreach (double[] factors in new[] { share, other })
            {
                double overlap = 0, excess = 0;
                for (int k = first; k < modes.ModeCount; k++)
                {
                    for (int l = first; l < modes.ModeCount; l++)
                    {
                        double product = factors[k] * factors[l] * reversed[k] * forward[l];
                        overlap += product * ModalFunctions.ReversedOverlap(modes.Rates[k], modes.Rates[l], 0.3);
                        excess += product * ModalFunctions.ExcessDifference(modes.Rates[k], modes.Rates[l], 0.3);
                    }
                }

                Assert.Equal(overlap, pairs.OverlapProduct(factors), 1e-12 * Math.Abs(overlap));
                Assert.Equal(excess, pairs.ExcessProduct(factors), 1e-12 * Math.Abs(excess));
            }
        }
    }

    private static PhaseModes Modes(Converter converter, int phase)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        ResistorFlows flows = ResistorFlows.Of(converter, FullTopology.Of(converter, analysis.Topology));
        return PhaseModes.Of(StateSpace.Of(converter), converter, analysis.Topology.Forests[phase], flows, phase, withResistors: false);
    }

    // the first cell has a node between two switches
    private static Converter ThreeCells()
    {
        ConverterBuilder builder = Converter.Create("three cells").Input("vin").Output("vout");
        for (int k = 0; k < 3; k++)
        {
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}", 0.1 * (1 + k))
                .Switch($"a{k}", "vin", k == 0 ? "x" : $"p{k}", on: 1, ohms: 3 + k).Switch($"b{k}", $"n{k}", "vout", on: 1)
                .Switch($"c{k}", $"p{k}", "vout", on: 2, ohms: 2).Switch($"d{k}", $"n{k}", Converter.ReferenceNode, on: 2, ohms: 1 + k);
        }

        return builder.Switch("x", "x", "p0", on: 1, ohms: 4).Build();
    }
}
