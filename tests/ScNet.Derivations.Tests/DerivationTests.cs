using ScNet.Analysis;

namespace ScNet.Derivations.Tests;

public sealed class DerivationTests
{
    [Fact]
    public void A_name_that_the_converter_does_not_have_is_refused_at_once()
    {
        Derivation half = Derivation.Of(Circuits.Half());
        Assert.Contains("no capacitor 's1'", Assert.Throws<ArgumentException>(() => half.Capacitor("s1", "1/2", "-1/2")).Message, StringComparison.Ordinal);
        Assert.Contains("no switch 'fly'", Assert.Throws<ArgumentException>(() => half.Blocking("fly", 0, 0)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => half.FastCoefficient("nothing", 1));
        Assert.Throws<ArgumentNullException>(() => half.CapacitorVoltage(null!, 1));
    }

    [Fact]
    public void A_phase_that_the_converter_does_not_have_is_refused_at_once()
    {
        Derivation half = Derivation.Of(Circuits.Half());
        Assert.Throws<ArgumentOutOfRangeException>(() => half.CapacitorInPhase("fly", 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => half.InputInPhase(3, 1));
        Assert.Contains(
            "Expected 2 values for the charge of fly, one per phase of 'Half', but got 3",
            Assert.Throws<ArgumentException>(() => half.Capacitor("fly", 1, 2, 3)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void With_several_modes_one_has_to_be_named()
    {
        Converter converter = Converter.Create("Gears").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p").Switch("s2", "n", "vout").Switch("s3", "p", "vout").Switch("s4", "n", "gnd")
            .Mode("1/2", ("s1", 1), ("s2", 1), ("s3", 2), ("s4", 2))
            .Mode("1/1", ("s1", PhaseSet.Of(1, 2)), ("s3", PhaseSet.Of(1, 2)))
            .Build();
        Assert.Contains("1/2, 1/1", Assert.Throws<ArgumentException>(() => Derivation.Of(converter)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Derivation.Of(converter, "2/1"));
        Assert.True(Derivation.Of(converter, "1/2").Ratio("1/2").Check().IsRight);
        Assert.Equal("Gears, mode 1/1: wrong, 1 of 1 statement.", Derivation.Of(converter, "1/1").Ratio("1/2").Check().ToString().Split('\n')[0]);
    }

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void A_tolerance_outside_zero_to_one_is_refused(double tolerance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Derivation.Of(Circuits.Half()).WithTolerance(tolerance));

    [Fact]
    public void A_derivation_is_a_value_that_no_method_changes()
    {
        Converter half = Circuits.Half();
        Derivation empty = Derivation.Of(half);
        Derivation one = empty.Ratio("1/2"), same = Derivation.Of(half, "default").Ratio("2/4");
        Assert.Empty(empty.Statements);
        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, one.Ratio("1/2"));
        Assert.NotEqual(one, one.WithTolerance(0.1));
        Assert.Equal(one.Statements[0], same.Statements[0]);
        Assert.Equal("Half, 2 statements\n  ratio = 1/2\n  charge of fly in phase 2 = -1/2", one.CapacitorInPhase("fly", 2, "-1/2").ToString());
    }

    [Fact]
    public void A_report_is_a_value_too()
    {
        DerivationReport one = Derivation.Of(Circuits.Half()).Ratio("1/3").Check(), same = Derivation.Of(Circuits.Half()).Ratio("1/3").Check();
        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, Derivation.Of(Circuits.Half()).Ratio("1/4").Check());
        Assert.NotEqual(one, Derivation.Of(Circuits.Half()).Check());
        Assert.Equal(one.Findings[0].Conflict, same.Findings[0].Conflict);
        Assert.Equal("wrong: ratio = 1/3, derived 1/2", one.Findings[0].ToString());
    }

    [Fact]
    public void An_analysis_that_is_there_already_can_be_used()
    {
        Converter half = Circuits.Half();
        Assert.True(Derivation.Of(ModeAnalysis.Of(half, half.Modes[0])).SwitchInPhase("s4", 2, "-1/2").FastCoefficient("s4", "1/2").FastCoefficient("fly", 1).Check().IsRight);
    }

    [Fact]
    public void A_derivation_that_states_nothing_is_not_right()
    {
        DerivationReport report = Derivation.Of(Circuits.Half()).Check();
        Assert.False(report.IsRight);
        Assert.Equal("Half: nothing is stated.", report.ToString());
    }
}
