using System.Collections.Concurrent;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Stress;

/// <summary>
/// The memory gears of docs/examples: two flying capacitors. Steady voltages per volt of input, by
/// Kirchhoff's voltage law: 1/3: fly1 = fly2 = vout = 1/3; 1/2: 1/2, 1/2, 1/2; 2/3: 1/3, 1/3, vout = 2/3.
/// </summary>
public sealed class ModeChangeTests
{
    private static readonly Converter s_gears = RatedNetworks.Example("memory-gears");
    // anew for each test: a change that was found is not found again
    private readonly ConverterStress _stress = RatedNetworks.Stress(s_gears, new Interval<double>(2.8, 4.2));

    // From 1/3 into phase 1 of 1/2: vin –s1– p1, fly1, n1 –s8– vout sums to 1 - 1/3 - 1/3 = 1/3, and so
    // does vin –s9– p2, fly2, n2 –s3– vout. If s1 takes x and s9 takes y of it, 0 ≤ x, y ≤ 1/3:
    //   p1 = 1 - x, n1 = 2/3 - x, p2 = 1 - y, n2 = 2/3 - y,
    //   s2 = n1 - p2 = -1/3 - x + y: -2/3 to 0,   s4 = p1 - vout = 2/3 - x: 1/3 to 2/3,   s5 = n1: 1/3 to 2/3.
    // Into phase 2: fly1 and fly2 lie on vout = 1/3 and fit: s1 = 1 - 1/3 = 2/3, s2 = 0 - 1/3, s8 = -1/3.
    [Fact]
    public void Two_capacitors_of_a_third_put_in_parallel_share_a_third_with_their_switches()
    {
        ModeChange change = _stress.Change("1/3", "1/2");
        Assert.Equal(
            ["1/3 in phase 1 round fly1, taken by s1, s8", "1/3 in phase 1 round fly2, taken by s3, s9"],
            change.Surges.Select(s => s.ToString()).Order());
        Assert.All(change.Surges, s => Assert.Equal(1.4, s.Volts, 1e-12));
        AssertOpen(change, "s1", "0; 2/3");
        AssertOpen(change, "s2", "-2/3 to 0 (surge); -1/3");
        AssertOpen(change, "s3", "0; -1/3");
        AssertOpen(change, "s4", "1/3 to 2/3 (surge); 0");
        AssertOpen(change, "s5", "1/3 to 2/3 (surge); 0");
        AssertOpen(change, "s8", "0; -1/3");
        AssertOpen(change, "s9", "0; 2/3");
        Assert.Equal("0 to 1/3 (surge); 0", RatedNetworks.Text(change.ClosedSwitches[s_gears.Switches.PositionOf("s1")]));
        Assert.Equal(2.8, change.PeakStressVolts!.Value, 1e-12);
        Assert.Equal(1.4, change.PeakSurgeVolts!.Value, 1e-12);
        Assert.True(change.IsExact);
    }

    // From 1/2 into phase 1 of 1/3: vin –s1– fly1 –s2– fly2 –s3– vout sums to 1 - 3/2 = -1/2: n2 may lie as
    // low as 1 - 1 = 0 (s3 takes all) or at vout = 1/2, p1 at 1 or as high as 3/2: above the input!
    [Fact]
    public void Two_capacitors_of_a_half_put_in_series_lift_a_node_above_the_input()
    {
        ModeChange change = _stress.Change("1/2", "1/3");
        LoopSurge surge = Assert.Single(change.Surges);
        Assert.Equal("1/2 in phase 1 round fly1, fly2, taken by s1, s2, s3", surge.ToString());
        AssertOpen(change, "s4", "1/2 to 1 (surge); 0");      // p1 - vout
        AssertOpen(change, "s5", "1/2 to 1 (surge); 0");      // n1
        AssertOpen(change, "s6", "0 to 1/2 (surge); 0");      // p2 - vout
        AssertOpen(change, "s7", "0 to 1/2 (surge); 0");      // n2
        Assert.Equal("-1/2 to 0 (surge); 0", RatedNetworks.Text(change.ClosedSwitches[0]));
    }

    // From 2/3 into phase 1 of 1/2: vin, fly = 1/3, vout = 2/3 fits; into phase 2: fly = 1/3 on vout = 2/3 does not
    [Fact]
    public void A_change_may_fit_in_one_phase_and_surge_in_the_other()
    {
        ModeChange change = _stress.Change("2/3", "1/2");
        Assert.Equal([2, 2], change.Surges.Select(s => s.Phase));
        Assert.All(change.Surges, s => Assert.Equal(Quantity.Exact(1, 3), s.PerVoltOfInput));
    }

