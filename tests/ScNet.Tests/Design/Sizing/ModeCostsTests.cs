using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

/// <summary>What the elements of a divider by two cost per value, by hand.</summary>
public sealed class ModeCostsTests
{
    private static readonly ModeCosts s_costs = HalfTasks.Of(
        [HalfTasks.Held(2, 1, 1e-3)], new AreaBudget(1e-6), process: HalfTasks.Process([HalfTasks.Long, HalfTasks.Short], [HalfTasks.Metal, HalfTasks.Dense])).Costs[0];

    // both plates swing by half of the input voltage; the netlist's own top plate counts where the kind has none
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void A_flying_capacitor_loses_by_its_plates_and_its_leak(double volts)
    {
        double square = volts * volts / 4;
        Check(new(0.025 * square, 1e-12 * square, 0.5 * square, 0), s_costs.At(1, 0, volts));
        Check(new(0.12 * square, 0, 1 * square, 0), s_costs.At(1, 1, volts));
    }

    // its voltage never changes
    [Theory]
    [InlineData(1.1)]
    [InlineData(1.7)]
    [InlineData(2)]
    [InlineData(2.3)]
    [InlineData(2.9)]
    [InlineData(3)]
    public void A_capacitor_across_the_input_loses_by_its_leak_alone(double volts)
    {
        Check(new(0, 0, 0.5 * volts * volts, 0), s_costs.At(0, 0, volts));
        Check(new(0, 0, 1 * volts * volts, 0), s_costs.At(0, 1, volts));
    }

    // closed once in a period; open for half of it at half of the input voltage
    [Theory]
    [InlineData(1.1)]
    [InlineData(1.7)]
    [InlineData(2)]
    [InlineData(2.3)]
    [InlineData(2.9)]
    [InlineData(3)]
    public void A_switch_loses_by_gate_junction_and_leakage(double volts)
    {
        double square = volts * volts / 4;
        foreach (int element in new[] { 2, 3, 4, 5 })
        {
            Check(new(3e-12 + (5e-13 * square), 0, 1e-6 * volts / 4, 0), s_costs.At(element, 0, volts));
            Check(new(4.5e-12 + (5e-13 * square), 0, 2e-6 * volts / 4, 0), s_costs.At(element, 1, volts));
        }
    }

    [Fact]
    public void Control_belongs_to_no_element()
    {
        (double perHertz, double watts) = s_costs.FixedAt(3);
        Assert.Equal(3 * HalfTasks.CoulombsPerCycle, perHertz, 1e-12 * perHertz);
        Assert.Equal(HalfTasks.FixedWatts, watts, 1e-12 * watts);
    }

    private static void Check(ElementCost expected, ElementCost cost)
    {
        Check(expected.PerHertz, cost.PerHertz);
        Check(expected.PerHertzFixed, cost.PerHertzFixed);
        Check(expected.Watts, cost.Watts);
        Check(expected.WattsFixed, cost.WattsFixed);
    }

    // zero exactly; of the fixed part the digits that are left beside a larger slope
    private static void Check(double expected, double found) => Assert.Equal(expected, found, 1e-9 * expected);
}
