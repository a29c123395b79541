using Fractions;
using ScNet.Kernel;
using ScNet.Netlists;

namespace ScNet.Tests.Netlists;

/// <summary>Inductors and parasitic capacitances from a document and from the builder.</summary>
public sealed class HybridNetlistTests
{
    [Fact]
    public void A_document_gives_inductors_plates_diodes_and_parasitics()
    {
        Converter converter = NetlistReader.Read(Documents.Hybrid).GetConverter();

        Inductor coil = converter.Inductors["coil"];
        Assert.Equal(("x", "vout", 1e-6, 0.02), (coil.FirstNode, coil.SecondNode, coil.Henries, coil.Ohms));
        Assert.Equal([4], converter.Modes[0].UntilZeroPhases[0]);
        Capacitor fly = converter.Capacitors["fly"];
        Assert.Equal(new CapacitorPlates(3e-8, 5e-9, "well"), fly.Plates);
        Assert.Equal(new Fraction(1, 2), fly.Controlled);
        Assert.Equal(0.7, converter.Switches["s5"].DiodeVolts);
        Assert.Null(converter.Switches["s1"].DiodeVolts);
        Parasitic junction = converter.Parasitics["junction"];
        Assert.Equal(("x", "gnd", 1e-12), (junction.FirstNode, junction.SecondNode, junction.Farads));
        Assert.Equal("Three levels: 1 capacitor, 1 inductor, 6 switches, 4 phases, 1 mode", converter.ToString());
    }

    [Fact]
    public void Parasitic_capacitances_come_as_one_list_with_their_nodes()
    {
        Converter converter = NetlistReader.Read(Documents.Hybrid).GetConverter();
        int Node(string name) => converter.Nodes.Names.Find(name);

        Assert.Equal(
            [
                new ParasiticCapacitance(new NodePair(Node("n"), Node("well")), 3e-8),
                new ParasiticCapacitance(new NodePair(Node("p"), Node("well")), 5e-9),
                new ParasiticCapacitance(new NodePair(Node("x"), Node("gnd")), 1e-12),
            ],
            converter.ParasiticCapacitances);
    }

    [Fact]
    public void The_builder_gives_what_the_document_gives()
    {
        Converter built = Converter.Create("Three levels").Input("vin").Output("vout")
            .Duties(new Fraction(1, 6), new Fraction(1, 4), new Fraction(1, 6), new Fraction(5, 12))
            .Capacitor("fly", "p", "n", 1e-6, plates: new CapacitorPlates(3e-8, 5e-9, "well"), controlled: new Fraction(1, 2))
            .Inductor("coil", "x", "vout", 1e-6, 0.02, untilZero: 4)
            .Switch("s1", "vin", "p", 1).Switch("s2", "p", "x", 3).Switch("s3", "n", "x", 1).Switch("s4", "n", "gnd", 3)
            .Switch("s5", "x", "gnd", [2, 4], diodeVolts: 0.7).Switch("tie", "well", "gnd", [1, 2, 3, 4])
            .Parasitic("junction", "x", "gnd", 1e-12)
            .Build();

        Assert.Equal(NetlistWriter.ToToml(NetlistReader.Read(Documents.Hybrid).GetConverter()), NetlistWriter.ToToml(built));
    }

    [Fact]
    public void A_mode_names_the_inductor_whose_current_ends_a_phase()
    {
        Converter converter = Converter.Create("Two ways").Input("vin").Output("vout")
            .Inductor("coil", "x", "vout")
            .Switch("high", "vin", "x").Switch("low", "x", "gnd")
            .Mode("heavy", ("high", 1), ("low", 2)).Mode("light", ("high", 1), ("low", 2), ("coil", 2))
            .Build();

        Assert.Equal([0, 1], converter.Modes.Select(m => m.UntilZeroPhases[0].Count));
        string text = NetlistWriter.ToToml(converter);
        Assert.Contains("[modes.light]\nhigh = 1\nlow = 2\ncoil = 2\n", text, StringComparison.Ordinal);
        Assert.Equal(text, NetlistWriter.ToToml(NetlistReader.Read(text).GetConverter()));
    }

    [Fact]
    public void A_plate_on_its_own_body_is_a_warning()
    {
        NetlistReading reading = NetlistReader.Read(Documents.HybridWith("body = \"well\"", "body = \"n\""));

        Diagnostic warning = Assert.Single(reading.Diagnostics, d => d.Code == DiagnosticCodes.SameNode);
        Assert.Contains("The bottom plate of capacitor 'fly' lies on its body's node 'n'", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Values_of_inductors_can_be_exchanged()
    {
        Converter converter = NetlistReader.Read(Documents.Hybrid).GetConverter().WithValues(henries: [2e-6], windingOhms: [0]);

        Assert.Equal((2e-6, 0.0), (converter.Inductors[0].Henries, converter.Inductors[0].Ohms));
        Assert.Equal(new CapacitorPlates(3e-8, 5e-9, "well"), converter.Capacitors[0].Plates);
        Assert.Throws<ArgumentException>(() => converter.WithValues(henries: [0]));
    }
}
