using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Tests.Design.Choice;

public sealed class CornerSizesTests
{
    [Fact]
    public void Sizes_stay_of_their_kind_and_have_the_values_of_the_corner()
    {
        Process process = LossyStages.Process with { Capacitors = [LossyStages.Capacitor with { Name = "other" }, LossyStages.Capacitor], WiringOhms = 0.01 };
        SizedConverter typical = LossyStages.Sized(LossyStages.ThreeLevel, process, 60, [1, 0, 1, 0, 1], [1e-7, 50, 50, 25, 25]);
        SizedConverter slow = CornerSizes.Of(typical, new Corner("slow", 1.5, 0.75));
        Assert.Equal(["plate 5 V"], slow.Capacitors.Select(c => c.Device.Name));
        Assert.Equal(["n 5 V", "wide n 5 V", "n 5 V", "wide n 5 V"], slow.Switches.Select(s => s.Device.Name));
        Assert.Equal(0.75e-7, slow.Converter.Capacitors[0].Farads, 1e-20);
        Assert.All(new[] { 0.02, 0.02, 0.04, 0.04 }.Zip(slow.Converter.Switches), s => Assert.Equal(1.5 * (s.First + 0.01), s.Second.Ohms, 1e-12));
        Assert.Equal(1, slow.AreaSquareMetres / typical.AreaSquareMetres, 1e-9);
        Assert.Equal(1e-6, slow.Inductors[0].Henries);
    }
}