    // The least surge of a path: 1/3 per volt everywhere but out of 1/2, which takes 1/2; so 1/2 comes last.
    [Fact]
    public void The_order_with_the_least_surge_leaves_the_half_for_the_end()
    {
        ModeOrder path = _stress.FindOrder(ModeOrderCriterion.Surge);
        Assert.Equal("1/2", path.Modes[^1].Name);
        Assert.Equal(1.4, path.PeakVolts!.Value, 1e-12);
        Assert.Equal(2, path.Changes.Count);
        ModeOrder cycle = _stress.FindOrder(ModeOrderCriterion.Surge, isCycle: true);
        Assert.Equal(2.1, cycle.PeakVolts!.Value, 1e-12);
        Assert.Equal(3, cycle.Changes.Count);
        Assert.Same(cycle.Modes[0], cycle.Changes[^1].To);
    }

    // one capacitor on vout = 1/2 in both modes; x was on vin, and the new mode cuts it off: it may be held at 1
    [Fact]
    public void A_node_that_the_new_mode_lets_float_keeps_what_it_had_in_the_old_one()
    {
        (string, PhaseSet)[] half = RatedNetworks.HalfSwitching;
        Converter converter = RatedNetworks.HalfOfModes().Switch("up", "vin", "x").Switch("down", "x", "gnd")
            .Mode("a", [.. half, ("up", 1), ("down", 2)]).Mode("b", half).Build();
        ConverterStress stress = RatedNetworks.Stress(converter);
        Assert.Equal("0 to 1 (floating); 0 to 1 (floating)", RatedNetworks.Text(stress.Change("a", "b").OpenSwitches[4]));
        Assert.Equal(0, stress.Change("a", "b").PeakSurgeVolts);
        Assert.Empty(stress.Change("b", "a").Surges);
    }

    // "more" idles in mode alone, but mode both has left it with 1/2, with which it fits
    [Fact]
    public void An_idle_capacitor_keeps_what_the_other_mode_left_it_with()
    {
        (string, PhaseSet)[] half = RatedNetworks.HalfSwitching;
        Converter converter = RatedNetworks.HalfOfModes().Capacitor("more", "x", "n").Switch("join", "x", "p")
            .Mode("alone", half).Mode("both", [.. half, ("join", [1, 2])]).Build();
        ConverterStress stress = RatedNetworks.Stress(converter);
        Assert.Equal(0, stress.Change("alone", "both").PeakSurgeVolts);
        Assert.Equal("more: 0.5 V (1/2) at 1 V, mode alone, idle", stress["alone"].Capacitors[1].ToString());
        Assert.Equal("more: 0.5 V (1/2) at 1 V, mode both", stress.Capacitors[1].ToString());
    }

    // Modes 1/2 and 1/3 of the memory gears leave fly2 with 1/2 and 1/3, so in a mode without it it holds 1/3 to 1/2. From
    // there into phase 1 of 1/2, vin –s9– fly2 –s3– vout = 1/2 sums to 1 - 1/2 - (1/3 to 1/2): a surge of up to 1/6.
    [Fact]
    public void An_idle_capacitor_that_several_modes_leave_with_different_voltages_is_bounded_by_them()
    {
        Converter gears = RatedNetworks.GearsWithIdle();
        ConverterStress stress = RatedNetworks.Stress(gears);
        Assert.Equal("fly2: 0.5 V (1/2) at 1 V, mode without, idle", stress["without"].Capacitors[1].ToString());
        LoopSurge surge = Assert.Single(stress.Change("without", "1/2").Surges, s => s.Phase == 1);
        Assert.Equal(Quantity.Exact(1, 6), surge.PerVoltOfInput);
        Assert.Equal("0 to 1/6 (surge)", stress.Change("without", "1/2").ClosedSwitches[gears.Switches.PositionOf("s9")].Phases[1].ToString());
    }

    // no mode fixes the voltage of a and b: where a switch puts them in a loop the change is undetermined, and the order avoids it
    [Fact]
    public void A_capacitor_of_unknown_voltage_leaves_the_change_undetermined()
    {
        (string, PhaseSet)[] half = RatedNetworks.HalfSwitching;
        Converter converter = RatedNetworks.HalfOfModes().Capacitor("a", "x", "gnd").Capacitor("b", "y", "gnd").Switch("join", "x", "y")
            .Mode("alone", half).Mode("both", [.. half, ("join", [1, 2])]).Build();
        ConverterStress stress = RatedNetworks.Stress(converter);
        Assert.Equal("mode both, as a idles", Assert.Single(stress["both"].Capacitors[1].Undetermined).ToString());
        Assert.Null(stress.Change("alone", "both").PeakSurgeVolts);
        Assert.Equal(
            ["change from alone to both, phase 1, as a, b idle", "change from alone to both, phase 2, as a, b idle"],
            stress.Change("alone", "both").ClosedSwitches[4].Undetermined.Select(u => u.ToString()));
        Assert.Equal(0, stress.Change("both", "alone").PeakSurgeVolts);
        Assert.Equal(["both", "alone"], stress.FindOrder(ModeOrderCriterion.Surge).Modes.Select(m => m.Name));
        Assert.Null(stress.FindOrder(ModeOrderCriterion.Surge, isCycle: true).PeakVolts);
    }

