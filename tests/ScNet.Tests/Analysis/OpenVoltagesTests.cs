using Fractions;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Tests.Analysis;

/// <summary>What of the open voltages is settled once, and what with the inductances of each converter.</summary>
public sealed class OpenVoltagesTests
{
    [Fact]
    public void Inductances_are_waited_for_only_where_they_can_matter()
    {
        // averages alone; a controller without inductors; ripple; inductors in series
        Assert.NotNull(Topology(InductiveStages.StepDown(new Fraction(1, 4)).Build()).Settled);
        Assert.NotNull(Topology(Converter.Create("held").Input("vin").Output("vout")
            .Capacitor("a", "p", "m", controlled: new Fraction(1, 8)).Capacitor("b", "m", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Build()).Settled);
        Assert.Null(Topology(InductiveStages.MultiLevel(4, new Fraction(1, 5)).Build()).Settled);
        Assert.Null(Topology(Series()).Settled);
    }

    /// <summary>The node between coils in series divides 3/4 and -1/4 by their inductances: 1 to 3 first, 1 to 1 then.</summary>
    [Fact]
    public void Other_inductances_divide_voltages_otherwise()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Series()), other = analysis.WithValuesOf(analysis.Converter.WithValues(henries: [1, 1]));

        Assert.Equal("[3/16, -1/16]", analysis.Inductors["a"].Voltage.ToString());
        Assert.Equal("[3/8, -1/8]", other.Inductors["a"].Voltage.ToString());
        Assert.Equal("[3/8, -1/8]", other.Inductors["b"].Voltage.ToString());
        Assert.Equal("[3/16, -1/16]", other.WithValuesOf(analysis.Converter).Inductors["a"].Voltage.ToString());
    }

    /// <summary>
    /// By symmetry the flying capacitors are at 2/3 and 1/3, whatever the digits of the duty and of the inductances of two coils side by
    /// side. What topology says of them fits machine integers; the products of both kinds of digits do not.
    /// </summary>
    [Fact]
    public void Ripple_of_duties_and_inductances_of_many_digits_is_settled_exactly()
    {
        Fraction duty = new(123457, 1_000_003);
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStages.MultiLevel(4, duty).Inductor("twin", "x", "vout", henries: 1.23456789012e-6).Build());

        Assert.IsType<OpenVoltages<long>>(analysis.Topology.Voltages);
        Assert.Equal(VoltageBalance.Ripple, analysis.Balance);
        Assert.Equal(Quantity.Exact(duty), analysis.Ratio);
        Assert.Equal(("2/3", "1/3"), (analysis.Capacitors["fly1"].Voltage.ToString(), analysis.Capacitors["fly2"].Voltage.ToString()));
    }

    /// <summary>Two coils in series in place of one leave the flying capacitor of three levels as open as one does.</summary>
    [Fact]
    public void Coils_in_series_leave_open_what_one_coil_does()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(Converter.Create("three levels").Input("vin").Output("vout").Duties(0.2, 0.3, 0.2, 0.3)
            .Capacitor("fly", "p", "n")
            .Switch("u1", "vin", "p", on: [1]).Switch("u2", "p", "x", on: 3).Switch("d2", "n", "x", on: [1, 2, 4]).Switch("d1", "n", "gnd", on: [2, 3, 4])
            .Inductor("a", "x", "m", henries: 1).Inductor("b", "m", "vout", henries: 3).Build());

        Assert.Equal("1/5", analysis.Ratio.ToString());
        Assert.Equal("?", analysis.Capacitors["fly"].Voltage.ToString());
        Assert.Equal("[?, -1/20, ?, -1/20]", analysis.Inductors["a"].Voltage.ToString());
        Diagnostic warning = Assert.Single(analysis.Diagnostics);
        Assert.Equal((DiagnosticCodes.BalancedByLosses, "fly"), (warning.Code, Assert.Single(warning.Elements)));
    }

    [Fact]
    public void Movements_are_kept_as_whole_numbers()
    {
        VoltageSpace<long> space = new([Rational<long>.One, default, default], [[default, Rational<long>.Of(1, 2), Rational<long>.Of(-1, 3)]]);

        Assert.Equal([0, 3, -2], Assert.Single(space.Movements).Select(m => m.Numerator / m.Denominator));
        Assert.Equal((false, true, true), (space.Moves(0), space.Moves(1), space.Moves(2)));
        Assert.Equal([1, -6, 4], space.Where([[Rational<long>.One, Rational<long>.Of(2)]])!.Origin.Select(v => v.Numerator));
    }

    private static TopologySolution Topology(Converter converter) => ModeAnalysis.Of(converter).Topology;

    private static Converter Series() => Converter.Create("series").Input("vin").Output("vout").Duties(0.25, 0.75)
        .Switch("high", "vin", "x", on: 1).Switch("low", "x", "gnd", on: 2)
        .Inductor("a", "x", "m", henries: 1e-6).Inductor("b", "m", "vout", henries: 3e-6).Build();
}
