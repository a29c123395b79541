using ScNet.Analysis;
using ScNet.Derivations.Documents;
using ScNet.Derivations.Expressions;
using ScNet.Derivations.Pages;
using ScNet.Derivations.Working;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests;

/// <summary>Every public member answers hostile arguments by a result or a refusal.</summary>
public sealed class HostileArgumentTests
{
    [Fact]
    public void Every_member_takes_or_refuses_whatever_it_is_given()
    {
        Converter third = SeriesParallel.StepDown(3);
        ModeAnalysis analysis = ModeAnalysis.Of(third);
        object[] roots =
        [
            Derivation.Of(third).Ratio("1/3").SlowSwitchingLimit("2/(9*C*f)"), Derivation.Of(third).Ratio("1/4").Check(), AnalysisSnapshot.Of(third), ClosedForms.Of(analysis),
            AnalysisDifference.Between(AnalysisSnapshot.Of(third), AnalysisSnapshot.Of(SeriesParallel.StepDown(4))), DutyForms.Of(analysis), Formula.Of(analysis),
            new FormulaList(Formula.Of(analysis), []), WorkedSolution.Of(third, third.Modes[0]), DerivationReader.Read("[derivation]\nratio = \"1/3\"\n", third),
        ];
        HostileCalls calls = HostileCalls.On(typeof(Derivation).Assembly.GetExportedTypes(), roots, ["fly1", "s1", "1/3"]);
        Assert.True(calls.Faults.Count == 0, string.Join('\n', calls.Faults));
        Assert.InRange(calls.MemberCount, 100, 10_000);
    }
}
