using ScNet.Analysis;
using ScNet.Tests.Networks;

namespace ScNet.Tests.Analysis;

/// <summary>Random networks against the dense solution of the equations as written down.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public class ValueDecidedFlowLaws
{
    private const double Tolerance = 1e-10;

    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void Flow_and_limits_of_random_networks_agree_with_the_equations_solved_directly(LoadKind load)
    {
        int analysed = 0, withFreedom = 0, decidedByValues = 0;

        // few networks have free flows that join a load current by capacitors, unless two paths lead to it
        ConsistentNetworks.Gen(load, hasTwins: load == LoadKind.Current).Holds(
            sample =>
            {
                ModeOutcome outcome = ModeAnalysis.Try(sample.Converter, sample.Converter.Modes[0]);
                if (outcome.Analysis is not { } analysis)
                {
                    Assert.DoesNotContain(outcome.Diagnostics, d => d.Code is DiagnosticCodes.VoltageConflict or DiagnosticCodes.CapacitorShorted);
                    return;
                }

                Interlocked.Increment(ref analysed);
                if (analysis.Topology.Directions.Count > 0)
                {
                    Interlocked.Increment(ref withFreedom);
                }

                if (analysis.ChargeFlow.DeterminedBy == FlowDetermination.ComponentValues)
                {
                    Interlocked.Increment(ref decidedByValues);
                }

                CheckSlow(analysis);
                CheckFast(analysis);
            },
            count: 450,
            print: s => s.ToString());
        Assert.True(LawCheck.IsOneCase || analysed > LawCheck.Total(450) / 20, $"only {analysed} networks had a result");
        Assert.True(LawCheck.IsOneCase || withFreedom > LawCheck.Total(450) / 140, $"only {withFreedom} networks needed component values");
        Assert.True(LawCheck.IsOneCase || decidedByValues > LawCheck.Total(450) / 140, $"component values decided the slow limit of only {decidedByValues} networks");
    }

    internal static void CheckSlow(ModeAnalysis analysis)
    {
        Converter converter = analysis.Converter;
        SteadyStateOracle oracle = SteadyStateOracle.Slow(converter);
        Assert.InRange(oracle.Residual, 0, 1e-11);
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            for (int j = 0; j < converter.Phases.Count; j++)
            {
                Near("charge multipliers of capacitors", oracle.CapacitorCharge(i, j), analysis.ChargeFlow.Capacitors[i][j + 1].ToDouble(), $"slow {converter.Capacitors[i].Name} in phase {j + 1}");
            }
        }

        if (converter.Load == LoadKind.Stiff)
        {
            Near("slow limit", analysis.Ratio.ToDouble() - oracle.OutputVolts, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
        }
    }

    internal static void CheckFast(ModeAnalysis analysis)
    {
        Converter converter = analysis.Converter;
        SteadyStateOracle oracle = SteadyStateOracle.Fast(converter);
        Assert.InRange(oracle.Residual, 0, 1e-11);
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            for (int j = 0; j < converter.Phases.Count; j++)
            {
                Near("charge multipliers of switches", oracle.SwitchCharge(s, j), analysis.ChargeFlow.Switches[s][j + 1].ToDouble(), $"fast {converter.Switches[s].Name} in phase {j + 1}");
            }
        }

        // without series resistance a capacitor right across a port shares its charge in no particular way
        bool isPortFlowUnique = converter.Capacitors.All(c => c.EsrOhms > 0);
        for (int j = 0; j < converter.Phases.Count && isPortFlowUnique; j++)
        {
            Near("charge multipliers of input and output", oracle.InputCharge(j), analysis.ChargeFlow.Input[j + 1].ToDouble(), $"input in phase {j + 1}");
            Near("charge multipliers of input and output", oracle.OutputCharge(j), analysis.ChargeFlow.Output[j + 1].ToDouble(), $"output in phase {j + 1}");
        }

        Near("fast limit", analysis.Ratio.ToDouble() - oracle.OutputVolts, analysis.FastSwitchingLimit.Ohms);
    }

    private static void Near(string quantity, double expected, double actual, string where = "") =>
        WorstErrors.OfRun.Require(quantity, expected, actual, Math.Max(1, Math.Abs(expected)), Tolerance, where);
}