    [Fact]
    public void Changes_are_found_when_they_are_asked_for()
    {
        ModeStress[] modes = [.. _stress.Modes];
        ModeChanges changes = new(modes);
        Assert.Equal((6, 0), (changes.Count, changes.FoundCount));
        ModeChange change = changes.Between(2, 0);
        Assert.Equal(("2/3", "1/3", 1), (change.From.Name, change.To.Name, changes.FoundCount));
        Assert.Same(change, changes[4]);
        Assert.Equal(6, changes.Select(c => (c.From, c.To)).Distinct().Count(c => c.From != c.To));
    }

    // the series resistance takes a share too: with it p1 no longer follows n1 rigidly
    [Fact]
    public void A_series_resistance_takes_its_share_of_a_surge()
    {
        Converter lossy = s_gears.WithValues(esrOhms: [0.1, 0]);
        ModeChange change = RatedNetworks.Stress(lossy).Change("1/3", "1/2");
        Assert.Contains("1/3 in phase 1 round fly1, taken by s1, s8", change.Surges.Select(s => s.ToString()));
        AssertOpen(change, "s4", "1/3 to 2/3 (surge); 0");
        AssertOpen(change, "s5", "1/3 to 2/3 (surge); 0");
    }

    [Fact]
    public void Modes_of_two_converters_and_a_change_to_itself_by_name_are_refused()
    {
        Assert.Throws<ArgumentException>(() => _stress.Change("1/2", "1/2"));
        Assert.Throws<ArgumentException>(() => _stress.Change("1/2", "1/9"));
        ModeStress other = RatedNetworks.First(RatedNetworks.Half().Build());
        Assert.Throws<ArgumentException>(() => ModeChange.Of(_stress.Modes[0], other));
    }

    private static void AssertOpen(ModeChange change, string name, string expected) =>
        Assert.Equal(expected, RatedNetworks.Text(change.OpenSwitches[s_gears.Switches.PositionOf(name)]));

    [Fact]
    public void All_changes_found_at_once_are_those_found_one_by_one_and_the_share_grows_to_all()
    {
        Converter converter = BinaryConverter.Reconfigurable(4);
        ConverterStress all = RatedNetworks.Stress(converter, new Interval<double>(3, 3)), single = RatedNetworks.Stress(converter, new Interval<double>(3, 3));
        ConcurrentBag<double> shares = [];
        all.FindChanges(new Told(shares.Add));
        Assert.Equal(15 * 14, all.Changes.Count);
        Assert.Equal(Enumerable.Range(1, all.Changes.Count).Select(k => k / (double)all.Changes.Count), shares.Order());
        foreach ((ModeChange found, ModeChange alone) in all.Changes.Zip(single.Changes))
        {
            Assert.Equal(Text(alone), Text(found));
            foreach (SwitchStress s in found.OpenSwitches.Concat(found.ClosedSwitches))
            {
                // extremes are those of the phases, which are worked out again
                Assert.Equal(s.PeakPositive?.PerVoltOfInput.ToFraction() ?? 0, s.Phases.Max(p => p.PerVoltOfInput.Maximum!.Value) is { IsPositive: true } high ? high : 0);
                Assert.Equal(s.PeakNegative?.PerVoltOfInput.ToFraction() ?? 0, s.Phases.Min(p => p.PerVoltOfInput.Minimum!.Value) is { IsNegative: true } low ? low : 0);
            }
        }

        static string Text(ModeChange change) => $"{change}\n{string.Join('\n', change.OpenSwitches.Concat(change.ClosedSwitches))}\n{string.Join('\n', change.Surges)}";
    }

    [Fact]
    public void A_search_that_is_stopped_throws_and_leaves_the_rest_to_be_found()
    {
        ConverterStress stress = RatedNetworks.Stress(s_gears, new Interval<double>(2.8, 4.2));
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => stress.FindChanges(cancellationToken: stop.Token));
        Assert.Equal(2.8, stress.Change("1/3", "1/2").PeakStressVolts!.Value, 1e-12);
    }

    // with the bounds of every switch in every phase kept in three copies it was 493 kB, and 0.7 GB in all that stayed
    [Fact]
    public void A_change_between_modes_of_many_switches_takes_little_memory()
    {
        ConverterStress stress = RatedNetworks.Stress(BinaryConverter.Reconfigurable(6), new Interval<double>(3, 3));
        _ = ModeChange.Of(stress.Modes[0], stress.Modes[1]);
        long bytes = Allocations.Of(() => _ = stress.Modes.Skip(1).Select(to => ModeChange.Of(stress.Modes[0], to)).Count(c => c.IsExact)) / (stress.Modes.Count - 1);
        Assert.InRange(bytes, 1, 250_000);
    }

    private sealed class Told(Action<double> told) : IProgress<double>
    {
        public void Report(double value) => told(value);
    }
}
