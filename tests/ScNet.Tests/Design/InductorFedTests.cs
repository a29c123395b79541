using Fractions;
using ScNet.Analysis;
using ScNet.Design;

namespace ScNet.Tests.Design;

/// <summary>A converter before an inductor: its nodes, phases, values and refusals.</summary>
public sealed class InductorFedTests
{
    // a halver with nodes of the names that the new converter needs
    [Fact]
    public void Nodes_of_the_names_of_the_new_ones_are_renamed()
    {
        Converter half = Converter.Create("Half").Input("in").Output("o").Capacitor("fly", "x", "vin")
            .Switch("s1", "in", "x", 1).Switch("s2", "vin", "o", 1).Switch("s3", "x", "o", 2).Switch("s4", "vin", "gnd", 2).Capacitor("idle", "vout", "gnd").Build();
        Converter fed = InductorFed.Behind(half, 2, 3);
        Assert.Equal("Half behind an inductor", fed.Name);
        Assert.Equal(("vin", "vout"), (fed.InputNode, fed.OutputNode));
        Assert.Equal(("x'", "vin'"), (fed.Capacitors["fly"].PositiveNode, fed.Capacitors["fly"].BottomNode));
        Assert.Equal(("vout'", "gnd"), (fed.Capacitors["idle"].PositiveNode, fed.Capacitors["idle"].BottomNode));
        Assert.Equal(("vin", "x'"), (fed.Switches["s1"].FirstNode, fed.Switches["s1"].SecondNode));
        Assert.Equal(("x'", "x"), (fed.Switches["s3"].FirstNode, fed.Switches["s3"].SecondNode));
        Assert.Equal(("x", "vout", 2.0, 3.0), (fed.Inductors["coil"].FirstNode, fed.Inductors["coil"].SecondNode, fed.Inductors["coil"].Henries, fed.Inductors["coil"].Ohms));
        Assert.Equal(new Fraction(1, 2), ModeAnalysis.Of(fed).Ratio.ToFraction());
    }

    // of three charges in series one is delivered while they charge, two as they discharge
    [Fact]
    public void Phases_last_the_shares_of_the_charge_that_they_deliver()
    {
        Converter fed = InductorFed.Behind(Third());
        Assert.Equal([new(1, 3), new(2, 3)], fed.Phases.Select(p => p.Duty));
        Converter rested = InductorFed.WithRests(Third(), new Fraction(3, 5), 2, 3, 7);
        Assert.Equal([new(1, 5), new(1, 5), new(2, 5), new(1, 5)], rested.Phases.Select(p => p.Duty));
        Assert.Equal("Third behind an inductor, duty 3/5", rested.Name);
        Assert.Equal((2.0, 3.0), (rested.Inductors["coil"].Henries, rested.Inductors["coil"].Ohms));
        Assert.Equal([1], rested.Modes[0].ClosedPhases[rested.Switches.PositionOf("s1")]);
        Assert.Equal([3], rested.Modes[0].ClosedPhases[rested.Switches.PositionOf("s4")]);
        Assert.Equal(("x", "gnd", 7.0), (rested.Switches["rest"].FirstNode, rested.Switches["rest"].SecondNode, rested.Switches["rest"].Ohms));
    }

    [Fact]
    public void A_switch_called_rest_keeps_its_name()
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("rest", "vin", "p", 1).Switch("rest'", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        Converter rested = InductorFed.WithRests(half, new Fraction(1, 2));
        Assert.Equal(["rest", "rest'", "s3", "s4", "rest''"], rested.Switches.Select(s => s.Name));
        Assert.Equal([2, 4], rested.Modes[0].ClosedPhases[4]);
    }

    [Fact]
    public void Values_out_of_range_are_refused_by_their_names()
    {
        Assert.Equal("henries", Assert.Throws<ArgumentOutOfRangeException>(() => InductorFed.Behind(Third(), 0)).ParamName);
        Assert.Equal("windingOhms", Assert.Throws<ArgumentOutOfRangeException>(() => InductorFed.Behind(Third(), 1, -1)).ParamName);
        Assert.Equal("restOhms", Assert.Throws<ArgumentOutOfRangeException>(() => InductorFed.WithRests(Third(), new Fraction(1, 2), restOhms: 0)).ParamName);
        Assert.Equal("duty", Assert.Throws<ArgumentOutOfRangeException>(() => InductorFed.WithRests(Third(), default)).ParamName);
        Assert.Equal("duty", Assert.Throws<ArgumentOutOfRangeException>(() => InductorFed.WithRests(Third(), new Fraction(3, 2))).ParamName);
        Assert.Throws<ArgumentNullException>(() => InductorFed.Behind(null!));
    }

    [Fact]
    public void A_converter_that_cannot_feed_an_inductor_in_every_phase_is_refused_with_the_reason()
    {
        Converter loaded = Converter.Create("Loaded").Input("vin").Output("vout", LoadKind.Current).Capacitor("fly", "p", "n").Capacitor("out", "vout", "gnd")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        Assert.Contains("'Loaded' has a load current", Message(loaded), StringComparison.Ordinal);

        // charged between input and reference, discharged on the input to the output: twice the input, all in one phase
        Converter doubler = Converter.Create("Doubler").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "gnd", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "vin", 2).Build();
        Assert.Contains("'Doubler' delivers 0 in phase 1", Message(doubler), StringComparison.Ordinal);

        Converter shorted = Converter.Create("Shorted").Input("vin").Output("vout").Switch("s1", "vin", "gnd", 1).Switch("s2", "vin", "vout", 2).Build();
        Assert.StartsWith("'Shorted' has no result: ", Message(shorted), StringComparison.Ordinal);

        static string Message(Converter converter) => Assert.Throws<ArgumentException>(() => InductorFed.Behind(converter)).Message;
    }

    private static Converter Third() => Converter.Create("Third").Input("vin").Output("vout")
        .Capacitor("c1", "p1", "n1").Capacitor("c2", "p2", "n2")
        .Switch("s1", "vin", "p1", 1).Switch("s2", "n1", "p2", 1).Switch("s3", "n2", "vout", 1)
        .Switch("s4", "p1", "vout", 2).Switch("s5", "n1", "gnd", 2).Switch("s6", "p2", "vout", 2).Switch("s7", "n2", "gnd", 2).Build();
}
