using ScNet.Analysis;

namespace ScNet.Tests.Laws;

/// <summary>Kirchhoff's current law and charge balance, on networks drawn at random.</summary>
[Trait("Kind", "Law")]
public sealed class ChargeLaws
{
    [Fact]
    public void The_ratio_by_voltages_is_the_ratio_by_charges() => LawSample.Check((_, analysis) =>
    {
        // Without load the source's energy is the load's: the sum of the input charge times one volt.
        Assert.True(analysis.Ratio.IsDetermined);
        LawSample.AssertSumIsZero([-analysis.Ratio, .. analysis.ChargeFlow.Input], "ratio less input charge");
    });

    [Fact]
    public void One_unit_of_charge_reaches_the_load() => LawSample.Check((_, analysis) =>
    {
        LawSample.AssertSumIsZero([-1, .. analysis.ChargeFlow.Output], "output charge less one");
        if (analysis.Converter.Load == LoadKind.Current)
        {
            for (int j = 0; j < analysis.Converter.Phases.Count; j++)
            {
                LawSample.AssertNear(analysis.Converter.Phases[j].Duty.ToDouble(), analysis.ChargeFlow.Output[j + 1].ToDouble(), "duty");
            }
        }
    });

    [Fact]
    public void Every_capacitor_is_balanced() => LawSample.Check((_, analysis) =>
        Assert.All(analysis.ChargeFlow.Capacitors, charges => LawSample.AssertSumIsZero([.. charges], "balance")));

    [Fact]
    public void An_open_switch_carries_nothing() => LawSample.Check((_, analysis) =>
    {
        for (int s = 0; s < analysis.Converter.Switches.Count; s++)
        {
            foreach (Phase phase in analysis.Converter.Phases.Where(p => !LawSample.IsClosed(analysis, s, p.Number)))
            {
                Assert.Equal(0, analysis.ChargeFlow.Switches[s][phase.Number]);
            }
        }
    });

    [Fact]
    public void Where_all_charges_are_fractions_no_node_gains_charge_in_any_phase() => LawSample.Check((_, analysis) =>
    {
        if (analysis.ChargeFlow.DeterminedBy == FlowDetermination.Topology
            && analysis.ChargeFlow.Switches.SelectMany(s => s).All(q => q.IsExact))
        {
            NodeSets nodes = NodeSets.Single(analysis.Converter);
            NodeBalance.AssertNoSetGainsCharge(analysis, _ => nodes, capacitors: true, switches: true);
        }
    });

    [Fact]
    public void The_slow_flow_of_the_capacitors_leaves_no_charge_on_joined_nodes() => LawSample.Check((_, analysis) =>
        NodeBalance.AssertNoSetGainsCharge(
            analysis,
            phase => NodeSets.JoinedBySwitches(analysis.Converter, analysis.Mode, phase),
            capacitors: true,
            switches: false));

    [Fact]
    public void The_fast_flow_of_the_switches_leaves_no_charge_on_joined_nodes() => LawSample.Check((_, analysis) =>
    {
        // What enters a capacitor at one plate leaves at the other, so its nodes count as one.
        NodeSets sets = NodeSets.JoinedByCapacitors(analysis.Converter);
        NodeBalance.AssertNoSetGainsCharge(analysis, _ => sets, capacitors: false, switches: true);
    });

    [Fact]
    public void Each_coefficient_is_its_sum_of_squares() => LawSample.Check((_, analysis) =>
    {
        ChargeFlow flow = analysis.ChargeFlow;
        for (int c = 0; c < flow.Capacitors.Count; c++)
        {
            double expected = flow.Capacitors[c].Sum(q => q.ToDouble() * q.ToDouble()) / 2;
            LawSample.AssertNear(expected, analysis.SlowSwitchingLimit.Coefficients[c].ToDouble(), $"c{c}");
        }

        for (int s = 0; s < flow.Switches.Count; s++)
        {
            double expected = flow.Switches[s].Select((q, j) => q.ToDouble() * q.ToDouble() / Duty(analysis, j)).Sum();
            LawSample.AssertNear(expected, analysis.FastSwitchingLimit.SwitchCoefficients[s].ToDouble(), $"s{s}");
        }
    });

    [Fact]
    public void Each_limit_is_the_sum_over_its_elements() => LawSample.Check((_, analysis) =>
    {
        Converter converter = analysis.Converter;
        double slow = converter.Capacitors.Select((c, i) => analysis.SlowSwitchingLimit.Coefficients[i].ToDouble() / c.Farads).Sum();
        double fast = converter.Switches.Select((s, i) => analysis.FastSwitchingLimit.SwitchCoefficients[i].ToDouble() * s.Ohms).Sum()
            + converter.Capacitors.Select((c, i) => c.EsrOhms == 0 ? 0 : analysis.FastSwitchingLimit.CapacitorCoefficients[i].ToDouble() * c.EsrOhms).Sum();
        LawSample.AssertNear(slow, analysis.SlowSwitchingLimit.OhmsAtOneHertz, "slow");
        LawSample.AssertNear(fast, analysis.FastSwitchingLimit.Ohms, "fast");
    });

    private static double Duty(ModeAnalysis analysis, int index) => analysis.Converter.Phases[index].Duty.ToDouble();
}
