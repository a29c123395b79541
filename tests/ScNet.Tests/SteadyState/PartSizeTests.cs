using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// What parts cost, counted by hand. A phase of r resistors has rows of s states, two sources, the particular flow and d
/// directions, and for waveforms of r resistors besides: dense, all rows are turned ten times for each row.
/// </summary>
public sealed class PartSizeTests
{
    // 5, 6 and 7 resistors: two switches of each cell and one series resistance, with one and two switches more
    private static readonly double[] s_resistors = [5, 6, 7];

    [Fact]
    public void Flows_are_made_orthogonal_one_to_another_in_all_phases()
    {
        // twenty sweeps of every pair of directions over 18 resistors, ten for each of three phases besides; charges four times, and pairs
        (PartSize size, double d, _) = Three();
        Assert.Equal(new SteadyStateCost(20 * 48 * d * d, (4 * 18 * d) + (4 * d * d)), size.Flows);
    }

    [Fact]
    public void A_dense_phase_costs_its_numbers_times_its_rows()
    {
        (PartSize size, double d, _) = Three();
        for (int j = 0; j < 3; j++)
        {
            double numbers = s_resistors[j] * (2 + 2 + 1 + d);
            Assert.Equal(new SteadyStateCost(10 * s_resistors[j] * numbers, numbers), size.Dense(j));
        }
    }

    [Fact]
    public void The_impedance_of_dense_phases_needs_the_states_of_all_nodes_and_of_pairs_of_directions()
    {
        (PartSize size, double d, int nodes) = Three();
        SteadyStateCost expected = new(3 * d * d * 2, (nodes + 2) * 2);
        for (int j = 0; j < 3; j++)
        {
            expected += size.Dense(j);
        }

        Assert.Equal(expected, size.Impedance(null));
        Assert.Equal(expected, size.Impedance(_ => false));
    }

    // thirty sweeps for the rates, and the rows of three phases combined twice
    [Fact]
    public void Chains_of_three_phases_combine_the_rows_that_others_need()
    {
        (PartSize size, double d, int nodes) = Three();
        SteadyStateCost expected = new(3 * d * d * 2, (nodes + 2) * 2);
        foreach (double r in s_resistors)
        {
            expected += new SteadyStateCost((30 * r * r) + (2 * r * r * (5 + d + r)), (r * (5 + d)) + (r * r));
        }

        Assert.Equal(expected, size.Impedance(_ => true));
    }

    [Fact]
    public void Chains_of_two_phases_turn_charges_only_and_need_no_states()
    {
        (PartSize size, double d) = Two();
        SteadyStateCost first = new(30 * 25 * (1 + d), 5 * (1 + d)), second = new(30 * 36 * (1 + d), 6 * (1 + d));
        Assert.Equal(first + second, size.Impedance(_ => true));
    }

    [Fact]
    public void One_dense_phase_of_two_needs_the_states_of_its_nodes()
    {
        (PartSize size, double d) = Two();
        SteadyStateCost states = new(0, (Cells(2).Network.NodeCount + 2) * 2);
        Assert.Equal(new SteadyStateCost(30 * 25 * (1 + d), 5 * (1 + d)) + size.Dense(1) + states, size.Impedance(j => j == 0));
        Assert.Equal(size.Dense(0) + size.Dense(1) + states, size.Impedance(null));
        Assert.Equal(size.Dense(0) + new SteadyStateCost(30 * 36 * (1 + d), 6 * (1 + d)) + states, size.Impedance(j => j == 1));
    }

    // r + 2 s signals of r modes each, with products of pairs of modes and a grid of 2500; couplings of modes, states and states
    [Fact]
    public void Elements_need_the_shares_of_resistors_and_their_waveforms()
    {
        (PartSize size, double d, int nodes) = Three();
        SteadyStateCost common = new(3 * d * d * 2, (nodes + 2) * 2), dense = common, chains = common;
        foreach (double r in s_resistors)
        {
            double columns = 5 + d + r;
            SteadyStateCost waveforms = new(((r + 4) * r * ((2 * r) + 2500)) + (r * 4), (2 * r * r) + (r * 3));
            dense += waveforms + new SteadyStateCost(10 * r * r * columns, r * columns);
            chains += waveforms + new SteadyStateCost((30 * r * r) + (2 * r * r * (columns + r)), (r * columns) + (r * r));
        }

        Assert.Equal(dense, size.Elements(null));
        Assert.Equal(chains, size.Elements(_ => true));
    }

