using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Derivatives of a two-port whose figures are written down at once.</summary>
public sealed class SlopeSolverTests
{
    /// <summary>
    /// R₁ in phase 1 and R₂ in phase 2 between stiff ports, beside a winding R₃ under an inductor in both: the conductance is
    /// d₁/R₁ + d₂/R₂ + 1/R₃, whatever inductance, capacitance across the input and frequency.
    /// </summary>
    [Fact]
    public void Resistances_side_by_side()
    {
        Circuit circuit = new Circuit(LoadKind.Stiff, 0.25, 0.75).Switch("vin", "vout", 2, 1).Switch("vin", "vout", 3, 2)
            .Inductor("vin", "vout", 0.5, 4).Resistor("vin", "x", 1).Capacitor("x", Converter.ReferenceNode, 2);
        SlopeSolver slopes = new(circuit.Structure(), circuit.Values());
        double ohms = 1 / (0.125 + 0.25 + 0.25), square = ohms * ohms;
        Assert.Equal(square * 0.25 / 4, slopes.ByOhms(0, 2).Ohms, 1e-13);
        Assert.Equal(square * 0.75 / 9, slopes.ByOhms(1, 2).Ohms, 1e-13);
        Assert.Equal(0, slopes.ByOhms(2, 2).Ohms, 1e-13);
        Assert.Equal(square / 16, slopes.ByWinding(0, 2).Ohms, 1e-13);
        Assert.Equal(0, slopes.ByHenries(0, 2).Ohms, 1e-13);
        Assert.Equal(0, slopes.ByFarads(0, 2).Ohms, 1e-13);
        Assert.Equal(0, slopes.ByFrequency(2).Ohms, 1e-13);

        // at constant period the winding conducts for longer too: its quarter siemens counts by duty
        Assert.Equal(-square * (0.5 + 0.25), slopes.ByDuty(0, 2).Ohms, 1e-12);
        Assert.Equal(-square * ((1 / 3.0) + 0.25), slopes.ByDuty(1, 2).Ohms, 1e-12);
    }

    [Fact]
    public void A_period_of_no_length_is_refused()
    {
        Circuit circuit = new Circuit(LoadKind.Current, 1).Resistor("vin", "vout", 2).Capacitor("vout", Converter.ReferenceNode, 1);
        SlopeSolver slopes = new(circuit.Structure(), circuit.Values());
        InvalidOperationException thrown = Assert.Throws<InvalidOperationException>(() => slopes.ByOhms(0, double.PositiveInfinity));
        Assert.Equal("The period has been solved before.", thrown.Message);
    }
}
