using MathNet.Numerics.LinearAlgebra;
using ScNet.Analysis;

namespace ScNet.Tests.Laws;

/// <summary>
/// The charge flow as the null space of Kirchhoff's current law and charge balance, written out with
/// every switch as an unknown and taken apart by MathNet's singular values.
/// </summary>
[Trait("Kind", "Law")]
public sealed class NullSpaceLaws
{
    [Fact]
    public void A_null_space_of_one_dimension_is_the_charge_flow()
    {
        int compared = 0;
        LawSample.Check(
            (_, analysis) =>
            {
                if (UniqueFlow(analysis.Converter, analysis.Mode) is { } unique)
                {
                    Interlocked.Increment(ref compared);
                    AssertFlow(unique.Flow, unique.Phases, analysis);
                }
            },
            iterations: 400);
        Assert.True(compared >= 50, $"Only {compared} networks had a null space of one dimension.");
    }

    private static void AssertFlow(Vector<double> expected, PhaseUnknowns[] phases, ModeAnalysis analysis)
    {
        ChargeFlow flow = analysis.ChargeFlow;
        Assert.Equal(FlowDetermination.Topology, flow.DeterminedBy);
        for (int j = 0; j < phases.Length; j++)
        {
            AssertNear(expected[phases[j].Input], flow.Input[j + 1]);
            AssertNear(expected[phases[j].Output], flow.Output[j + 1]);
            for (int c = 0; c < flow.Capacitors.Count; c++)
            {
                AssertNear(expected[phases[j].Capacitors[c]], flow.Capacitors[c][j + 1]);
            }

            for (int s = 0; s < flow.Switches.Count; s++)
            {
                AssertNear(expected[phases[j].Switches[s]], flow.Switches[s][j + 1]);
            }
        }
    }

    private static void AssertNear(double expected, Quantity actual)
    {
        Assert.Equal(QuantityKind.Exact, actual.Kind);
        LawSample.AssertNear(expected, actual.ToDouble(), "charge", 1e-10);
    }

    // The flow that delivers one unit, or null where it is not the only one.
    private static (Vector<double> Flow, PhaseUnknowns[] Phases)? UniqueFlow(Converter converter, Mode mode)
    {
        DenseSystem system = new();
        PhaseUnknowns[] phases = [.. converter.Phases.Select(p => PhaseUnknowns.Add(system, converter, mode, p.Number))];
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            system.Require(0, phases.Select(p => (p.Capacitors[c], 1.0)));
        }

        if (converter.Load == LoadKind.Current)
        {
            int total = system.Variable();
            for (int j = 0; j < phases.Length; j++)
            {
                system.Require(0, (phases[j].Output, 1), (total, -converter.Phases[j].Duty.ToDouble()));
            }
        }

        Vector<double>[] basis = system.NullSpace();
        double delivered = basis.Length == 1 ? phases.Sum(p => basis[0][p.Output]) : 0;
        return Math.Abs(delivered) > 1e-6 ? (basis[0] / delivered, phases) : null;
    }
}