    [Fact]
    public void Elements_of_two_phases_need_the_states_too()
    {
        (PartSize size, double d) = Two();
        SteadyStateCost expected = new(2 * d * d * 2, (Cells(2).Network.NodeCount + 2) * 2);
        foreach (double r in new[] { 5.0, 6 })
        {
            double columns = 5 + d + r;
            expected += new SteadyStateCost(((r + 4) * r * ((2 * r) + 2500)) + (r * 4) + (30 * r * r) + (2 * r * r * (columns + r)), (2 * r * r) + (r * 3) + (r * columns) + (r * r));
        }

        Assert.Equal(expected, size.Elements(_ => true));
    }

    // beside two cells a pair of capacitors that exchange charge with one another alone, in rows without a direction
    [Fact]
    public void A_part_that_delivers_nothing_has_no_flows_and_no_impedance()
    {
        Converter converter = Idle();
        PreparedMode prepared = PreparedMode.Of(converter, ModeAnalysis.Of(converter).Topology);
        int idle = Array.FindIndex(prepared.Places.Parts, p => !p.Delivers);
        PartSize size = new(prepared.Converters[idle], FullTopology.Of(prepared.Converters[idle], prepared.Places.Parts[idle].Topology));
        Assert.Equal(default, size.Flows);
        Assert.Equal(default, size.Impedance(null));
        Assert.Equal(new SteadyStateCost(10 * 5, 5), size.Dense(0));
        int nodes = prepared.Converters[idle].Network.NodeCount;
        Assert.Equal(
            new SteadyStateCost(2 * ((10 * 6) + (5 * 2502) + 4), (2 * (6 + 2 + 3)) + ((nodes + 2) * 2)), size.Elements(null));
    }

    private static (PartSize Size, double Directions, int Nodes) Three()
    {
        Converter cells = Cells(3);
        FullTopology topology = FullTopology.Of(cells, ModeAnalysis.Of(cells).Topology);
        Assert.True(topology.Directions.Count > 1);
        return (new PartSize(cells, topology), topology.Directions.Count, cells.Network.NodeCount);
    }

    private static (PartSize Size, double Directions) Two()
    {
        Converter cells = Cells(2);
        FullTopology topology = FullTopology.Of(cells, ModeAnalysis.Of(cells).Topology);
        Assert.True(topology.Directions.Count > 1);
        return (new PartSize(cells, topology), topology.Directions.Count);
    }

    private static Converter Cells(int phases)
    {
        PhaseSet odd = phases == 3 ? [1, 3] : [1];
        ConverterBuilder builder = Two(Converter.Create("cells").Input("vin").Output("vout").Phases(phases), odd)
            .Switch("x1", "p0", "vout", 2);
        return (phases == 3 ? builder.Switch("x2", "n0", "vout", 3).Switch("x3", "n1", "vout", 3) : builder).Build();
    }

    private static Converter Idle() => Two(Converter.Create("idle").Input("vin").Output("vout").Phases(2), [1])
        .Capacitor("left", "l", "gnd").Capacitor("right", "r", "gnd").Switch("j1", "l", "r", on: 1).Switch("j2", "l", "r", on: 2).Build();

    private static ConverterBuilder Two(ConverterBuilder builder, PhaseSet odd)
    {
        for (int k = 0; k < 2; k++)
        {
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}", 1, k == 0 ? 0.1 : 0)
                .Switch($"a{k}", "vin", $"p{k}", odd).Switch($"b{k}", $"n{k}", "vout", odd)
                .Switch($"c{k}", $"p{k}", "vout", 2).Switch($"d{k}", $"n{k}", "gnd", 2);
        }

        return builder;
    }
}
