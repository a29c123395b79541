using ScNet.Analysis;
using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// How earlier phases move what later ones start from, against sums over the capacitors: the charge of each is read off its
/// series resistance, and a charge a lowers the state by a/√C, so that a sum over states is one of a a'/C.
/// </summary>
public sealed class PhaseSkewTests
{
    private static readonly double[] s_farads = [1, 2.5, 0.4, 3];
    private static readonly double[] s_ohms = [1, 0.25, 4, 2];

    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void Charges_of_earlier_phases_count_whole_and_of_the_phase_itself_half(LoadKind load)
    {
        PreparedPart part = Prepare(load);
        int count = part.Flows.Directions.Count;
        Assert.True(count >= 2);
        (double[] square, double[] particular) = PhaseSkew.Of(part.Phases, part.Duties, Charges(part.Phases, count));
        Assert.True(square.Max(Math.Abs) > 1e-2 && particular.Max(Math.Abs) > 1e-2);
        for (int m = 0; m < count; m++)
        {
            Assert.Equal(Skew(part, part.Flows.Directions[m], part.Flows.Particular), particular[m], 1e-13);
            for (int k = 0; k < count; k++)
            {
                Assert.Equal(Skew(part, part.Flows.Directions[m], part.Flows.Directions[k]), square[(m * count) + k], 1e-13);
                Assert.Equal(-square[(k * count) + m], square[(m * count) + k], 1e-13);
            }
        }
    }

    [Fact]
    public void Two_phases_and_flows_without_directions_have_none()
    {
        Assert.True(PhaseSkew.IsNone(2, 5));
        Assert.True(PhaseSkew.IsNone(3, 0));
        Assert.True(PhaseSkew.IsNone(2, 0));
        Assert.False(PhaseSkew.IsNone(3, 1));
        (double[] square, double[] particular) = PhaseSkew.None(3);
        Assert.Empty(square);
        Assert.Equal(new double[3], particular);
    }

    private static double Skew(PreparedPart part, double[][] own, double[][] other)
    {
        double sum = 0;
        for (int i = 0; i < s_farads.Length; i++)
        {
            double before = 0;
            for (int j = 0; j < part.Duties.Length; j++)
            {
                int position = part.Flows.Position(j, 5 + i);
                if (position >= 0)
                {
                    double root = Math.Sqrt(s_ohms[i]), charge = other[j][position] / root;
                    sum += own[j][position] / root / s_farads[i] * (before + (0.5 * charge));
                    before += charge;
                }
            }
        }

        return sum;
    }

    // the particular flow in row 0, the directions in the others; a column per row that has a rate, phase by phase
    private static DenseRows Charges(PhaseModes[] phases, int directions)
    {
        (PhaseModes Modes, int Row)[] rows = [.. phases.SelectMany(p => Enumerable.Range(0, p.ModeCount).Where(r => p.Rates[r] > 0).Select(r => (p, r)))];
        DenseRows charges = new(1 + directions, rows.Length);
        for (int c = 0; c < rows.Length; c++)
        {
            charges[0, c] = rows[c].Modes.Particular(rows[c].Row);
            for (int k = 0; k < directions; k++)
            {
                charges[1 + k, c] = rows[c].Modes.Direction(rows[c].Row, k);
            }
        }

        return charges;
    }

    // three capacitors side by side, on top of the output in phase 1 and across it in phases 2 and 3; s5 is in phase 3 alone
    private static PreparedPart Prepare(LoadKind load)
    {
        ConverterBuilder builder = Converter.Create("three").Input("vin").Output("vout", load).Duties(0.5, 0.2, 0.3);
        for (int i = 0; i < 3; i++)
        {
            builder.Capacitor($"fly{i}", "p", "n", s_farads[i], s_ohms[i]);
        }

        Converter converter = builder.Capacitor("out", "vout", "gnd", s_farads[3], s_ohms[3])
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: [2, 3], ohms: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("s5", "n", "gnd", on: 3, ohms: 0.5).Build();
        return PreparedMode.Of(converter, ModeAnalysis.Of(converter, converter.Modes[0]).Topology).Parts[0];
    }
}
