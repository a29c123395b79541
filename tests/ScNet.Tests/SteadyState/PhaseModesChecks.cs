using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>What the rows of a phase must be, whichever way they were found.</summary>
internal static class PhaseModesChecks
{
    private const double Tolerance = 1e-11;

    /// <summary>
    /// Every row is a combination of Ohm's law of the resistors, orthogonal to the others; rows of node groups are a triangle,
    /// and the other rows are orthogonal in the states, of lengths squared that are the rates, and touch no node group.
    /// </summary>
    public static void AssertIsRotation(PhaseModes[] phases, ResistorFlows flows, Converter converter)
    {
        StateSpace space = StateSpace.Of(converter);
        for (int j = 0; j < phases.Length; j++)
        {
            PhaseModes modes = phases[j];
            double[][] laws = [.. flows.Resistors[j].Select((resistor, position) => Law(modes, space, converter, flows, j, resistor, position))];
            for (int k = 0; k < modes.ModeCount; k++)
            {
                double[] row = modes.Rows.Row(k).ToArray(), shares = row[modes.ResistorColumn..];
                for (int c = 0; c < row.Length; c++)
                {
                    double scale = laws.Max(law => Math.Abs(law[c]));
                    Assert.Equal(shares.Zip(laws, (share, law) => share * law[c]).Sum(), row[c], Tolerance * scale);
                }

                for (int l = 0; l < modes.ModeCount; l++)
                {
                    Assert.Equal(k == l ? 1 : 0, DenseRows.Dot(shares, modes.Rows.Row(l)[modes.ResistorColumn..]), Tolerance);
                    AssertCouplings(modes, k, l);
                }
            }
        }
    }

    private static void AssertCouplings(PhaseModes modes, int k, int l)
    {
        if (k < modes.FirstMode)
        {
            Assert.Equal(0, modes.Rates[k]);
            Assert.True(l <= k || l >= modes.FirstMode || Math.Abs(modes.Rows[l, modes.GroupOrder[k]]) <= Tolerance, "a triangle");
            return;
        }

        Assert.All(modes.Rows.Row(k)[..modes.Groups].ToArray(), entry => Assert.Equal(0, entry, Tolerance));
        if (l >= modes.FirstMode)
        {
            Assert.Equal(k == l ? modes.Rates[k] : 0, DenseRows.Dot(modes.Coupling(k), modes.Coupling(l)), 1e-9 * Math.Sqrt(modes.Rates[k] * modes.Rates[l]));
        }
    }

    // (potential of the first end less that of the second) / √ohms, by node groups, states and sources; then the charges
    private static double[] Law(PhaseModes modes, StateSpace space, Converter converter, ResistorFlows flows, int phase, int resistor, int position)
    {
        (int first, int second) = PhaseModes.Ends(space, converter.Network, resistor);
        double[] law = new double[modes.ResistorColumn + flows.Resistors[phase].Length];
        foreach ((int node, double sign) in new[] { (first, 1.0), (second, -1.0) })
        {
            double share = sign / Math.Sqrt(flows.Ohms(resistor));
            int group = modes.GroupOf[space.Cluster[node]];
            double[] potential = [.. space.StatesOf(node), .. space.SourcesOf(node)];
            for (int c = 0; c < potential.Length; c++)
            {
                law[modes.Groups + c] += share * potential[c];
            }

            if (group >= 0)
            {
                law[group] += share;
            }
        }

        law[modes.ParticularColumn] = flows.Particular[phase][position];
        for (int k = 0; k < flows.Directions.Count; k++)
        {
            law[modes.DirectionColumn + k] = flows.Directions[k][phase][position];
        }

        law[modes.ResistorColumn + position] = 1;
        return law;
    }
}
