using CsCheck;
using ScNet.Devices;

namespace ScNet.Tests.Devices;

/// <summary>Stacks with guard spacing, worked out by hand, and the laws of the area that they take.</summary>
[Trait("Kind", "Law")]
public sealed class OccupiedAreaTests
{
    private static readonly Gen<(double Active, int Count, double Factor, double Guard)> s_stacks = Gen.Select(
        Gen.Double[-14, -6].Select(e => Math.Pow(10, e)), Gen.Int[1, 4], Gen.Double[0.5, 3], Gen.OneOf(Gen.Const(0.0), Gen.Double[1e-7, 1e-5]));

    private static CapacitorDevice Guarded => new()
    {
        Name = "guarded",
        Source = "invented",
        RatedVolts = 2,
        FaradsPerSquareMetre = 0.01,
        BottomPlateFraction = 0.05,
        TopPlateFraction = 0.01,
        EsrOhmSquareMetres = 1e-10,
        StackAreaFactor = 1.44,
        GuardMetres = 2e-6,
    };

    // 1 pF at 10 fF/µm² is a square of 10 µm, and takes (10 + 2)² µm²
    [Fact]
    public void A_single_capacitor_takes_its_square_with_the_spacing()
    {
        StackedCapacitor one = new(Guarded, 1, 1e-12);

        Assert.Equal(1e-10, one.AreaOfEachSquareMetres, 1e-22);
        Assert.Equal(144e-12, one.AreaSquareMetres, 1e-22);
        Assert.Equal(5e-14, one.BottomPlateFarads, 1e-26);
        Assert.Equal(1e-14, one.TopPlateFarads, 1e-26);
    }

    // two of 5 pF for 2.5 pF: squares of √500 µm, by the factor √720 µm: 2 (26.8328 + 2)² µm²
    [Fact]
    public void A_stack_takes_the_factor_and_the_spacing_of_each()
    {
        StackedCapacitor two = new(Guarded, 2, 2.5e-12);

        Assert.Equal(5e-10, two.AreaOfEachSquareMetres, 1e-22);
        Assert.Equal(1662.662526e-12, two.AreaSquareMetres, 1e-18);
        Assert.Equal(new StackedCapacitor(Guarded, 1, 2.5e-12).EsrOhms, two.EsrOhms, 1e-12);
    }

    // 400 µm of 1 µm²/µm: each a square of 20 µm, with 1 µm between them
    [Fact]
    public void A_switch_takes_its_square_with_the_spacing()
    {
        SwitchDevice device = new()
        {
            Name = "guarded",
            Source = "invented",
            RatedVolts = 2,
            GateDriveVolts = 2,
            GateRatedVolts = 2,
            OnResistanceOhmMicrometres = 800,
            GateChargeCoulombsPerMicrometre = 1e-15,
            JunctionChargeCoulombsPerMicrometre = 1e-15,
            AreaSquareMetresPerMicrometre = 1e-12,
            GuardMetres = 1e-6,
            LeakageAmperesPerMicrometre = 1e-12,
        };

        Assert.Equal(441e-12, new StackedSwitch(device, 1, 2).AreaSquareMetres, 1e-22);
        Assert.Equal(2 * 441e-12, new StackedSwitch(device, 2, 4).AreaSquareMetres, 1e-22);
        Assert.Equal(400e-12, new StackedSwitch(device, 2, 4).LeakageAmperes, 1e-24);
    }

    [Fact]
    public void What_is_taken_gives_the_active_area_back() => s_stacks.Holds(s =>
    {
        double taken = OccupiedArea.Of(s.Active, s.Count, s.Factor, s.Guard);
        Assert.Equal(1, OccupiedArea.ActiveOf(taken, s.Count, s.Factor, s.Guard) / s.Active, 1e-9);
    });

    [Fact]
    public void More_active_area_takes_more_and_the_spacing_is_taken_at_least() => s_stacks.Holds(s =>
    {
        double taken = OccupiedArea.Of(s.Active, s.Count, s.Factor, s.Guard);
        Assert.True(taken > s.Count * s.Guard * s.Guard);
        Assert.True(OccupiedArea.Of(1.001 * s.Active, s.Count, s.Factor, s.Guard) > taken);
        Assert.True(taken >= (1 - 1e-12) * s.Count * s.Active * (s.Count > 1 ? s.Factor : 1));
        Assert.Equal(0, OccupiedArea.ActiveOf(0.999 * s.Count * s.Guard * s.Guard, s.Count, s.Factor, s.Guard));
    });
}
