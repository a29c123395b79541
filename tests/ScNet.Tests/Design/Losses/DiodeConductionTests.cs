using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;

namespace ScNet.Tests.Design.Losses;

/// <summary>Who carries the current of a coil at each edge, by hand: by its direction and by what each switch blocks.</summary>
public sealed class DiodeConductionTests
{
    // into phase 2 at 1/32 the diode of s4 takes over, into phase 3 at 7/96 that of s2, and into phase 1 at -3/32 both, whose
    // switches then block 1 and 2/3; those of s1 and s3 stand against the current
    [Theory]
    [InlineData(null, 0.7)]
    [InlineData(0.9, 0.9)]
    public void The_diodes_of_a_stage_of_four_switches_take_over_at_three_edges(double? fourthDiodeVolts, double fourth)
    {
        // with a diode of its own, s4 is written against it
        Converter stage = fourthDiodeVolts is null ? FourSwitchStage.Build() : Turned(fourthDiodeVolts.Value);
        double sign = fourthDiodeVolts is null ? 1 : -1;
        IReadOnlyList<DiodeTerm> terms = Of(stage, out IReadOnlyList<int> without);
        Assert.Empty(without);
        AssertTerms(
            [
                new("s4", fourth, sign * 4 / 3.0, sign / 32.0),
                new("s2", 0.7, -4 / 3.0, -7 / 96.0),
                new("s2", 0.7, -4 / 3.0, 3 / 32.0, 1),
                new("s4", fourth, sign * 4 / 3.0, sign * -3 / 32.0, 2 / 3.0),
            ],
            terms);
    }

    // the coil takes 4/3 of the load current, against it: by the sign of the ratio the switches' currents are told
    [Fact]
    public void An_inverting_stage_hands_the_current_to_the_diode_at_its_output()
    {
        IReadOnlyList<DiodeTerm> terms = Of(InductiveStages.Inverting(new Fraction(1, 4)).Build(), out IReadOnlyList<int> without);
        Assert.Empty(without);
        AssertTerms([new("s2", 0.7, 4 / 3.0, -1 / 8.0), new("s2", 0.7, 4 / 3.0, 1 / 8.0, 4 / 3.0)], terms);
    }

    // the edge between two phases of the same closed switches is none
    [Fact]
    public void Where_no_switch_changes_no_diode_conducts()
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Duties(new Fraction(1, 8), new Fraction(1, 8), new Fraction(3, 4))
            .Switch("high", "vin", "x", [1, 2], 1).Switch("low", "x", "gnd", 3, 1).Inductor("coil", "x", "vout", henries: 1).Build();
        IReadOnlyList<DiodeTerm> terms = Of(stage, out IReadOnlyList<int> without, inSeries: 2);
        Assert.Empty(without);
        AssertTerms([new("low", 1.4, -1, -3 / 32.0), new("low", 1.4, -1, 3 / 32.0, 1)], terms);
    }

    [Fact]
    public void Phases_after_which_the_diodes_stand_against_the_current_are_told()
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Duties(new Fraction(1, 8), new Fraction(1, 8), new Fraction(3, 4))
            .Switch("high", "vin", "x", [1, 2], 1).Switch("low", "gnd", "x", 3, 1, diodeVolts: 0.9).Inductor("coil", "x", "vout", henries: 1).Build();
        Assert.Empty(Of(stage, out IReadOnlyList<int> without));
        Assert.Equal([2, 3], without);
    }

    // three levels: nothing but losses fixes the flying capacitor's voltage, and with it ripple and what switches block. The load's current is known
    [Fact]
    public void Where_ripple_is_unknown_diodes_of_the_netlist_carry_the_load()
    {
        Converter stage = Converter.Create("three levels").Input("vin").Output("vout").Phases(4).Capacitor("fly", "t", "b").Inductor("coil", "x", "vout")
            .Switch("u1", "vin", "t", 1).Switch("u2", "t", "x", 3).Switch("d1", "b", "gnd", [2, 3, 4], 1, 0.6).Switch("d2", "x", "b", [1, 2, 4], 1, 0.8).Build();
        IReadOnlyList<DiodeTerm> terms = Of(stage, out IReadOnlyList<int> without);
        Assert.Empty(without);
        AssertTerms([new("d1", 0.6, -1, 0), new("d2", 0.8, -1, 0), new("d2", 0.8, -1, 0), new("d1", 0.6, -1, 0)], terms);
    }

    private static Converter Turned(double diodeVolts) => Converter.Create("four switches").Input("vin").Output("vout").Duties(FourSwitchStage.Duties)
        .Switch("s1", "vin", "x", [1, 2], 0.2).Switch("s2", "x", "gnd", 3, 0.3).Inductor("coil", "x", "y", henries: 2, ohms: 0.1)
        .Switch("s3", "y", "gnd", 1, 0.4).Switch("s4", "vout", "y", [2, 3], 0.5, diodeVolts).Build();

    private static IReadOnlyList<DiodeTerm> Of(Converter converter, out IReadOnlyList<int> without, int inSeries = 1)
    {
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        RippleCurrents ripple = RippleCurrents.Of(analysis, [.. converter.Phases.Select(p => p.Duty.ToDouble())], out _);
        return DiodeConduction.Of(Sized.Of(converter, inSeries: inSeries), analysis, ripple, out without);
    }

    private static void AssertTerms(DiodeTerm[] expected, IReadOnlyList<DiodeTerm> actual)
    {
        Assert.Equal(expected.Select(t => t.Element), actual.Select(t => t.Element));
        foreach ((DiodeTerm e, DiodeTerm a) in expected.Zip(actual))
        {
            Assert.Equal(e.DiodeVolts, a.DiodeVolts, 1e-12);
            Assert.Equal(e.PerAmpere, a.PerAmpere, 1e-12);
            Assert.Equal(e.PerVoltSecond, a.PerVoltSecond, 1e-12);
            Assert.Equal(e.BlockedPerVolt, a.BlockedPerVolt, 1e-12);
        }
    }
}
