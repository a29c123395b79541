using CsCheck;
using ScNet.Analysis;

namespace ScNet.Tests.Laws;

/// <summary>Every network has an outcome: a result of finite numbers, or errors that say why there is none.</summary>
[Trait("Kind", "Law")]
public sealed class OutcomeLaws
{
    private const int Iterations = 3000;

    [Fact]
    public void No_network_makes_the_analysis_throw_or_give_a_number_that_is_not_finite() => RandomNetworks.Any.Holds(
        sketch =>
        {
            if (LawSample.Try(sketch).Analysis is not { } analysis)
            {
                return;
            }

            AssertFinite(analysis.SlowSwitchingLimit.OhmsAtOneHertz);
            AssertFinite(analysis.FastSwitchingLimit.Ohms);
            IEnumerable<Quantity> quantities =
            [
                .. analysis.ChargeFlow.Input, .. analysis.ChargeFlow.Output,
                .. analysis.ChargeFlow.Capacitors.SelectMany(v => v), .. analysis.ChargeFlow.Switches.SelectMany(v => v),
                .. analysis.SlowSwitchingLimit.Coefficients, .. analysis.FastSwitchingLimit.SwitchCoefficients,
            ];
            Assert.All(quantities, q => Assert.True(double.IsFinite(q.ToDouble())));
        },
        count: Iterations);

    [Fact]
    public void A_mode_without_a_result_says_why_and_one_with_a_result_has_no_errors() => RandomNetworks.Any.Holds(
        sketch =>
        {
            ModeOutcome outcome = LawSample.Try(sketch);
            bool hasErrors = outcome.Diagnostics.Any(d => d.Severity == DiagnosticSeverity.Error);
            Assert.NotEqual(outcome.HasResult, hasErrors);
            if (outcome.HasResult)
            {
                Assert.Same(outcome.Analysis, outcome.Require());
                Assert.Equal(outcome.Diagnostics, outcome.Analysis.Diagnostics);
            }
            else
            {
                Assert.Null(outcome.Analysis);
                ScNetException exception = Assert.Throws<ScNetException>(outcome.Require);
                Assert.Equal(outcome.Diagnostics, exception.Diagnostics);
            }
        },
        count: Iterations);

    [Fact]
    public void Every_finding_names_elements_and_phases_of_the_converter() => RandomNetworks.Any.Holds(
        sketch =>
        {
            ModeOutcome analysis = LawSample.Try(sketch);
            HashSet<string> names = [.. analysis.Converter.Capacitors.Select(c => c.Name), .. analysis.Converter.Switches.Select(s => s.Name)];
            foreach (Diagnostic finding in analysis.Diagnostics)
            {
                Assert.Subset(names, finding.Elements.ToHashSet());
                Assert.InRange(finding.Phase ?? 1, 1, sketch.PhaseCount);
                Assert.NotEmpty(finding.Message);
            }
        },
        count: Iterations);

    [Fact]
    public void The_random_networks_are_of_all_kinds()
    {
        int results = 0, byValues = 0, current = 0, manyPhases = 0, warned = 0, failed = 0;
        RandomNetworks.Any.Holds(
            sketch =>
            {
                if (LawSample.Try(sketch).Analysis is not { } analysis)
                {
                    Interlocked.Increment(ref failed);
                    return;
                }

                Interlocked.Increment(ref results);
                Count(ref byValues, analysis.ChargeFlow.DeterminedBy == FlowDetermination.ComponentValues);
                Count(ref current, sketch.Load == LoadKind.Current);
                Count(ref manyPhases, sketch.PhaseCount > 2);
                Count(ref warned, analysis.Diagnostics.Count > 0);
            },
            count: Iterations);
        string shares = $"{results} results, {byValues} by values, {current} current loads, {manyPhases} of many phases, {warned} with warnings, {failed} failed of {Iterations}";
        Console.WriteLine(shares);
        Assert.True(results > 0.3 * Iterations && failed > 0.2 * Iterations, shares);
        Assert.True(byValues > 0.05 * Iterations && current > 0.03 * Iterations, shares);
        Assert.True(manyPhases > 0.1 * Iterations && warned > 0.02 * Iterations, shares);
    }

    private static void Count(ref int counter, bool condition)
    {
        if (condition)
        {
            Interlocked.Increment(ref counter);
        }
    }

    private static void AssertFinite(double ohms)
    {
        Assert.True(double.IsFinite(ohms));
        Assert.True(ohms >= 0);
    }
}
