using ScNet.Analysis;
using ScNet.Tests.Networks;

namespace ScNet.Tests.Analysis;

/// <summary>Hand-made networks whose split of charge depends on component values.</summary>
public class ValueDecidedFlowTests
{
    private const double Tolerance = 1e-12;

    private static ModeAnalysis Analyse(ConverterBuilder builder)
    {
        return ModeAnalysis.Of(builder.Build());
    }

    private static double[] Values(PhaseValues values) => [.. values.Select(q => q.ToDouble())];

    private static void Near(double[] expected, PhaseValues actual) =>
        Assert.All(expected.Zip(Values(actual)), pair => Assert.Equal(pair.First, pair.Second, Tolerance));

    // the half converter with two flying capacitors side by side
    private static ConverterBuilder Parallel(double first, double second) => Converter.Create("parallel").Input("vin").Output("vout")
        .Capacitor("a", "p", "n", first).Capacitor("b", "p", "n", second)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);

    [Fact]
    public void Parallel_flying_capacitors_split_charge_as_their_capacitances()
    {
        ModeAnalysis analysis = Analyse(Parallel(1, 3));
        Assert.Equal(FlowDetermination.ComponentValues, analysis.ChargeFlow.DeterminedBy);
        Near([0.125, -0.125], analysis.ChargeFlow.Capacitors[0]);
        Near([0.375, -0.375], analysis.ChargeFlow.Capacitors[1]);
        Assert.All(analysis.ChargeFlow.Capacitors[0], q => Assert.Equal(QuantityKind.Numeric, q.Kind));

        // together they are one capacitor of their sum, and switches and ports do not notice
        Assert.Equal(0.25 / 4, analysis.SlowSwitchingLimit.OhmsAtOneHertz, Tolerance);
        Assert.Equal([Quantity.Exact(1, 2), Quantity.Zero], analysis.ChargeFlow.Switches[0]);
        Assert.Equal(Quantity.Exact(1, 2), analysis.FastSwitchingLimit.SwitchCoefficients[0]);
        Assert.Equal(2, analysis.FastSwitchingLimit.Ohms, Tolerance);
        Assert.Equal(Quantity.Exact(1, 2), analysis.Ratio);
    }

    [Fact]
    public void Capacitances_twelve_decades_apart_keep_the_accuracy_of_the_larger()
    {
        ModeAnalysis analysis = Analyse(Parallel(1e-12, 1));
        Assert.Equal(0.5e-12 / (1 + 1e-12), analysis.ChargeFlow.Capacitors[0][1].ToDouble(), 1e-16);
        Assert.Equal(0.25, analysis.SlowSwitchingLimit.OhmsAtOneHertz, 1e-12);
    }

    [Fact]
    public void Series_resistances_split_the_fast_flow_of_parallel_capacitors()
    {
        ModeAnalysis analysis = Analyse(Converter.Create("esr").Input("vin").Output("vout")
            .Capacitor("a", "p", "n", esrOhms: 1).Capacitor("b", "p", "n", esrOhms: 3)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2));

        // a carries 3/4 of the charge 1/2 in each phase of duty 1/2; the pair is 3/4 ohm
        Assert.Equal(2 * 2 * 0.375 * 0.375, analysis.FastSwitchingLimit.CapacitorCoefficients[0].ToDouble(), Tolerance);
        Assert.Equal(2 + 0.75, analysis.FastSwitchingLimit.Ohms, Tolerance);
        Near([0.25, -0.25], analysis.ChargeFlow.Capacitors[0]);
    }

    [Fact]
    public void Three_phases_with_a_redundant_capacitor_obey_the_voltage_law_at_every_phase_end()
    {
        // 'twin' lies beside 'fly' in phases 1 and 2, and alone beside the output in phase 3
        ModeAnalysis analysis = Analyse(Converter.Create("three").Input("vin").Output("vout").Phases(3)
            .Capacitor("fly", "p", "n", 2).Capacitor("twin", "t", "u", 1)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("t1", "p", "t", on: [1, 2]).Switch("t2", "n", "u", on: [1, 2])
            .Switch("t3", "t", "vout", on: 3).Switch("t4", "u", "gnd", on: 3));

        // by hand: at the end of phase 2 twin = vout already, so nothing flows in phase 3, and fly : twin = 2 : 1 before
        Near([1 / 3.0, -1 / 3.0, 0], analysis.ChargeFlow.Capacitors[0]);
        Near([1 / 6.0, -1 / 6.0, 0], analysis.ChargeFlow.Capacitors[1]);
        Assert.Equal(1 / 12.0, analysis.SlowSwitchingLimit.OhmsAtOneHertz, Tolerance);
    }

    [Fact]
    public void A_through_connection_closed_in_both_phases_splits_by_duty()
    {
        ModeAnalysis analysis = Analyse(Converter.Create("1/1").Input("vin").Output("vout").Duties(0.3, 0.7)
            .Switch("s1", "vin", "vout", on: [1, 2], ohms: 5));
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
        Near([0.3, 0.7], analysis.ChargeFlow.Input);
        Near([0.3, 0.7], analysis.ChargeFlow.Output);
        Near([0.3, 0.7], analysis.ChargeFlow.Switches[0]);
        Assert.Equal(5, analysis.FastSwitchingLimit.Ohms, Tolerance);
        Assert.Equal(0, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
    }

    [Fact]
    public void Parallel_switches_split_as_their_conductances_and_leave_the_rest_exact()
    {
        ModeAnalysis analysis = Analyse(Converter.Create("twins").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1, ohms: 1).Switch("s1b", "p", "vin", on: 1, ohms: 3).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2));
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
        Near([0.375, 0], analysis.ChargeFlow.Switches[0]);
        Near([-0.125, 0], analysis.ChargeFlow.Switches[1]);
        Assert.Equal(Quantity.Exact(1, 2), analysis.ChargeFlow.Switches[2][1]);
        Assert.Equal(Quantity.Exact(1, 4), analysis.SlowSwitchingLimit.Coefficients[0]);
        Assert.Equal((0.75 * 0.5) + 1.5, analysis.FastSwitchingLimit.Ohms, Tolerance);
    }

    [Fact]
    public void A_balanced_bridge_of_closed_switches_carries_nothing_through_its_middle()
    {
        ModeAnalysis analysis = Analyse(Bridge(1, 2, 2, 4, 7));
        Near([0, 0], analysis.ChargeFlow.Switches[4]);

        // two chains of 3 and 6 ohms in parallel
        Assert.Equal(2, analysis.FastSwitchingLimit.Ohms, Tolerance);
    }

    [Fact]
    public void An_unbalanced_bridge_of_closed_switches_divides_by_nodal_analysis()
    {
        // by hand with 1, 2, 2, 1 and 1 ohms: 1.4 ohms in all, a fifth of the current crosses (common exercise, no source)
        ModeAnalysis analysis = Analyse(Bridge(1, 2, 2, 1, 1));
        Assert.Equal(1.4, analysis.FastSwitchingLimit.Ohms, Tolerance);
        Assert.Equal(0.2, Values(analysis.ChargeFlow.Switches[4]).Sum(), Tolerance);
    }

    private static ConverterBuilder Bridge(double r1, double r2, double r3, double r4, double middle) =>
        Converter.Create("bridge").Input("vin").Output("vout")
            .Switch("r1", "vin", "a", on: [1, 2], r1).Switch("r2", "vin", "b", on: [1, 2], r2)
            .Switch("r3", "a", "vout", on: [1, 2], r3).Switch("r4", "b", "vout", on: [1, 2], r4)
            .Switch("m", "a", "b", on: [1, 2], middle);

    [Fact]
    public void A_capacitor_behind_a_closed_switch_smooths_the_current_through_it_in_the_fast_limit()
    {
        // 'in' always meets the input alone, through s0. In the slow limit it never moves; in the fast limit
        // it takes the difference, so that s0 carries 1/4 in each phase instead of 1/2 in the first.
        ModeAnalysis analysis = Analyse(Converter.Create("filter").Input("vin").Output("vout")
            .Capacitor("in", "x", "gnd").Capacitor("fly", "p", "n").Switch("s0", "vin", "x", on: [1, 2])
            .Switch("s1", "x", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2));
        Assert.Equal(FlowDetermination.Topology, analysis.ChargeFlow.DeterminedBy);
        Assert.Equal([Quantity.Zero, Quantity.Zero], analysis.ChargeFlow.Capacitors[0]);
        Assert.Equal(Quantity.Zero, analysis.SlowSwitchingLimit.Coefficients[0]);
        Near([0.25, 0.25], analysis.ChargeFlow.Switches[0]);
        Near([0.25, 0.25], analysis.ChargeFlow.Input);
        Assert.Equal(2 + 0.25, analysis.FastSwitchingLimit.Ohms, Tolerance);
    }

    [Fact]
    public void A_capacitor_right_across_a_port_leaves_everything_exact()
    {
        ModeAnalysis analysis = Analyse(Parallel(1, 1).Capacitor("in", "vin", "gnd", esrOhms: 1).Capacitor("out", "vout", "gnd"));
        Assert.All(analysis.ChargeFlow.Input, q => Assert.True(q.IsExact));
        Assert.All(analysis.FastSwitchingLimit.SwitchCoefficients, q => Assert.True(q.IsExact));
        Assert.Equal(Quantity.Zero, analysis.FastSwitchingLimit.CapacitorCoefficients[2]);
    }

    [Fact]
    public void A_load_current_between_two_meetings_with_the_source_is_made_good_in_the_next()
    {
        // 'c' meets the source in phases 1 and 3 and feeds the load alone in phase 2: it is recharged in phase 3, not in phase 1
        ModeAnalysis analysis = Analyse(Converter.Create("relief").Input("vin").Output("vout", LoadKind.Current).Phases(3)
            .Capacitor("c", "vout", "gnd").Switch("s1", "vin", "vout", on: [1, 3]));
        Near([0, -1 / 3.0, 1 / 3.0], analysis.ChargeFlow.Capacitors[0]);
        Assert.Equal(Quantity.Exact(1), analysis.Ratio);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(1e-7)]
    public void A_ladder_with_a_capacitor_too_many_agrees_with_the_equations_solved_directly(double farads)
    {
        Converter converter = Ladders.Builder(10, hasTopCapacitor: true).Build();
        Assert.Equal(18, converter.Capacitors.Count);
        converter = converter.WithValues(farads: [.. converter.Capacitors.Select((_, i) => farads * (1 + (i % 5)))]);
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.Equal(FlowDetermination.ComponentValues, analysis.ChargeFlow.DeterminedBy);
        Assert.Equal(Quantity.Exact(1, 10), analysis.Ratio);
        Converter scaled = converter.WithValues(farads: [.. converter.Capacitors.Select((_, i) => 1.0 + (i % 5))]);
        SteadyStateOracle slow = SteadyStateOracle.Slow(scaled);
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            Assert.Equal(slow.CapacitorCharge(i, 0), analysis.ChargeFlow.Capacitors[i][1].ToDouble(), 1e-11);
        }

        double expected = (0.1 - slow.OutputVolts) / farads;
        Assert.Equal(expected, analysis.SlowSwitchingLimit.OhmsAtOneHertz, 1e-10 * expected);
        SteadyStateOracle fast = SteadyStateOracle.Fast(scaled);
        Assert.Equal(0.1 - fast.OutputVolts, analysis.FastSwitchingLimit.Ohms, 1e-10);
    }
}
