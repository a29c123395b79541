using Fractions;
using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>Capacitors that a mode leaves alone: on the output they had 1/2, on the input 1.</summary>
public sealed class IdleCapacitorTests
{
    // x is 1/2 to 1: x - vout 0 to 1/2, vin - x the same
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(6)]
    public void Up_to_six_capacitors_are_bounded_by_what_other_modes_leave_them_with(int count)
    {
        Converter converter = RatedNetworks.Spares(count).Build();
        ConverterStress stress = RatedNetworks.Stress(converter);
        for (int k = 0; k < count; k++)
        {
            Assert.Equal($"c{k}: 1 V (1) at 1 V, mode rest, idle", stress["rest"].Capacitors[$"c{k}"].ToString());
            Assert.True(stress["rest"].Capacitors[$"c{k}"].IsDetermined);
            Assert.Equal(["1/2 to 1 (idle)", "1/2 to 1 (idle)"], stress["rest"].NodePotentials[$"x{k}"].Select(p => p.ToString()));
            Assert.Equal("0 to 1/2 (idle); 0 to 1/2 (idle)", RatedNetworks.Text(stress["rest"].Switches[$"half{k}"]));
            Assert.Equal("0 to 1/2 (idle); 0 to 1/2 (idle)", RatedNetworks.Text(stress["rest"].Switches[$"full{k}"]));
        }

        Assert.Equal("1/2", stress["half"].NodePotentials["x0"][1].ToString());
    }

    [Fact]
    public void Of_more_than_six_none_is_bounded()
    {
        ConverterStress stress = RatedNetworks.Stress(RatedNetworks.Spares(7).Build());
        Assert.All(stress["rest"].Capacitors.Skip(1), c =>
        {
            Assert.Equal([$"mode rest, as {c.Capacitor.Name} idles"], c.Undetermined);
            Assert.False(c.IsDetermined);
            Assert.Null(c.Peak);
        });
        Assert.Equal("fly: 0.5 V (1/2) at 1 V, mode rest", stress["rest"].Capacitors[0].ToString());
        Assert.False(stress["rest"].Switches["half6"].IsDetermined);
    }

    // While they rest nothing conflicts. Put on the output they have 1/2 or 1 against 1/2; full0 sees 1 less 1/2 to 1.
    [Fact]
    public void A_change_takes_every_voltage_that_they_may_have()
    {
        ConverterStress stress = RatedNetworks.Stress(RatedNetworks.Spares(2).Build(), new Interval<double>(2, 4));
        ModeChange change = stress.Change("rest", "half");
        Assert.Equal("0 to 1/2 (idle); 0 to 1/2 (idle)", RatedNetworks.Text(change.OpenSwitches["full1"]));
        Assert.Equal("0 to 1/2 (idle); 0 to 1/2 (idle)", RatedNetworks.Text(change.ClosedSwitches["half1"]));
        Assert.Equal(
            ["1/2 in phase 1 round c0, taken by half0", "1/2 in phase 1 round c1, taken by half1", "1/2 in phase 2 round c0, taken by half0", "1/2 in phase 2 round c1, taken by half1"],
            change.Surges.Select(s => s.ToString()));
        Assert.All(change.Surges, s => Assert.Equal(2, s.Volts));
        Assert.Same(change.Surges, change.Surges);
    }

    // with 1/3 to 2/3 of the input it is put on the input: 2/3 or 1/3 are left over
    [Fact]
    public void The_largest_surge_of_a_loop_counts()
    {
        Converter converter = RatedNetworks.Spares(1).Build();
        ModeStress rest = Rest(converter, new Interval<Fraction>(new Fraction(1, 3), new Fraction(2, 3)));
        ModeChange change = ModeChange.Of(rest, RatedNetworks.Stress(converter)["full"]);
        Assert.Equal(
            ["2/3 in phase 1 round c0, taken by full0", "2/3 in phase 2 round c0, taken by full0"], change.Surges.Select(s => s.ToString()));
    }

    // The switch joins c0 and c1 in phase 1: they end with the same voltage, and with another one than each had. Open in phase 2, it sees none.
    [Fact]
    public void Capacitors_that_the_mode_joins_with_each_other_keep_nothing()
    {
        Converter converter = RatedNetworks.Spares(2).Switch("join", "x0", "x1").Mode("share", [.. RatedNetworks.HalfSwitching, ("join", 1)]).Build();
        ModeStress share = RatedNetworks.Stress(converter)["share"];
        Assert.Equal(["mode share, as c0 idles"], share.Capacitors["c0"].Undetermined);
        Assert.Equal(["mode share, as c1 idles"], share.Capacitors["c1"].Undetermined);
        Assert.Equal("0; 0", RatedNetworks.Text(share.Switches["join"]));
        Assert.Equal("?; ?", RatedNetworks.Text(share.Switches["half0"]));
        Assert.Equal(["mode share, phase 1, as c0, c1 idle", "mode share, phase 2, as c0 idles"], share.Switches["half0"].Undetermined);
    }

    // c has 1/2 or 1 and no plate of it is on anything: what is across it is fixed all the same
    [Fact]
    public void The_voltage_across_a_capacitor_that_floats_and_rests_is_its_own()
    {
        (string, PhaseSet)[] half = RatedNetworks.HalfSwitching;
        Converter converter = RatedNetworks.HalfOfModes().Capacitor("c", "x", "y")
            .Switch("out", "x", "vout").Switch("in", "vin", "x").Switch("down", "y", "gnd").Switch("across", "x", "y").Switch("back", "y", "x")
            .Mode("half", [.. half, ("out", [1, 2]), ("down", [1, 2])]).Mode("full", [.. half, ("in", [1, 2]), ("down", [1, 2])]).Mode("rest", half).Build();
        ModeStress rest = RatedNetworks.Stress(converter)["rest"];
        Assert.Equal("1/2 to 1 (idle); 1/2 to 1 (idle)", RatedNetworks.Text(rest.Switches["across"]));
        Assert.Equal("-1 to -1/2 (idle); -1 to -1/2 (idle)", RatedNetworks.Text(rest.Switches["back"]));
        Assert.Equal(VoltageBasis.Floating, rest.Switches["in"].Phases[1].Basis);
    }

    private static ModeStress Rest(Converter converter, Interval<Fraction> kept) =>
        ModeStress.Of(ModeAnalysis.Of(converter, converter.Modes["rest"]), RatedNetworks.OneVolt, true, [default, kept]);
}
