using Fractions;
using ScNet.Design.Regulation;

namespace ScNet.Tests.Design.Regulation;

/// <summary>The network of the parts, element by element.</summary>
public sealed class InterleavedPartsTests
{
    private static readonly Converter s_whole = Converter.Create("whole").Input("vin").Output("vout").Duties(new(1, 3), new Fraction(2, 3))
        .Capacitor("fly", "a", "b", 6e-9, 0.3, new CapacitorPlates(8e-12, 4e-12))
        .Capacitor("held", "b", "gnd", 2e-9)
        .Capacitor("out", "vout", "gnd", 9e-9, 0.5, new CapacitorPlates(1e-12, 3e-12))
        .Inductor("coil", "b", "vout", 1e-6, 0.2)
        .Parasitic("across", "vin", "gnd", 5e-12).Parasitic("along", "a", "gnd", 6e-12)
        .Switch("s1", "vin", "a", on: 1, ohms: 2, diodeVolts: 0.7).Switch("s2", "a", "vout", on: 2, ohms: 4).Build();

    private static readonly Fraction s_half = new(1, 2);

    private static Converter TwoParts => InterleavedParts.Of(s_whole, s_whole.Modes[0], 2, s_half);

    [Fact]
    public void Each_part_has_its_share_of_every_element_and_what_hangs_between_the_ports_stays_whole()
    {
        Assert.Equal("whole, 2 parts", TwoParts.Name);
        Assert.Equal(["out", "part 1 fly", "part 1 held", "part 2 fly", "part 2 held"], TwoParts.Capacitors.Select(c => c.Name).Order(StringComparer.Ordinal));
        Assert.Equal(["across", "part 1 along", "part 2 along"], TwoParts.Parasitics.Select(p => p.Name).Order(StringComparer.Ordinal));
        Capacitor output = TwoParts.Capacitors.Single(c => c.Name == "out");
        Assert.Equal((9e-9, 0.5, 1e-12, 3e-12), (output.Farads, output.EsrOhms, output.Plates.BottomFarads, output.Plates.TopFarads));
        Assert.Equal((5e-12, "vin", "gnd"), TwoParts.Parasitics.Where(p => p.Name == "across").Select(p => (p.Farads, p.FirstNode, p.SecondNode)).Single());
    }

    [Theory]
    [InlineData("part 1 ")]
    [InlineData("part 2 ")]
    public void A_part_of_two_has_half_of_every_conductance_and_capacitance_and_twice_every_inductance(string prefix)
    {
        Capacitor fly = TwoParts.Capacitors.Single(c => c.Name == prefix + "fly");
        Assert.Equal((3e-9, 0.6, 4e-12, 2e-12), (fly.Farads, fly.EsrOhms, fly.Plates.BottomFarads, fly.Plates.TopFarads));
        Assert.Equal((prefix + "a", prefix + "b"), (fly.PositiveNode, fly.BottomNode));
        Assert.Equal((1e-9, prefix + "b", "gnd"), TwoParts.Capacitors.Where(c => c.Name == prefix + "held").Select(c => (c.Farads, c.PositiveNode, c.BottomNode)).Single());
        Assert.Equal((2e-6, 0.4, prefix + "b", "vout"), TwoParts.Inductors.Where(l => l.Name == prefix + "coil").Select(l => (l.Henries, l.Ohms, l.FirstNode, l.SecondNode)).Single());
        Assert.Equal((3e-12, prefix + "a", "gnd"), TwoParts.Parasitics.Where(p => p.Name == prefix + "along").Select(p => (p.Farads, p.FirstNode, p.SecondNode)).Single());
        Assert.Equal((4.0, 0.7, "vin", prefix + "a"), TwoParts.Switches.Where(s => s.Name == prefix + "s1").Select(s => (s.Ohms, s.DiodeVolts!.Value, s.FirstNode, s.SecondNode)).Single());
        Assert.Equal(8, TwoParts.Switches.Single(s => s.Name == prefix + "s2").Ohms);
    }

    /// <summary>The second part changes at 1/4 and 1/3 + 1/4 of the period, the first at 0 and 1/3.</summary>
    [Fact]
    public void Phases_are_cut_where_a_part_changes_and_a_later_part_does_the_same_later()
    {
        Assert.Equal([new(1, 4), new(1, 12), new(1, 4), new Fraction(5, 12)], TwoParts.Phases.Select(p => p.Duty));
        Assert.Equal([1, 2], Closed(TwoParts, "part 1 s1"));
        Assert.Equal([3, 4], Closed(TwoParts, "part 1 s2"));
        Assert.Equal([2, 3], Closed(TwoParts, "part 2 s1"));
        Assert.Equal([1, 4], Closed(TwoParts, "part 2 s2"));
    }

    [Fact]
    public void One_part_keeps_every_name_and_phase()
    {
        Converter one = InterleavedParts.Of(s_whole, s_whole.Modes[0], 1, s_half);
        Assert.Equal("whole", one.Name);
        Assert.Equal(["fly", "held", "out"], one.Capacitors.Select(c => c.Name).Order(StringComparer.Ordinal));
        Assert.Equal(("a", "b"), one.Capacitors.Where(c => c.Name == "fly").Select(c => (c.PositiveNode, c.BottomNode)).Single());
        Assert.Equal([new(1, 3), new Fraction(2, 3)], one.Phases.Select(p => p.Duty));
        Assert.Equal([1], Closed(one, "s1"));
        Assert.Equal([2], Closed(one, "s2"));
    }

    private static PhaseSet Closed(Converter converter, string name) => converter.Modes[0].ClosedPhases[converter.Switches.PositionOf(name)];
}
