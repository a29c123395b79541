using ScNet.Analysis;

namespace ScNet.Tests.Laws;

/// <summary>Each limit follows the component values that it depends on, and no others.</summary>
[Trait("Kind", "Law")]
public sealed class ScalingLaws
{
    [Fact]
    public void Larger_capacitances_lower_only_the_slow_limit() => LawSample.Check((_, analysis) =>
    {
        ModeAnalysis scaled = WithValues(analysis, c => 4 * c.Farads, s => s.Ohms, c => c.EsrOhms);
        LawSample.AssertNear(analysis.SlowSwitchingLimit.OhmsAtOneHertz / 4, scaled.SlowSwitchingLimit.OhmsAtOneHertz, "slow");
        LawSample.AssertNear(analysis.FastSwitchingLimit.Ohms, scaled.FastSwitchingLimit.Ohms, "fast");
        AssertSameFlow(analysis.ChargeFlow, scaled.ChargeFlow);
    });

    [Fact]
    public void Larger_resistances_raise_only_the_fast_limit() => LawSample.Check((_, analysis) =>
    {
        ModeAnalysis scaled = WithValues(analysis, c => c.Farads, s => 4 * s.Ohms, c => 4 * c.EsrOhms);
        LawSample.AssertNear(analysis.SlowSwitchingLimit.OhmsAtOneHertz, scaled.SlowSwitchingLimit.OhmsAtOneHertz, "slow");
        LawSample.AssertNear(4 * analysis.FastSwitchingLimit.Ohms, scaled.FastSwitchingLimit.Ohms, "fast");
        AssertSameFlow(analysis.ChargeFlow, scaled.ChargeFlow);
    });

    [Fact]
    public void Other_values_change_neither_ratio_nor_voltages() => LawSample.Check((_, analysis) =>
    {
        int i = 0;
        ModeAnalysis changed = WithValues(analysis, _ => 1 + (++i % 3), _ => 1 + (++i % 5), _ => ++i % 2);
        Assert.Equal(analysis.Ratio, changed.Ratio);
        Assert.Equal(analysis.IdealPoint.CapacitorVoltages, changed.IdealPoint.CapacitorVoltages);
        Assert.Equal(analysis.BlockingVoltages.Peaks, changed.BlockingVoltages.Peaks);
        Assert.Equal(analysis.ChargeFlow.DeterminedBy, changed.ChargeFlow.DeterminedBy);
        if (analysis.ChargeFlow.DeterminedBy == FlowDetermination.Topology)
        {
            for (int c = 0; c < analysis.ChargeFlow.Capacitors.Count; c++)
            {
                Assert.Equal(analysis.ChargeFlow.Capacitors[c], changed.ChargeFlow.Capacitors[c]);
            }
        }
    });

    private static ModeAnalysis WithValues(
        ModeAnalysis analysis, Func<Capacitor, double> farads, Func<Switch, double> ohms, Func<Capacitor, double> esrOhms)
    {
        Converter converter = analysis.Converter.WithValues(
            [.. analysis.Converter.Capacitors.Select(farads)],
            [.. analysis.Converter.Switches.Select(ohms)],
            [.. analysis.Converter.Capacitors.Select(esrOhms)]);
        return ModeAnalysis.Of(converter);
    }

    private static void AssertSameFlow(ChargeFlow expected, ChargeFlow actual)
    {
        for (int c = 0; c < expected.Capacitors.Count; c++)
        {
            AssertSame(expected.Capacitors[c], actual.Capacitors[c], $"c{c}");
        }

        for (int s = 0; s < expected.Switches.Count; s++)
        {
            AssertSame(expected.Switches[s], actual.Switches[s], $"s{s}");
        }
    }

    private static void AssertSame(PhaseValues expected, PhaseValues actual, string what)
    {
        for (int number = 1; number <= expected.PhaseCount; number++)
        {
            LawSample.AssertSame(expected[number], actual[number], what);
        }
    }
}
