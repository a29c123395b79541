using Fractions;
using ScNet.Reconfiguration;

namespace ScNet.Tests.Reconfiguration;

public class InductorRefusalTests
{
    [Fact]
    public void Searches_over_switches_and_capacitors_refuse_inductors()
    {
        Converter stage = InductiveStages.StepDown(new Fraction(1, 4)).Build();
        ScNetException reach = Assert.Throws<ScNetException>(() => ReachableRatios.Of(stage));
        ScNetException overlay = Assert.Throws<ScNetException>(() => Overlay.Of("both", [stage]));
        Assert.Equal(DiagnosticCodes.InductorsUnsupported, Assert.Single(reach.Diagnostics).Code);
        Assert.Equal(["coil"], Assert.Single(overlay.Diagnostics).Elements);
    }
}
