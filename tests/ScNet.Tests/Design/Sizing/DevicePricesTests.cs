using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Numerics;

namespace ScNet.Tests.Design.Sizing;

/// <summary>What each kind of device costs at given prices, by hand: how much a change betters shows in the worth at which it is still made.</summary>
public sealed class DevicePricesTests
{
    private const double LowHertz = 3e5, HighHertz = 5e6, Watts = 1e-3, FreeOhms = 700;

    // 2 V held by 40 Ω, 3 V free: weights of 1/4 and 3/4
    private static readonly SizingPoint[] s_points = [HalfTasks.Held(2, 40, 1e-3, weight: 1), HalfTasks.Free(3, 2e-3, weight: 3)];

    // prices: multiplier · watts over what is bounded. Two bounds hold at the held point, at 40 Ω; the free one costs per ohm of its 700 Ω
    [Theory]
    [InlineData(2e-6, 7e-7, 4e-7)]
    [InlineData(null, 7e-7, 4e-7)]
    [InlineData(2e-6, null, 4e-7)]
    [InlineData(2e-6, 7e-7, null)]
    [InlineData(2e-6, null, null)]
    public void A_capacitor_costs_area_plates_leak_and_series_resistance(double? total, double? ofCapacitors, double? ofSwitches)
    {
        (DevicePrices prices, double perSquareMetre, _) = Prices(new(total, ofCapacitors, ofSwitches), s_points);
        double perOhm = Watts * (((0.3 + 0.2) / 40) + (0.7 / FreeOhms)), hertz = (0.25 * LowHertz * 1) + (0.75 * HighHertz * 2.25), square = 0.25 + (0.75 * 2.25);
        foreach (double farads in new[] { 1e-10, 2e-9 })
        {
            double metal = (100 * farads * perSquareMetre) + (hertz * ((0.025 * farads) + 1e-12)) + (0.5 * farads * square) + (perOhm * 1e-10 / farads);
            double dense = (50 * farads * perSquareMetre) + (hertz * 0.12 * farads) + (1 * farads * square) + (perOhm * 8e-10 / farads);
            Compare(prices, 1, farads, metal, dense);

            // what lies across the input swings not at all and carries no charge
            double inputSquare = (0.25 * 4) + (0.75 * 9), area = 100 * farads * perSquareMetre;
            Compare(prices, 0, farads, area + (0.5 * farads * inputSquare), (area / 2) + (1 * farads * inputSquare));
        }
    }

    [Theory]
    [InlineData(2e-6, 7e-7, 4e-7)]
    [InlineData(null, 7e-7, 4e-7)]
    [InlineData(2e-6, null, 4e-7)]
    [InlineData(2e-6, 7e-7, null)]
    [InlineData(2e-6, null, null)]
    public void A_switch_costs_area_gate_junction_and_leakage(double? total, double? ofCapacitors, double? ofSwitches)
    {
        (DevicePrices prices, _, double perSquareMetre) = Prices(new(total, ofCapacitors, ofSwitches), s_points);
        double volts = (0.25 * 2) + (0.75 * 3), hertz = (0.25 * LowHertz) + (0.75 * HighHertz), hertzSquare = (0.25 * LowHertz * 1) + (0.75 * HighHertz * 2.25);
        foreach (int element in new[] { 2, 5 })
        {
            double own = (1e-9 * perSquareMetre) + (hertz * 3e-12) + (hertzSquare * 5e-13) + (1e-6 * volts / 4);
            double other = (1.5e-9 * perSquareMetre) + (hertz * 4.5e-12) + (hertzSquare * 5e-13) + (2e-6 * volts / 4);
            Compare(prices, element, 0.3, 0.3 * own, 0.3 * other);
        }
    }

    [Fact]
    public void Of_two_kinds_that_cost_the_same_the_one_at_hand_stays()
    {
        (DevicePrices prices, _, _) = Prices(new(2e-6), s_points, HalfTasks.Long with { Name = "long too" });
        Assert.Equal([0, 1, 0, 1], prices.BestOptions([0, 0, 0, 1, 0, 1], Values(2e-9, 0.3), 0)[2..]);
    }

    [Fact]
    public void The_area_of_switches_has_its_price_where_there_are_no_capacitors()
    {
        SizingPoint[] points = [new(Mode.DefaultName, 2, null, 1e-3)];
        SizingTask task = HalfTasks.Of(points, new AreaBudget(null, 1e-8, 4e-9), HalfTasks.Alone, process: HalfTasks.Process([HalfTasks.Long, HalfTasks.Short], [HalfTasks.Metal]));
        SizingProgram program = HalfTasks.Program(task);
        DevicePrices prices = new(task, points, program, Optimum([0, Math.Log(LowHertz), 0], [0.5, 0.5]), []);

        // closed always: gate and junction rest, nothing leaks; the area alone decides
        Assert.Equal([0], prices.BestOptions([1], [0.3], (1 - (1 / 1.5)) - 1e-9));
        Assert.Equal([1], prices.BestOptions([1], [0.3], (1 - (1 / 1.5)) + 1e-9));
    }

    private static void Compare(DevicePrices prices, int element, double value, double own, double other)
    {
        (int dear, int cheap) = own > other ? (0, 1) : (1, 0);
        double worth = 1 - (Math.Min(own, other) / Math.Max(own, other));
        Assert.True(worth > 1e-3);
        Assert.Equal(cheap, Best(dear, worth - 1e-7));
        Assert.Equal(dear, Best(dear, worth + 1e-7));
        Assert.Equal(cheap, Best(cheap, 0));

        int Best(int option, double least) => prices.BestOptions([.. Enumerable.Repeat(option, 6)], Values(value, value), least)[element];
    }

    private static double[] Values(double farads, double siemens) => [farads, farads, siemens, siemens, siemens, siemens];

    // what a square metre of capacitors and of switches costs, with multipliers of 0.11, 0.13 and 0.17
    private static (DevicePrices Prices, double OfCapacitors, double OfSwitches) Prices(AreaBudget area, SizingPoint[] points, SwitchDevice? other = null)
    {
        SizingTask task = HalfTasks.Of(points, area, process: HalfTasks.Process([HalfTasks.Long, other ?? HalfTasks.Short], [HalfTasks.Metal, HalfTasks.Dense]));
        SizingProgram program = HalfTasks.Program(task);
        (double Multiplier, double? Area)[] areas = [(0.11, area.TotalSquareMetres), (0.13, area.CapacitorSquareMetres), (0.17, area.SwitchSquareMetres)];
        double[] multipliers = [.. areas.Where(a => a.Area is not null).Select(a => a.Multiplier), 0.3, 0.2, 0.7];
        double[] logarithms = [.. new double[5], Math.Log(LowHertz), Math.Log(HighHertz), Math.Log(FreeOhms)];
        double[] each = [.. areas.Select(a => Watts * a.Multiplier / (a.Area ?? double.PositiveInfinity))];
        SizedMode[] modes = HalfTasks.ModesOf(task, [.. Enumerable.Repeat(1.0, task.ElementCount)]);
        return (new DevicePrices(task, points, program, Optimum(logarithms, multipliers), modes), each[0] + each[1], each[0] + each[2]);
    }

    private static GeometricOptimum Optimum(double[] logarithms, double[] multipliers) => new()
    {
        Logarithms = logarithms,
        LogValue = Math.Log(Watts),
        Multipliers = multipliers,
        Gap = 0,
        IsFeasible = true,
        Excess = 0,
        Steps = 0,
    };
}
