using Fractions;
using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>Which capacitors are named where no flow reaches the output that balances all of them.</summary>
public sealed class LoadMovesVoltagesTests
{
    /// <summary>
    /// The coil's node is at vin − fly for 2/10 of the period, at fly for 3/10 and at zero for the rest: the output moves by a tenth of
    /// what fly moves by. Two capacitors in series across the input have an open voltage of their own and no part in that.
    /// </summary>
    [Fact]
    public void Capacitors_that_move_by_themselves_are_not_named()
    {
        Converter converter = Uneven().Capacitor("a", "u", "v").Capacitor("b", "v", "gnd").Switch("t", "vin", "u", on: 1).Inductor("coil", "x", "vout").Build();
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        Diagnostic warning = Assert.Single(analysis.Diagnostics, d => d.Code == DiagnosticCodes.LoadMovesVoltages);

        Assert.False(analysis.CarriesLoad);
        Assert.Equal(["fly"], warning.Elements);
        Assert.Contains("some stays on capacitor 'fly'.", warning.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// The same stage with a capacitor before the coil, which the coil's current always charges: whatever fly does, output and that
    /// capacitor may move against each other without any voltage of the coil.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_no_ripple_can_balance_is_an_error_that_names_it_alone(bool isFirst)
    {
        ConverterBuilder builder = isFirst ? Converter.Create("blocked").Capacitor("series", "x", "y") : Converter.Create("blocked");
        builder = Uneven(builder);
        Converter converter = (isFirst ? builder : builder.Capacitor("series", "x", "y")).Inductor("coil", "y", "vout").Build();

        Findings.Is(
            Findings.Error(converter),
            DiagnosticCodes.CapacitorUnbalanced,
            null,
            "No flow delivers charge to the output 'vout' and leaves every capacitor balanced over the period: it always leaves a net charge on capacitor 'series'. Close switches, in this or another phase, that lead this charge back.",
            "series");
    }

    /// <summary>Only fly is charged one way; a and b share an open voltage that the output has nothing to do with.</summary>
    [Fact]
    public void A_capacitor_charged_one_way_is_named_without_those_of_open_voltage() => Findings.Is(
        Findings.Error(Converter.Create("one way").Input("vin").Output("vout")
            .Capacitor("a", "u", "v").Capacitor("b", "v", "gnd").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("t", "vin", "u", on: 2)
            .Build()),
        DiagnosticCodes.CapacitorUnbalanced,
        null,
        "No flow delivers charge to the output 'vout' and leaves every capacitor balanced over the period: it always leaves a net charge on capacitor 'fly'. Close switches, in this or another phase, that lead this charge back.",
        "fly");

    private static ConverterBuilder Uneven(ConverterBuilder? builder = null) => (builder ?? Converter.Create("uneven"))
        .Input("vin").Output("vout").Duties(new Fraction(1, 5), new Fraction(3, 10), new Fraction(1, 2))
        .Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "x", on: 1)
        .Switch("s3", "p", "x", on: 2).Switch("s4", "n", "gnd", on: 2).Switch("s5", "x", "gnd", on: 3);
}
