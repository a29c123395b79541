using Fractions;

namespace ScNet.Tests;

public sealed class ConverterBuilderTests
{
    private static ConverterBuilder Half() => Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", 1e-9)
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1)
        .Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2);

    [Fact]
    public void Nodes_are_numbered_reference_input_output_then_by_appearance()
    {
        Converter converter = Half().Build();

        Assert.Equal(["gnd", "vin", "vout", "p", "n"], converter.Nodes);
        Assert.Equal((3, 4), (converter.Network.BranchFirst[0], converter.Network.BranchSecond[0]));
        Assert.Equal([true, true, false, false], converter.Network.ClosedIn(0, 0).ToArray());
        Assert.Equal([false, false, true, true], converter.Network.ClosedIn(0, 1).ToArray());
        Assert.Empty(converter.Warnings);
    }

    [Fact]
    public void Duties_given_as_doubles_are_the_decimals_written()
    {
        Converter converter = Half().Duties(0.3, 0.7).Build();

        Assert.Equal([new Fraction(3, 10), new Fraction(7, 10)], converter.Phases.Select(p => p.Duty));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_duty_that_is_not_finite_is_misuse(double duty) => Assert.Throws<ArgumentException>(() => Half().Duties(duty, 0.5));

    [Fact]
    public void An_infinite_fraction_is_no_duty() =>
        Assert.Equal([DiagnosticCodes.ValueOutOfRange], Codes(Half().Duties(Fraction.PositiveInfinity, Fraction.One)));

    [Fact]
    public void Names_that_are_null_or_empty_are_misuse()
    {
        Assert.ThrowsAny<ArgumentException>(() => Converter.Create(""));
        Assert.ThrowsAny<ArgumentException>(() => Half().Input(""));
        Assert.ThrowsAny<ArgumentException>(() => Half().PhaseNames("a", null!));
        Assert.ThrowsAny<ArgumentException>(() => Half().Mode("m", (null!, 1)));
        Assert.ThrowsAny<ArgumentException>(() => Half().Capacitor("c", "", "n"));
    }

    [Fact]
    public void All_mistakes_are_reported_together()
    {
        ConverterBuilder builder = Converter.Create("bad").Input("gnd").Duties(0.5, 0.25)
            .Capacitor("c", "p", "p", -1, -1).Switch("c", "gnd", "p", 3, 0);

        Assert.Equal(
            [
                DiagnosticCodes.MissingKey, DiagnosticCodes.PortClash, DiagnosticCodes.DutySum, DiagnosticCodes.DuplicateName,
                DiagnosticCodes.ValueOutOfRange, DiagnosticCodes.ValueOutOfRange, DiagnosticCodes.SameNode,
                DiagnosticCodes.ValueOutOfRange, DiagnosticCodes.UnknownPhase,
            ],
            Codes(builder));
        Assert.Equal(9, Assert.Throws<ScNetException>(() => builder.Build()).Diagnostics.Count);
    }

    [Fact]
    public void A_converter_without_elements_is_one_error() =>
        Assert.Equal([DiagnosticCodes.MissingKey], Codes(Converter.Create("none").Input("a").Output("b")));

    [Theory]
    [InlineData(0, DiagnosticCodes.TooFewPhases)]
    [InlineData(1, DiagnosticCodes.TooFewPhases)]
    [InlineData(1001, DiagnosticCodes.ValueOutOfRange)]
    [InlineData(int.MaxValue, DiagnosticCodes.ValueOutOfRange)]
    public void The_number_of_phases_has_bounds(int count, string code) => Assert.Equal([code], Codes(Half().Phases(count)));

    [Fact]
    public void Modes_and_phases_of_switches_exclude_each_other() => Assert.Equal(
        Enumerable.Repeat(DiagnosticCodes.OnAndModes, 4), Codes(Half().Mode("m", ("s1", 1))));

    [Fact]
    public void A_mode_closes_what_it_names()
    {
        Converter converter = Converter.Create("m").Input("a").Output("b").Switch("s", "a", "b").Switch("t", "a", "b")
            .Mode("one", ("t", [1, 2])).Mode("two").Build();

        Assert.Equal([PhaseSet.None, [1, 2]], converter.Modes["one"].ClosedPhases);
        Assert.Equal([PhaseSet.None, PhaseSet.None], converter.Modes["two"].ClosedPhases);
    }

    [Fact]
    public void Mistakes_in_modes_are_reported() => Assert.Equal(
        [DiagnosticCodes.DuplicateName, DiagnosticCodes.UnknownSwitch, DiagnosticCodes.DuplicateName],
        Codes(Converter.Create("m").Input("a").Output("b").Switch("s", "a", "b")
            .Mode("one", ("x", 1)).Mode("one", ("s", 1), ("s", 2))));

    [Fact]
    public void A_shorted_switch_and_a_loose_end_are_warnings()
    {
        Assert.True(Half().Switch("s5", "p", "p", 1).Capacitor("c2", "p", "loose").TryBuild(out Converter? converter, out IReadOnlyList<Diagnostic> findings));

        Assert.Equal([DiagnosticCodes.SameNode, DiagnosticCodes.FloatingTerminal], findings.Select(f => f.Code));
        Assert.Equal(findings, converter.Warnings);
        Assert.Null(findings[0].Position);
    }

    [Fact]
    public void A_thousand_names_do_not_make_a_message_of_a_thousand_names()
    {
        Converter.Create("m").Input("a").Output("b").Switch("s", "a", "b")
            .PhaseNames([.. Enumerable.Range(0, 1000).Select(i => $"p{i}")])
            .Mode("one", ("s", 1001)).TryBuild(out _, out IReadOnlyList<Diagnostic> findings);

        Assert.InRange(Assert.Single(findings).Message.Length, 1, 300);
    }

    private static IEnumerable<string> Codes(ConverterBuilder builder)
    {
        Assert.False(builder.TryBuild(out Converter? converter, out IReadOnlyList<Diagnostic> findings));
        Assert.Null(converter);
        return findings.Select(f => f.Code);
    }
}
