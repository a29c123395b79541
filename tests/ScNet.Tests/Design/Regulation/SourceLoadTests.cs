using ScNet.Design.Regulation;
using ScNet.Devices;

namespace ScNet.Tests.Design.Regulation;

/// <summary>Modes behind a source with a resistance, and the best of them.</summary>
public sealed class SourceLoadTests
{
    [Fact]
    public void The_voltage_behind_the_resistance_settles_where_the_current_is_that_of_the_mode()
    {
        // I = 0.1 V²/V and V = 5 V - 2 Ω I give V = 5/1.2 V
        (RegulatedPoint point, double cellAmperes) = SourceLoad.Hold(new CurrentMode("square", 0, 9, v => 0.1 * v), 5, 2, 1, 0.1)!.Value;
        Assert.Equal(0.1 * 5 / 1.2, cellAmperes, 1e-12);
        Assert.Equal(cellAmperes * 5 / 1.2, point.InputWatts, 1e-11);
    }

    // V² - 2.02 V V + 1 Ω · 1 W = 0 at V = (1.01 + √(1.01² - 1)) V; the largest power is 2.02²/4 W = 1.0201 W
    [Fact]
    public void A_constant_power_is_drawn_up_to_nearly_the_largest_of_the_source()
    {
        double volts = 1.01 + Math.Sqrt((1.01 * 1.01) - 1);
        Assert.Equal(1 / volts, SourceLoad.Hold(new CurrentMode("power", 0, 9, v => 1 / v), 2.02, 1, 1, 0.1)!.Value.CellAmperes, 1e-12);
        Assert.Null(SourceLoad.Hold(new CurrentMode("power", 0, 9, v => 1 / v), 1.99, 1, 1, 0.1));
    }

    [Fact]
    public void A_current_that_leaves_no_voltage_at_all_is_not_held()
    {
        // a linear regulator draws its load current: 1 V - 1 Ω · 1 A = 0
        Assert.Null(SourceLoad.Hold(RegulatedModes.Linear(ControlOverhead.None), 1, 1, 0.5, 1));
    }

    [Fact]
    public void A_current_that_never_settles_is_not_held() =>
        Assert.Null(SourceLoad.Hold(new CurrentMode("jumping", 0, 9, v => v > 0.8 ? 0.4 : 0.1), 1, 1, 1, 0.1)); // 1, 0.6, 0.9, 0.6, 0.9 V ...

    [Fact]
    public void Of_modes_with_the_same_current_the_first_is_best()
    {
        CurrentMode[] modes = [new("large", 0, 9, _ => 0.3), new("first", 0, 9, _ => 0.2), new("second", 0, 9, _ => 0.2)];
        Assert.Equal(1, BestMode.Of(modes, 3, 0, 1, 0.1)!.Value.Mode);
        Assert.Null(BestMode.Of(modes, 10, 0, 1, 0.1));
    }
}
