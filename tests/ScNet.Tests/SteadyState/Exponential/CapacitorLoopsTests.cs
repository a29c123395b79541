using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Rows of loops by hand: the sum of a row times the capacitors' voltages is the voltage around its loop.</summary>
public sealed class CapacitorLoopsTests
{
    [Fact]
    public void A_loop_through_the_input_has_each_capacitor_with_its_direction()
    {
        // input and reference count as joined: v(1,3) + v(3,4) - v(0,4) around the loop
        SwitchedLinearNetwork network = SmallNetwork.Of(5, [""], capacitors: [(1, 3), (0, 4), (3, 4)]);
        Assert.Equal([1, -1, 1], Rows(network));
    }

    [Fact]
    public void Capacitors_without_a_loop_have_no_row() =>
        Assert.Empty(Rows(SmallNetwork.Of(6, [""], capacitors: [(1, 3), (4, 5)])));

    [Fact]
    public void Every_further_capacitor_closes_a_loop_of_its_own()
    {
        // the second lies against the first, the third along it
        SwitchedLinearNetwork network = SmallNetwork.Of(5, [""], capacitors: [(3, 4), (4, 3), (3, 4)]);
        Assert.Equal([1, 1, 0, -1, 0, 1], Rows(network));
    }

    [Fact]
    public void Closed_switches_and_inductors_are_connections_and_open_ones_are_not()
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(
            5, ["10", "01", "11"], resistors: [(3, 1), (4, 0)], capacitors: [(3, 4)]);
        Assert.Empty(Rows(network, 0));
        Assert.Empty(Rows(network, 1));
        Assert.Equal([1], Rows(network, 2));
        Assert.Equal([1], Rows(SmallNetwork.Of(5, [""], capacitors: [(3, 4)], inductors: [(4, 3)])));
    }

    [Fact]
    public void Only_a_stiff_output_is_joined_to_the_reference()
    {
        Assert.Equal([1], Rows(SmallNetwork.Of(3, [""], capacitors: [(2, 0)])));
        Assert.Empty(Rows(SmallNetwork.Of(3, [""], capacitors: [(2, 0)], isStiff: false)));
    }

    private static List<int> Rows(SwitchedLinearNetwork network, int phase = 0)
    {
        List<int> rows = [];
        CapacitorLoops.AddTo(rows, network, network.Closed[phase]);
        return rows;
    }
}
