using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.Devices;

/// <summary>A well between bottom plate and substrate, in the exact two-port: docs/theory/devices.md, "Density against bias".</summary>
public sealed class WellUnderPlateTests
{
    private const double Farads = 1e-9, Plate = 2e-3, Well = 3e-3, Hertz = 1e6, Swing = 0.5;

    // common practice: a well that is tied through a high impedance lies in series with the plate; one that is tied well does nothing
    [Theory]
    [InlineData(1e-3, Plate)]
    [InlineData(1e12, Plate * Well / (Plate + Well))]
    public void A_well_behind_a_high_impedance_leaves_the_plate_in_series_with_it(double tieOhms, double fraction) =>
        Assert.Equal(fraction * Farads * Swing * Swing * Hertz, UnloadedSiemens(tieOhms), 5e-3 * fraction * Farads * Swing * Swing * Hertz);

    [Fact]
    public void Between_the_two_the_tie_itself_loses()
    {
        // a tie as slow as the period neither holds the well nor lets it go
        double middle = UnloadedSiemens(1 / (Hertz * Well * Farads));
        Assert.InRange(middle, UnloadedSiemens(1e12), UnloadedSiemens(1e-3));
    }

    // a halving converter: the bottom plate goes from half a volt to the reference and back, so that f C ΔV² is lost at one volt
    private static double UnloadedSiemens(double tieOhms)
    {
        Converter half = Converter.Create("Half in a well").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", Farads, plates: new CapacitorPlates(Plate * Farads, 0, "well"))
            .Switch("s1", "vin", "p", 1, 1).Switch("s2", "n", "vout", 1, 1).Switch("s3", "p", "vout", 2, 1).Switch("s4", "n", "gnd", 2, 1)
            .Switch("tie", "well", "gnd", [1, 2], tieOhms)
            .Parasitic("junction", "well", "gnd", Well * Farads).Build();
        return SteadyStateModel.Of(ModeAnalysis.Of(half)).TwoPort.At(Hertz).InputSiemens;
    }
}
