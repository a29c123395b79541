using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>The worst of every switch over modes and over changes, and what is asked for by name.</summary>
public sealed class ConverterStressTests
{
    // By Kirchhoff's voltage law, phase 1; phase 2 of each mode:
    //   1/3: p1 = 1, n1 = p2 = 2/3, n2 = 1/3; p1 = p2 = 1/3, n1 = n2 = 0.     vout = 1/3
    //   1/2: p1 = p2 = 1, n1 = n2 = 1/2; p1 = p2 = 1/2, n1 = n2 = 0.          vout = 1/2
    //   2/3: p1 = p2 = 1, n1 = n2 = 2/3; p1 = 2/3, n1 = p2 = 1/3, n2 = 0.     vout = 2/3
    [Fact]
    public void The_worst_of_a_switch_is_the_largest_of_each_sign_over_all_modes()
    {
        ConverterStress stress = RatedNetworks.Stress(RatedNetworks.Example("memory-gears"), new Interval<double>(2, 3));
        Assert.Equal(
            [
                "s1: 2 V (2/3) at 3 V, mode 1/3, phase 2; never negative",                                              // vin - p1
                "s2: never positive; -1.5 V (-1/2) at 3 V, mode 1/2, phase 1",                                          // n1 - p2
                "s3: never positive; -2 V (-2/3) at 3 V, mode 2/3, phase 2",                                            // n2 - vout
                "s4: 2 V (2/3) at 3 V, mode 1/3, phase 1; never negative",                                              // p1 - vout
                "s5: 2 V (2/3) at 3 V, mode 1/3, phase 1; never negative",                                              // n1
                "s6: 1.5 V (1/2) at 3 V, mode 1/2, phase 1; -1 V (-1/3) at 3 V, mode 2/3, phase 2",                     // p2 - vout
                "s7: 2 V (2/3) at 3 V, mode 2/3, phase 1; never negative",                                              // n2
                "s8: 1 V (1/3) at 3 V, mode 1/3, phase 1; -1.5 V (-1/2) at 3 V, mode 1/2, phase 2",                     // n1 - vout
                "s9: 2 V (2/3) at 3 V, mode 1/3, phase 2; never negative",                                              // vin - p2
            ],
            stress.Switches.Select(s => s.ToString()));
        Assert.All(stress.Switches, s => Assert.True(s.IsDetermined && !s.IsFloating));
    }

    // The halver stands alike in both modes: p = 1, n = 1/2; p = 1/2, n = 0. x leaves mode half with 1/2 and full with 1, and has it still
    // when the other switch closes, which takes 1/2 either way.
    [Fact]
    public void The_worst_at_changes_is_of_open_and_of_closed_switches()
    {
        ConverterStress stress = RatedNetworks.Stress(RatedNetworks.HalfAndFull().Build(), new Interval<double>(2, 4));
        Assert.Equal(
            [
                "s1: 2 V (1/2) at 4 V, change from half to full, phase 2; never negative",
                "s2: never positive; -2 V (-1/2) at 4 V, change from half to full, phase 2",
                "s3: 2 V (1/2) at 4 V, change from half to full, phase 1; never negative",
                "s4: 2 V (1/2) at 4 V, change from half to full, phase 1; never negative",
                "half: 2 V (1/2) at 4 V, change from full to half, phase 1; never negative",
                "full: 2 V (1/2) at 4 V, change from half to full, phase 1; never negative",
            ],
            stress.SwitchesAtChanges.Select(s => s.ToString()));
    }

    [Fact]
    public void Without_a_change_nothing_is_said_of_changes()
    {
        ConverterStress stress = RatedNetworks.Stress(RatedNetworks.Half().Build());
        Assert.Empty(stress.Changes);
        Assert.All(stress.SwitchesAtChanges, s => Assert.False(s.IsDetermined));
        Assert.All(stress.Switches, s => Assert.True(s.IsDetermined));
    }

    // a name that is none is told apart from a mode without a result
    [Fact]
    public void A_mode_without_a_result_is_refused_by_its_name_and_a_wrong_name_by_one_that_comes_near()
    {
        ConverterStress stress = RatedNetworks.Stress(RatedNetworks.Half().Switch("s5", "vin", "gnd", 1).Build());
        Assert.Contains("'default'", Assert.Throws<ArgumentException>(() => stress["defalt"]).Message, StringComparison.Ordinal);
        Assert.Contains("no result", Assert.Throws<ArgumentException>("mode", () => stress["default"]).Message, StringComparison.Ordinal);
    }

    // who has several converters must see which one it was, and how many modes it has
    [Fact]
    public void Up_to_fourteen_modes_are_put_in_order_and_no_mode_is_not()
    {
        Assert.Equal(14, RatedNetworks.Stress(Of(14)).FindOrder().Modes.Distinct().Count());
        Assert.Contains("'Half' has 15", Assert.Throws<InvalidOperationException>(() => RatedNetworks.Stress(Of(15)).FindOrder()).Message, StringComparison.Ordinal);
        Converter shorted = RatedNetworks.Half().Switch("s5", "vin", "gnd", 1).Build();
        Assert.Contains("'Half' has 0", Assert.Throws<InvalidOperationException>(() => RatedNetworks.Stress(shorted).FindOrder()).Message, StringComparison.Ordinal);

        static Converter Of(int count)
        {
            ConverterBuilder builder = RatedNetworks.HalfOfModes();
            for (int k = 0; k < count; k++)
            {
                builder.Mode($"m{k}", RatedNetworks.HalfSwitching);
            }

            return builder.Build();
        }
    }
}
