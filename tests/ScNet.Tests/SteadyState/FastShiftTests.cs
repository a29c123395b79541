using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Directions that drive one mode each, s · √λ with s given: an amount a adds a s √λ to the drive of that mode, so that
/// −drive / (s √λ) takes it away.
/// </summary>
public sealed class FastShiftTests
{
    [Fact]
    public void The_particular_flow_is_freed_of_what_directions_can_take()
    {
        double[] drives = [8, 27, 5];
        Assert.Equal([-2, -3], FastShift.Of(Rotation([2, 0, 0], [0, 3, 0]), 2, [4, 9, 1], drives, currents: 1e6), Closeness.Within(1e-15));
        Assert.Equal([0, 0, 5], drives, Closeness.Within(1e-14));
    }

    [Fact]
    public void A_direction_that_drives_several_modes_takes_what_impulses_dissipate_least()
    {
        // impulses of drives d over rates λ: Σ d²/λ, least at a = −Σ (s/√λ) d / Σ s² = −(3/2 · 8 + 4/3 · 9) / 25
        double[] drives = [8, 9];
        Assert.Equal(-24.0 / 25, Assert.Single(FastShift.Of(Rotation([3, 4]), 1, [4, 9], drives, currents: 1e6)), 1e-15);
        Assert.Equal([8 - (24.0 / 25 * 3 * 2), 9 - (24.0 / 25 * 4 * 3)], drives, Closeness.Within(1e-14));
    }

    [Theory]
    [InlineData(160, -40)]
    [InlineData(160.0001, 0)]
    [InlineData(-160, 40)]
    [InlineData(-160.0001, 0)]
    public void No_shift_makes_constant_currents_dissipate_a_thousand_times_more(double drive, double shift)
    {
        // impulses of 4: the square of the amount, drive / 4, is at most 1000 · 1.6 = 40²
        double[] drives = [drive];
        Assert.Equal(shift, Assert.Single(FastShift.Of(Rotation([2]), 1, [4], drives, currents: 1.6)), 1e-12);
        Assert.Equal(drive + (shift * 4), Assert.Single(drives), 1e-12);
    }

    [Theory]
    [InlineData(1, 1e-6, true)]
    [InlineData(1, 2e-7, false)]
    [InlineData(100, 1e-4, true)]
    [InlineData(100, 2e-5, false)]
    public void Directions_far_slower_than_the_fastest_are_left_alone(double fast, double slow, bool isShifted)
    {
        double[] drives = [fast, 1e-9];
        double[] shift = FastShift.Of(Rotation([fast, 0], [0, slow]), 2, [1, 1], drives, currents: 1e6);
        Assert.Equal(-1, shift[0], 1e-15);
        Assert.Equal(isShifted, shift[1] != 0);
    }

    [Fact]
    public void Too_many_directions_to_rotate_are_left_alone()
    {
        double[][] rows = [.. Enumerable.Range(0, 65).Select(k => Enumerable.Range(0, 65).Select(r => k == r ? 1.0 : 0).ToArray())];
        double[] rates = [.. Enumerable.Repeat(1.0, 65)], drives = [.. Enumerable.Repeat(1.0, 65)];
        Assert.Equal(new double[65], FastShift.Of(Rotation(rows), 65, rates, drives, currents: 1e6));
        Assert.Equal(rates, drives);
        Assert.Equal([.. Enumerable.Repeat(-1.0, 64)], FastShift.Of(Rotation(rows[..64]), 64, rates, drives, currents: 1e6));
    }

    [Fact]
    public void Without_directions_there_is_nothing_to_shift()
    {
        double[] drives = [1];
        Assert.Empty(FastShift.Of(DirectionRotation.Of(new DenseRows(0, 1), 1), 0, [1], drives, currents: 1));
        Assert.Equal([1], drives);
    }

    private static DirectionRotation Rotation(params double[][] drives)
    {
        DenseRows rows = new(drives.Length, drives[0].Length + drives.Length);
        for (int k = 0; k < drives.Length; k++)
        {
            drives[k].CopyTo(rows.Row(k));
        }

        return DirectionRotation.Of(rows, drives[0].Length);
    }
}
