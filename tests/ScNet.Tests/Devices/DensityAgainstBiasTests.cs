using CsCheck;
using ScNet.Devices;

namespace ScNet.Tests.Devices;

/// <summary>Capacitors whose density depends on their voltage, as of MOS capacitors.</summary>
[Trait("Kind", "Law")]
public sealed class DensityAgainstBiasTests
{
    private static readonly DensityPoint[] s_points = [new(-0.5, 3e-3), new(0.3, 4e-3), new(0.7, 9e-3), new(1.8, 10e-3)];

    private static readonly Gen<DensityPoint[]> s_tables =
        from steps in Gen.Select(Gen.Double[0.01, 1], Gen.Double[1e-4, 2e-2]).Array[2, 8]
        select steps.Select((s, i) => new DensityPoint(steps.Take(i + 1).Sum(t => t.Item1) - 2, s.Item2)).ToArray();

    [Theory]
    [InlineData(-0.5, 3e-3)]
    [InlineData(0.3, 4e-3)]
    [InlineData(0.5, 6.5e-3)]
    [InlineData(0.7, 9e-3)]
    [InlineData(1.25, 9.5e-3)]
    [InlineData(-7, 3e-3)]
    [InlineData(7, 10e-3)]
    public void The_density_runs_straight_from_point_to_point_and_stays_beyond(double volts, double expected) =>
        Assert.Equal(expected, Mos(s_points).FaradsPerSquareMetreAt(volts), 1e-15);

    [Fact]
    public void Without_a_table_the_density_is_the_nominal_one_at_every_voltage()
    {
        Assert.Equal(8e-3, Mos().FaradsPerSquareMetreAt(-3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mos().FaradsPerSquareMetreAt(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mos(s_points).FaradsPerSquareMetreAt(double.PositiveInfinity));
    }

    // between two points that rise the density rises, between two that fall it falls, and it never leaves both
    [Fact]
    public void The_density_rises_and_falls_only_where_the_points_do() => Gen.Select(s_tables, Gen.Double[0, 1], Gen.Double[0, 1]).Holds(c =>
    {
        (DensityPoint[] points, double a, double b) = c;
        CapacitorDevice device = Mos(points);
        foreach ((DensityPoint left, DensityPoint right) in points.Zip(points.Skip(1)))
        {
            double First(double share) => device.FaradsPerSquareMetreAt(left.Volts + (share * (right.Volts - left.Volts)));
            (double low, double high) = (First(Math.Min(a, b)), First(Math.Max(a, b)));
            double slack = 1e-12 * Math.Max(left.FaradsPerSquareMetre, right.FaradsPerSquareMetre);
            Assert.True(Math.Sign(right.FaradsPerSquareMetre - left.FaradsPerSquareMetre) * (high - low) >= -slack);
            Assert.InRange(low, Math.Min(left.FaradsPerSquareMetre, right.FaradsPerSquareMetre) - slack, Math.Max(left.FaradsPerSquareMetre, right.FaradsPerSquareMetre) + slack);
        }
    });

    // two in series at 1.4 V have 0.7 V each: 9 fF/µm², each 2 nF, hence 2.222e-7 m²; plates are 5 % of the nominal 8 fF/µm²
    [Fact]
    public void A_stack_has_the_density_of_its_share_of_the_held_voltage()
    {
        StackedCapacitor stack = new(Mos(s_points), 2, 1e-9, heldVolts: 1.4);

        Assert.Equal(2e-9 / 9e-3, stack.AreaOfEachSquareMetres, 1e-18);
        Assert.Equal(2 * 0.05 * 8e-3 * 2e-9 / 9e-3, stack.BottomPlateFarads, 1e-22);
        Assert.Equal(1e-9, stack.FaradsAt(1.4), 1e-24);
        Assert.Equal(4e-3 / 9e-3 * 1e-9, stack.FaradsAt(0.6), 1e-21);
        Assert.Equal(2e-9 / 8e-3, new StackedCapacitor(Mos(s_points), 2, 1e-9).AreaOfEachSquareMetres, 1e-18);
        Assert.Equal(10e-3 / 8e-3 * 1e-9, new StackedCapacitor(Mos(s_points), 2, 1e-9).FaradsAt(9), 1e-21);
    }

    [Fact]
    public void A_table_that_is_none_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Mos(new DensityPoint(0, 1)));
        Assert.Throws<ArgumentException>(() => Mos(new(0, 1), new(0, 2)));
        Assert.Throws<ArgumentException>(() => Mos(new(1, 1), new(0, 2)));
        Assert.Throws<ArgumentException>(() => Mos(new(double.NaN, 1), new(0, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mos(new(0, 0), new(1, 2)));
    }

    private static CapacitorDevice Mos(params DensityPoint[] points) => new()
    {
        Name = "MOS",
        Source = "invented",
        RatedVolts = 1.8,
        FaradsPerSquareMetre = 8e-3,
        BottomPlateFraction = 0.05,
        DensityAgainstBias = points,
    };
}
