using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Nodes that only inductors reach: a divider by inductances and windings.</summary>
public sealed class InductorPotentialsTests
{
    [Fact]
    public void Inductors_in_series_divide_the_voltage_by_their_inductances_and_windings()
    {
        // from the input over 1, 2, 3 H, a resistor of 5 Ω within, and 4 H to the reference; those in the middle are met last
        SwitchedLinearNetwork network = SmallNetwork.Of(
            8, ["11"], resistors: [(3, 4), (6, 7)], inductors: [(5, 4), (6, 5), (6, 0), (1, 3)], windings: "1111");
        NetworkStructure structure = NetworkStructure.Of(network, [], [2, 3, 4, 1]);
        StateEquations<DoubleDouble> all = StateEquations<DoubleDouble>.Of(structure, SmallNetwork.Values([5, 1], [], [2, 3, 4, 1], [0.2, 0.3, 0.4, 0.1], [1]));
        PhaseEquations<DoubleDouble> phase = all.Phases[0];

        // 10 H and 6 Ω in all; the state is √10 times the current, taken as that of the largest inductor
        const double I = 0.8, In = 9, Slope = (In - (6 * I)) / 10;
        double[] point = [SmallNetwork.Value(all.Row(all.Inductors, 2), [1, 0, 0]) > 0 ? Math.Sqrt(10) * I : -Math.Sqrt(10) * I, In, 0];
        const double V3 = In - Slope - (0.1 * I), V4 = V3 - (5 * I), V5 = V4 - (2 * Slope) - (0.2 * I), V6 = V5 - (3 * Slope) - (0.3 * I);
        double[] expected = [0, In, 0, V3, V4, V5, V6, V6];
        Assert.Equal(V6, (4 * Slope) + (0.4 * I), 1e-12);
        for (int node = 0; node < expected.Length; node++)
        {
            Assert.Equal(expected[node], SmallNetwork.Value(all.Row(phase.Potentials, node), point), 1e-12);
        }

        Assert.All(phase.IsPotentialKnown, Assert.True);
    }
}
