using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Thirty-five modes, a turn of 32 and one of 3, and two directions: one moves the first two modes, the other these and
/// the whole second turn. The rate of mode r is (r + 1)², so that its drive in a direction is r + 1 times what is given.
/// </summary>
public sealed class ModeDrivesTests
{
    private const int Count = 35;
    private const int Turn = ModalExcess.Turn;

    // drives of the directions: 1 · 1 and 2 · 2; 1 · 2 and 2 · -1, then 33 · 5, 34 · 1 and 35 · 2
    private static readonly double[] s_first = Filled((0, 1), (1, 4));
    private static readonly double[] s_second = Filled((0, 2), (1, -2), (32, 165), (33, 34), (34, 70));

    // drives of the particular flow
    private static readonly double[] s_own = [.. Enumerable.Range(0, Count).Select(r => 3.0 - r)];

    [Fact]
    public void The_sum_of_a_turn_weighs_the_square_of_each_drive_with_its_excess()
    {
        double[] excess = [.. Enumerable.Range(0, Turn).Select(r => 1.0 + r)], amounts = [2, -3];
        double expected = 0;
        for (int r = 0; r < Turn; r++)
        {
            // 3 + 2 · 1 - 3 · 2 and 2 + 2 · 4 + 3 · 2, then 3 - r
            double drive = r switch { 0 => -1, 1 => 16, _ => 3 - r };
            expected += (1 + r) * drive * drive;
        }

        Assert.Equal(expected, Drives().Sum(excess, 0, amounts, 0), 1e-9);

        // -29 - 3 · 165, -30 - 3 · 34 and -31 - 3 · 70
        Assert.Equal((524.0 * 524) + (2 * 132 * 132) + (3 * 241 * 241), Drives().Sum(excess, Turn, amounts, 0), 1e-9);
    }

    // scales of 100 in the first turn, of 1000, 500 and 2000 in the second: of drives -29, -30 and -31 the share 0.06 leaves what exceeds 60, 30 and 120
    [Theory]
    [InlineData(0.05, 2)]
    [InlineData(0.06, 0)]
    [InlineData(0.02, 3)]
    [InlineData(0.01, 7)]
    [InlineData(0, 7)]
    public void A_drive_counts_if_it_exceeds_its_share_of_what_makes_it_up(double share, double modes)
    {
        // excess such that modes of the second turn count 1, 2 and 4
        double[] excess = new double[Turn];
        (excess[0], excess[1], excess[2]) = (1 / (29.0 * 29), 2 / (30.0 * 30), 4 / (31.0 * 31));
        Assert.Equal(modes, Drives().Sum(excess, Turn, [], share), 1e-13);
    }

    [Fact]
    public void Equations_of_directions_are_products_weighed_with_excess_and_period()
    {
        ModeDrives drives = Drives();
        double[] excess = new double[Turn], system = [100, 200, 300, 400], test = [10, 20];
        (excess[0], excess[1], excess[2]) = (1, 3, 7);
        drives.Add(0.5, excess, 0, isSymmetric: false, system, test);

        // 1 · 1 · 1 + 3 · 4 · 4, 1 · 1 · 2 - 3 · 4 · 2 and 1 · 2 · 2 + 3 · 2 · 2, each times 1/2; drives of the particular flow are 3 and 2
        Assert.Equal([100 + 24.5, 200 - 11, 300 - 11, 400 + 8], system);
        Assert.Equal([10 + 13.5, 20 - 3], test);

        // the first direction has no part in the second turn
        drives.Add(0.5, excess, Turn, isSymmetric: false, system, test);
        double square = 0.5 * ((165 * 165) + (3 * 34 * 34) + (7 * 70 * 70)), product = 0.5 * ((165 * -29) + (3 * 34 * -30) + (7 * 70 * -31));
        Assert.Equal([124.5, 189, 289, 408 + square], system);
        Assert.Equal([23.5, 17 + product], test);
    }

    [Fact]
    public void Where_only_the_lower_half_is_wanted_the_upper_stays_as_it_is()
    {
        double[] excess = new double[Turn], system = [100, 200, 300, 400], test = [10, 20];
        (excess[0], excess[1]) = (1, 3);
        Drives().Add(0.5, excess, 0, isSymmetric: true, system, test);
        Assert.Equal([124.5, 200, 289, 408], system);
        Assert.Equal([23.5, 17], test);
    }

    // charge = (drive + duty · ramp) / rate
    [Fact]
    public void Charges_follow_from_drives_rates_and_ramps()
    {
        double[] ramps = [.. Enumerable.Range(0, Count).Select(r => 8.0 * r)];
        DenseRows charges = Drives().Charges(ramps, 2);
        Assert.Equal((3, Count), (charges.RowCount, charges.ColumnCount));
        for (int r = 0; r < Count; r++)
        {
            double rate = (r + 1) * (r + 1);
            Assert.Equal((3 - r + (0.25 * 8 * r)) / rate, charges[0, r], 1e-14);
            Assert.Equal(s_first[r] / rate, charges[1, r], 1e-14);
            Assert.Equal(s_second[r] / rate, charges[2, r], 1e-14);
        }
    }

    [Fact]
    public void The_excess_is_that_of_the_phase_of_each_mode()
    {
        double[] turn = new double[Turn];
        Drives().Excess(0.1, Turn, turn);
        for (int r = Turn; r < Count; r++)
        {
            Assert.Equal(ModalFunctions.Excess((r + 1) * (r + 1), 0.25 * 0.1), turn[r - Turn], 1e-18);
        }
    }

    private static ModeDrives Drives()
    {
        double[] rates = [.. Enumerable.Range(0, Count).Select(r => (r + 1.0) * (r + 1))];
        double[] scales = [.. Enumerable.Repeat(100.0, Turn), 1000, 500, 2000];

        // orthogonal as they are, 1 · 2 - 2 · 1, so that nothing is rotated
        DenseRows slow = new(2, Count + 2);
        for (int r = 0; r < Count; r++)
        {
            (slow[0, r], slow[1, r]) = (s_first[r] / (r + 1), s_second[r] / (r + 1));
        }

        return new ModeDrives(rates, [.. Enumerable.Repeat(0.25, Count)], s_own, scales, DirectionRotation.Of(slow, Count), 2);
    }

    private static double[] Filled(params (int At, double Value)[] entries)
    {
        double[] values = new double[Count];
        foreach ((int at, double value) in entries)
        {
            values[at] = value;
        }

        return values;
    }
}
