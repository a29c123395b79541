using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Currents, potentials and rates of change of small networks by Kirchhoff's laws.</summary>
public sealed class PhaseEquationsTests
{
    private const double Tolerance = 1e-12;

    /// <summary>Three inductors that meet at node 6, beside two capacitors and a third that follows from them and the input.</summary>
    [Fact]
    public void A_junction_of_inductors_beside_capacitors_obeys_kirchhoffs_laws()
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(
            7,
            ["111"],
            resistors: [(1, 5), (5, 3), (4, 2)],
            capacitors: [(4, 3), (3, 0), (4, 1)],
            inductors: [(5, 6), (6, 4), (6, 0)],
            windings: "111",
            furtherLoads: [(6, 3)]);
        NetworkStructure structure = NetworkStructure.Of(network, [20, 30, 6], [30, 6, 20]);
        StateEquations<DoubleDouble> all = StateEquations<DoubleDouble>.Of(
            structure, SmallNetwork.Values([2, 4, 10], [20, 30, 6], [30, 6, 20], [0.5, 0.25, 1.5], [1]));
        PhaseEquations<DoubleDouble> phase = all.Phases[0];

        // v3, v4 - v3, currents of the first and third inductor, both sources and the further load
        const double A = 1.3, B = -0.4, P = 0.7, Q = 0.2, In = 12, Out = 5, Load = 0.3;
        const double V3 = A, V4 = A + B, I1 = P - Q - Load, V5 = ((2 * In) + V3 - (4 * P)) / 3;

        // capacitances [36 6; 6 26] and inductances [36 -6; -6 26] have the triangles [6 0; 1 5] and [6 0; -1 5]
        double[] point = [(6 * A) + B, 5 * B, (6 * P) - Q, 5 * Q, In, Out, Load];
        const double R0 = (In - V5) / 2, R1 = (V5 - V3) / 4, R2 = (V4 - Out) / 10;
        const double Node4 = I1 - R2, Both = R1 + Load + I1 - R2, Loop0 = V5 - V4 - (0.5 * P) - (0.25 * I1), Loop2 = V4 + (0.25 * I1) - (1.5 * Q);
        double[] rates = [Both / 6, (Node4 - (Both / 6)) / 5, Loop0 / 6, (Loop2 + (Loop0 / 6)) / 5];
        for (int x = 0; x < 4; x++)
        {
            Assert.Equal(rates[x], SmallNetwork.Value(all.Row(phase.Generator, x), point), Tolerance);
        }

        // the third inductor's current is its state over five
        double v6 = (20 * rates[3] / 5) + (1.5 * Q);
        double[] potentials = [0, In, Out, V3, V4, V5, v6];
        for (int node = 0; node < potentials.Length; node++)
        {
            Assert.Equal(potentials[node], SmallNetwork.Value(all.Row(phase.Potentials, node), point), Tolerance);
        }

        Assert.All(phase.IsPotentialKnown, Assert.True);
        double[] currents = [R0, R1, R2], coils = [P, I1, Q];
        for (int k = 0; k < 3; k++)
        {
            Assert.Equal(currents[k], SmallNetwork.Value(phase.ResistorCurrents[k], point), Tolerance);
            Assert.Equal(coils[k], SmallNetwork.Value(all.Row(all.Inductors, k), point), Tolerance);
        }

        double[] voltages = [B, A, V4 - In];
        for (int k = 0; k < 3; k++)
        {
            double across = SmallNetwork.Value(all.CapacitorVoltage(k), k < 2 ? [.. point[..4], 0, 0, 0] : point);
            Assert.Equal(voltages[k], across, Tolerance);
        }

