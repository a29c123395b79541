using CsCheck;
using ScNet.Analysis;
using ScNet.Tests.Networks;

namespace ScNet.Tests.Analysis;

/// <summary>Networks put together without any sense: each finding is held against the equations solved directly.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public class ModeFindingsLaws
{
    private const double Solvable = 1e-9;
    private const double Tolerance = 1e-10;

    [Fact]
    public void Every_network_has_a_result_or_a_true_reason_why_not()
    {
        Dictionary<string, int> seen = [];
        AnyNetworks.Gen.Holds(
            sample =>
            {
                Converter converter = sample.Build();
                ModeOutcome outcome = ModeAnalysis.Try(converter, converter.Modes[0]);
                string[] errors = [.. outcome.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).Select(d => d.Code)];
                Assert.Equal(errors.Length == 0, outcome.HasResult);
                foreach (string code in outcome.HasResult ? ["ok"] : errors.Distinct())
                {
                    seen[code] = seen.GetValueOrDefault(code) + 1;
                }

                Check(outcome, errors);
            },
            count: 1000,
            print: s => s.ToString());
        Assert.All(
            new[]
            {
                "ok", DiagnosticCodes.InputShorted, DiagnosticCodes.OutputShorted, DiagnosticCodes.CapacitorShorted, DiagnosticCodes.VoltageConflict,
                DiagnosticCodes.OutputNeverCharged, DiagnosticCodes.CapacitorUnbalanced, DiagnosticCodes.ZeroRatio, DiagnosticCodes.LoadInterrupted,
            },
            code => Assert.True(LawCheck.IsOneCase || seen.GetValueOrDefault(code) > 0, $"{code} never came up"));
    }

    private static void Check(ModeOutcome outcome, string[] errors)
    {
        Converter converter = outcome.Converter;
        if (errors.Any(e => e is DiagnosticCodes.InputShorted or DiagnosticCodes.OutputShorted or DiagnosticCodes.LoadInterrupted))
        {
            // told before anything else is looked at
            return;
        }

        bool conflicts = errors.Any(e => e is DiagnosticCodes.VoltageConflict or DiagnosticCodes.CapacitorShorted);
        SteadyStateOracle unloaded = SteadyStateOracle.Unloaded(converter);
        Assert.Equal(!conflicts, unloaded.Residual < Solvable);
        if (conflicts)
        {
            return;
        }

        bool isStarved = errors.Any(e => e is DiagnosticCodes.OutputNeverCharged or DiagnosticCodes.CapacitorUnbalanced);
        Assert.Equal(!isStarved, SteadyStateOracle.AnyFlow(converter).Residual < Solvable);
        if (isStarved)
        {
            return;
        }

        Assert.Equal(errors.Contains(DiagnosticCodes.ZeroRatio), Math.Abs(unloaded.OutputVolts) < Solvable);
        if (outcome.Analysis is { } analysis)
        {
            WorstErrors.OfRun.Require("ideal ratio", unloaded.OutputVolts, analysis.Ratio.ToDouble(), 1, Tolerance);
            CheckVoltages(analysis, unloaded);
            ValueDecidedFlowLaws.CheckSlow(analysis);
            ValueDecidedFlowLaws.CheckFast(analysis);
        }
    }

    // what is determined is the same in every solution of the equations, so in the shortest one
    private static void CheckVoltages(ModeAnalysis analysis, SteadyStateOracle unloaded)
    {
        Converter converter = analysis.Converter;
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            if (analysis.IdealPoint.CapacitorVoltages[c] is { IsDetermined: true } volts)
            {
                WorstErrors.OfRun.Require("ideal capacitor voltages", unloaded.CapacitorVolts(c), volts.ToDouble(), 1, Tolerance, converter.Capacitors[c].Name);
            }
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch own = converter.Switches[s];
            for (int j = 0; j < converter.Phases.Count; j++)
            {
                if (analysis.BlockingVoltages.Switches[s][j + 1] is { IsDetermined: true } blocked)
                {
                    double across = own.FirstNode == own.SecondNode ? 0 : unloaded.PotentialOf(own.FirstNode, j) - unloaded.PotentialOf(own.SecondNode, j);
                    WorstErrors.OfRun.Require("blocking voltages", across, blocked.ToDouble(), 1, Tolerance, $"{own.Name} in phase {j + 1}");
                }
            }
        }
    }
}
