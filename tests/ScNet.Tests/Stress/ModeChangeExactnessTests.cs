using Fractions;
using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>What a change says of surges that are no common case.</summary>
public sealed class ModeChangeExactnessTests
{
    // Mode on puts c over j1 and j2 on vout = 1/2 in phase 1. With v on c the two take v - 1/2: from 1/3, -1/6; from 2/3, 1/6.
    private static readonly Converter s_converter = RatedNetworks.HalfOfModes().Capacitor("c", "x", "gnd").Switch("j1", "x", "y").Switch("j2", "y", "vout")
        .Mode("rest", RatedNetworks.HalfSwitching).Mode("on", [.. RatedNetworks.HalfSwitching, ("j1", 1), ("j2", 1)]).Build();

    [Fact]
    public void A_surge_is_bounded_at_both_ends_of_what_an_idle_capacitor_may_hold()
    {
        ModeChange change = FromRest(new Fraction(2, 3));
        Assert.Equal("-1/6 to 1/6 (surge)", change.ClosedSwitches["j1"].Phases[1].ToString());
        Assert.Equal("-1/6 to 1/6 (surge)", change.ClosedSwitches["j2"].Phases[1].ToString());
        Assert.True(change.IsExact);
    }

    // 2⁶⁴ as a denominator leaves a machine word, at one end and in one phase: then the whole change is called wide
    [Fact]
    public void One_phase_that_is_wide_at_one_voltage_makes_the_change_so()
    {
        Fraction little = new(1, System.Numerics.BigInteger.One << 64);
        ModeChange change = FromRest(new Fraction(1, 2) + little);
        Interval<Fraction> bounds = change.ClosedSwitches["j1"].Phases[1].PerVoltOfInput;
        Assert.False(change.IsExact);
        Assert.Equal(new Fraction(-1, 6), bounds.Minimum!.Value);
        Assert.InRange(bounds.Maximum!.Value, little, 2 * little);
    }

    // vout at 1/2 is put on vin: no capacitor is in that loop
    [Fact]
    public void Input_and_output_alone_may_conflict()
    {
        Converter converter = RatedNetworks.HalfOfModes().Switch("through", "vin", "vout")
            .Mode("half", RatedNetworks.HalfSwitching).Mode("whole", ("through", [1, 2])).Build();
        ModeChange change = RatedNetworks.Stress(converter).Change("half", "whole");
        Assert.Equal(
            ["1/2 in phase 1 round no element, taken by through", "1/2 in phase 2 round no element, taken by through"], change.Surges.Select(s => s.ToString()));
        Assert.All(change.Surges, s => Assert.Empty(s.Capacitors));
    }

    private static ModeChange FromRest(Fraction highest)
    {
        ConverterAnalysis analysis = ConverterAnalysis.Of(s_converter);
        ModeAnalysis[] modes = [.. analysis.Results];
        ModeStress rest = ModeStress.Of(modes[0], RatedNetworks.OneVolt, true, [default, new Interval<Fraction>(new Fraction(1, 3), highest)]);
        return ModeChange.Of(rest, ModeStress.Of(modes[1], RatedNetworks.OneVolt));
    }
}
