using ScNet.Analysis;
using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Tests.Analysis;

/// <summary>What a direction says of itself.</summary>
public sealed class FlowDirectionTests
{
    // branches: fly 0, the stiff output 1, the input 2, coil 3; index branch · 2 + phase
    private static readonly SwitchedNetwork s_network = Converter.Create("two phases").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n").Inductor("coil", "x", "vout")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "x", on: [1, 2]).Switch("s3", "p", "gnd", on: 2)
        .Build().Network;

    [Fact]
    public void The_charge_of_the_source_is_what_its_branch_takes_turned_round_and_nothing_else_counts()
    {
        Assert.Equal((2, 3), (s_network.InputBranch, s_network.FirstInductorBranch));
        FlowDirection all = new(SparseVector.Of([0, 3, 4, 5, 6, 7], [5, 7, -0.25, -0.5, 11, 13]), default);
        FlowDirection input = new(SparseVector.Of([4], [-0.25]), default);
        FlowDirection others = new(SparseVector.Of([0, 3, 6], [5, 7, 11]), default);

        Assert.Equal(0.75, all.InputCharge(s_network));
        Assert.Equal(0.25, input.InputCharge(s_network));
        Assert.Equal(0, others.InputCharge(s_network));
        Assert.Equal(0, new FlowDirection(default, SparseVector.Unit(1)).InputCharge(s_network));
    }

    // entries 0 and 1 are the capacitor's, from 2 on those of the output
    [Fact]
    public void A_direction_moves_capacitors_where_an_entry_is_one_of_theirs()
    {
        Assert.True(new FlowDirection(SparseVector.Of([1, 2], [1, -1]), default).MovesCapacitors(1, 2));
        Assert.False(new FlowDirection(SparseVector.Of([2, 3], [1, -1]), default).MovesCapacitors(1, 2));
        Assert.False(new FlowDirection(default, SparseVector.Unit(1)).MovesCapacitors(1, 2));
    }
}