        Assert.Equal(R0, SmallNetwork.Value(phase.InputCurrent, point), Tolerance);
        Assert.Equal(R2, SmallNetwork.Value(phase.Output, point), Tolerance);
        Assert.Equal(v6 - V3, SmallNetwork.Value(Assert.Single(phase.FurtherOutputs), point), Tolerance);
    }

    /// <summary>Two conducting diodes and one that blocks, between clusters of capacitors.</summary>
    [Fact]
    public void Diodes_hold_their_voltages_and_carry_what_the_nodes_leave()
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(
            7,
            ["1111101"],
            resistors: [(1, 3), (6, 0), (4, 2), (3, 6), (5, 6), (3, 5), (0, 4)],
            capacitors: [(4, 5), (6, 3)],
            inductors: [(3, 4)],
            furtherLoads: [(4, 6)],
            diodes: 3);
        NetworkStructure structure = NetworkStructure.Of(network, [4, 1], [2]);

        // the fourth lies inside a cluster: however little it has, it moves no potential
        NetworkValues<DoubleDouble> values = SmallNetwork.Values([2, 6, 3, 1e-40, 1, 1, 1], [4, 1], [2], [0], [1], 0.1, 7, 0.2);
        StateEquations<DoubleDouble> all = StateEquations<DoubleDouble>.Of(structure, values);
        DoubleDouble[] found = ClusterPotentials.Of(all, structure, values, 0);

        // v4 - v5, v6 - v3, the inductor's current, sources and load; states are twice the first voltage, the second, and √2 times the current
        const double V = 0.6, W = -0.5, I = 0.35, In = 10, Out = 4, Load = 0.25;
        double[] point = [2 * V, W, Math.Sqrt(2) * I, In, Out, Load];

        // v4 = 0.2 V_in by the last diode; v6 = v5 + 0.1 V_in by the first
        const double B = 0.2 * In, A = (0.1 * In) + B - V - W;
        const double First = ((In - A) / 2) - ((A + W) / 6) - I + Load, Last = First + I - Load - ((B - Out) / 3);
        double[] expected = [0, A, B, First, 0, Last];
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], SmallNetwork.Value(all.Row(found, k), point), Tolerance);
        }

        PhaseEquations<DoubleDouble> phase = all.Phases[0];
        Assert.Equal(-First, SmallNetwork.Value(phase.ResistorCurrents[4], point), Tolerance);
        Assert.Empty(phase.ResistorCurrents[5]);
        Assert.Equal(-Last, SmallNetwork.Value(phase.ResistorCurrents[6], point), Tolerance);
        Assert.Equal((In - A) / 2, SmallNetwork.Value(phase.InputCurrent, point), Tolerance);
        Assert.Equal((B - Out) / 3, SmallNetwork.Value(phase.Output, point), Tolerance);

        // at node 5 the first diode's current charges the first capacitor backwards
        Assert.Equal(-First / 2, SmallNetwork.Value(all.Row(phase.Generator, 0), point), Tolerance);
    }

    [Fact]
    public void The_drive_of_an_input_is_the_largest_entry_of_its_column_whatever_its_sign()
    {
        PhaseEquations<PlainReal> phase = new(
            3, Array.ConvertAll([9.0, 8, 1, -6, 0.5, 7, 9, -4, 2, 0.25], PlainReal.Of), [], [], new PlainReal[5], [], [], [], []);
        Assert.Equal([4, 6, 0.5], phase.Drives);
        Assert.Equal(3, phase.InputCount);
    }

    /// <summary>A dangling resistor carries nothing, which is told exactly however large the potentials are in their unit.</summary>
    [Theory]
    [InlineData(1e-9)]
    [InlineData(0.7e-40)]
    [InlineData(3e40)]
    public void A_dangling_resistor_carries_exactly_nothing(double farads)
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(
            7, ["11111"], resistors: [(1, 3), (3, 5), (5, 6), (3, 4), (4, 0)], capacitors: [(3, 0), (4, 1)]);
        NetworkStructure structure = NetworkStructure.Of(network, [farads, 0.3 * farads], []);
        StateEquations<DoubleDouble> all = StateEquations<DoubleDouble>.Of(
            structure, SmallNetwork.Values([0.3, 0.7, 1.1, 3, 0.9], [farads, 0.3 * farads], [], [], [1]));
        DoubleDouble[][] currents = all.Phases[0].ResistorCurrents;
        Assert.All(currents[1], v => Assert.True(v.IsZero));
        Assert.All(currents[2], v => Assert.True(v.IsZero));

        // (v_in - v3) / 0.3 Ω and v4 / 0.9 Ω are there, the first state being √C v3 and the second √(0.3 C) (v4 - v_in)
        double root = Math.Sqrt(farads);
        Assert.Equal(-2 / 0.3, SmallNetwork.Value(currents[0], [2 * root, 0, 0, 0]), 1e-10);
        Assert.Equal(2 / 0.9, SmallNetwork.Value(currents[4], [0, 2 * Math.Sqrt(0.3) * root, 0, 0]), 1e-10);
    }

    [Fact]
    public void An_output_voltage_that_nothing_fixes_has_no_row()
    {
        // both nodes of the first further output float with their resistor, those of the second float apart, and of the last one is fixed
        SwitchedLinearNetwork network = SmallNetwork.Of(
            7, ["110"], resistors: [(2, 3), (5, 6), (3, 0)], inductors: [(4, 6)], isStiff: false, furtherLoads: [(5, 6), (4, 6), (3, 5), (1, 5)]);
        NetworkStructure structure = NetworkStructure.Of(network, [], [1]);
        PhaseEquations<DoubleDouble> phase = StateEquations<DoubleDouble>.Of(structure, SmallNetwork.Values([1, 2, 3], [], [1], [0], [1])).Phases[0];
        Assert.Equal([true, true, false, false, false, false, false], phase.IsPotentialKnown);
        Assert.Empty(phase.Output);
        Assert.NotEmpty(phase.FurtherOutputs[0]);
        Assert.Empty(phase.FurtherOutputs[1]);
        Assert.Empty(phase.FurtherOutputs[2]);
        Assert.Empty(phase.FurtherOutputs[3]);
    }
}
