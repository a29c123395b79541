using CsCheck;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

/// <summary>Split phases judged by the analysis of what comes out.</summary>
[Trait("Kind", "Law")]
public sealed class SplitPhaseLaws
{
    private static readonly Gen<Converter> s_fed = Gen.Select(Gen.Int[0, 2], Gen.Int[3, 5], Gen.Int[5, 20].Array[12]).Select((family, n, parts) =>
    {
        Converter stage = InductorFed.Behind(family switch { 0 => Dickson.StepDown(n), 1 => Ladder.StepDown(n - 1), _ => SeriesParallel.StepDown(n) });
        return stage.WithValues(farads: [.. parts.Take(stage.Capacitors.Count).Select(p => p / 10.0)]);
    });

    [Fact]
    public void Families_behind_an_inductor_become_soft_or_at_least_no_worse()
    {
        int soft = 0, hard = 0;
        s_fed.Holds(
            converter =>
            {
                SplitPhase split = Check(ModeAnalysis.Of(converter));
                soft += split.IsSoft && !ReferenceEquals(split.Converter, converter) ? 1 : 0;
                hard += split.IsSoft ? 0 : 1;
            },
            40);
        Assert.True(soft > 5 && hard > 1, $"{soft} made soft, {hard} stay hard.");
    }

    [Fact]
    public void Nothing_gets_worse_in_random_networks() => InductiveNetworks.Any.Holds(
        converter => ConverterAnalysis.Of(converter).Results.ToList().ForEach(a => Check(a)), 60, found: ["0nRxLg1rMOKZ1JOj2"]);

    private static SplitPhase Check(ModeAnalysis given)
    {
        double before = given.ChargeSharing?.OhmsAtOneHertz ?? double.PositiveInfinity;
        SplitPhase split = SplitPhase.Of(given.Converter, given.Mode);
        ModeAnalysis after = ModeAnalysis.Of(split.Converter, split.Mode);
        double left = after.ChargeSharing?.OhmsAtOneHertz ?? double.PositiveInfinity;
        if (split.IsSoft)
        {
            Assert.InRange(left, 0, 1e-12 * (1 + after.SlowSwitchingLimit.OhmsAtOneHertz));
        }
        else
        {
            Assert.Equal(left, split.OhmsAtOneHertz);
            Assert.True(left <= (before * (1 + 1e-9)) + 1e-12, $"{before} became {left}: {split.Reason}");
        }

        return split;
    }
}
