using System.Text.Json.Nodes;
using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.Results;

namespace ScNet.Tests.Netlists;

/// <summary>What the writer writes, the reader reads as an equal converter.</summary>
[Trait("Kind", "Law")]
public sealed class NetlistWriterLaws
{
    private static readonly Gen<string> s_name = Gen.OneOf(
        Gen.OneOf(new[] { "a", "-", "1", "1/2", "a.b", "gnd ", "#", "\"", "\\", "'", "=", "\0", "\t", "\r\n", "\u0085", "\u2028", "\u200B", "ß", "\uD83D\uDE00", "\uFEFF", " " }),
        Gen.String[Gen.Char['\0', '\uD7FF'], 1, 6]);

    private static readonly Gen<Converter> s_converters =
        from sketch in RandomNetworks.Any
        from places in Gen.Int[1, 20].Array[sketch.PhaseCount - 1]
        from kind in Gen.Int[0, 2]
        from stem in s_name
        from phaseNames in Gen.Bool
        from scale in Gen.Int[-12, 12]
        from modes in Gen.Select(s_name, Gen.Int[0, (1 << sketch.PhaseCount) - 1].Array[sketch.Switches.Count]).Array[0, 3]
        select Build(sketch, kind == 0 ? Equal(sketch.PhaseCount) : Decimal(places, kind), stem, phaseNames, Math.Pow(10, scale), modes);

    [Fact]
    public void A_document_that_is_written_reads_as_an_equal_converter() => s_converters.Holds(
        converter =>
        {
            string text = NetlistWriter.ToToml(converter);
            NetlistReading reading = NetlistReader.Read(text);
            Assert.True(reading.HasResult, $"{string.Join('\n', reading.Diagnostics)}\n{text}");
            Converter read = reading.Converter!;
            AssertEqual(converter, read);
            Assert.Equal(text, NetlistWriter.ToToml(read));
            Assert.Equal(AnalysisOf(converter), AnalysisOf(read));
        },
        count: 350);

    [Fact]
    public void The_comparison_of_converters_sees_every_difference()
    {
        Converter Make(string name = "A", double farads = 2, double ohms = 3, string node = "p", int on = 1, double duty = 0.4, LoadKind load = LoadKind.Stiff, string mode = "m", string rail = "n") =>
            Converter.Create(name).Input("vin").Output("vout", load).Duties(duty, 1 - duty)
                .Capacitor("fly", "p", "n", farads).Switch("s1", "vin", node, ohms: ohms).Switch("s2", "p", "vout").FurtherOutput("rail", "p", rail).Mode(mode, ("s1", on), ("s2", 2)).Build();

        AssertEqual(Make(), Make());
        Assert.All(
            new[] { Make(name: "B"), Make(farads: 1), Make(ohms: 1), Make(node: "n"), Make(on: 2), Make(duty: 0.5), Make(load: LoadKind.Current), Make(mode: "n"), Make(rail: "gnd") },
            other => Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertEqual(Make(), other)));
    }

    private static void AssertEqual(Converter a, Converter b)
    {
        Assert.Equal((a.Name, a.InputNode, a.OutputNode, a.Load), (b.Name, b.InputNode, b.OutputNode, b.Load));
        Assert.Equal(a.Nodes, b.Nodes);
        Assert.Equal(a.Phases.Select(p => (p.Number, p.Name, p.Duty)), b.Phases.Select(p => (p.Number, p.Name, p.Duty)));
        Assert.Equal(
            a.Capacitors.Select(c => (c.Name, c.PositiveNode, c.BottomNode, c.Farads, c.EsrOhms)),
            b.Capacitors.Select(c => (c.Name, c.PositiveNode, c.BottomNode, c.Farads, c.EsrOhms)));
        Assert.Equal(
            a.Switches.Select(s => (s.Name, s.FirstNode, s.SecondNode, s.Ohms)),
            b.Switches.Select(s => (s.Name, s.FirstNode, s.SecondNode, s.Ohms)));
        Assert.Equal(a.Capacitors.Select(c => (c.Plates, c.Controlled)), b.Capacitors.Select(c => (c.Plates, c.Controlled)));
        Assert.Equal(a.Switches.Select(s => s.DiodeVolts), b.Switches.Select(s => s.DiodeVolts));
        Assert.Equal(
            a.Inductors.Select(l => (l.Name, l.FirstNode, l.SecondNode, l.Henries, l.Ohms)),
            b.Inductors.Select(l => (l.Name, l.FirstNode, l.SecondNode, l.Henries, l.Ohms)));
        Assert.Equal(a.Parasitics.Select(p => (p.Name, p.FirstNode, p.SecondNode, p.Farads)), b.Parasitics.Select(p => (p.Name, p.FirstNode, p.SecondNode, p.Farads)));
        Assert.Equal(a.ParasiticCapacitances, b.ParasiticCapacitances);
        Assert.Equal(a.FurtherOutputs.Select(o => (o.Name, o.Node, o.ReturnNode)), b.FurtherOutputs.Select(o => (o.Name, o.Node, o.ReturnNode)));
        Assert.Equal(a.Modes.Select(m => m.Name), b.Modes.Select(m => m.Name));
        Assert.All(a.Modes.Zip(b.Modes), m => Assert.Equal(m.First.UntilZeroPhases, m.Second.UntilZeroPhases));
        Assert.All(a.Modes.Zip(b.Modes), m => Assert.Equal(m.First.ClosedPhases, m.Second.ClosedPhases));
        Assert.Equal(a.Warnings.Select(w => (w.Code, w.Message)), b.Warnings.Select(w => (w.Code, w.Message)));
    }

    // only what was read has places in a document
    private static string AnalysisOf(Converter converter)
    {
        JsonNode document = JsonNode.Parse(AnalysisDocument.ToJson(ConverterAnalysis.Of(converter)))!;
        foreach (JsonNode? diagnostic in document["modes"]!.AsArray().SelectMany(m => m!["diagnostics"]!.AsArray()))
        {
            foreach (string key in new[] { "file", "line", "column" })
            {
                diagnostic!.AsObject().Remove(key);
            }
        }

        return document.ToJsonString();
    }

    private static Fraction[] Equal(int count) => [.. Enumerable.Repeat(new Fraction(1, count), count)];

    // decimals of two places, or of nine
    private static Fraction[] Decimal(int[] places, int kind)
    {
        Fraction[] first = [.. places.Select(p => kind == 1 ? new Fraction(p, 100) : new Fraction((p * 7_654_321) + 1, 1_000_000_000))];
        return [.. first, Fraction.One - first.Aggregate(Fraction.Zero, (a, b) => a + b)];
    }

    // a stem makes every name odd; the reference node keeps its own
    private static Converter Build(
        NetworkSketch sketch, Fraction[] duties, string stem, bool phaseNames, double scale, (string Name, int[] Phases)[] modes)
    {
        Converter plain = sketch.Build();
        ConverterBuilder builder = Converter.Create(stem).Input(Node(plain.InputNode)).Output(Node(plain.OutputNode), sketch.Load).Duties(duties);
        if (phaseNames)
        {
            builder.PhaseNames([.. duties.Select((_, j) => j == 0 ? stem : $"{stem}{j}")]);
        }

        foreach (Capacitor c in plain.Capacitors)
        {
            CapacitorPlates? plates = phaseNames ? new(c.Farads * scale / 30, c.EsrOhms, Node(plain.OutputNode)) : null;
            builder.Capacitor(c.Name + stem, Node(c.PositiveNode), Node(c.BottomNode), c.Farads * scale, c.EsrOhms / scale, plates);
        }

        bool hasModes = modes.Length > 0;
        for (int s = 0; s < plain.Switches.Count; s++)
        {
            Switch @switch = plain.Switches[s];
            builder.Switch(@switch.Name + stem, Node(@switch.FirstNode), Node(@switch.SecondNode), hasModes ? PhaseSet.None : plain.Modes[0].ClosedPhases[s], @switch.Ohms / scale, hasModes ? scale : null);
        }

        for (int m = 0; m < modes.Length; m++)
        {
            builder.Mode($"{modes[m].Name}{m}", [.. modes[m].Phases.Select((bits, s) => ($"s{s}{stem}", Set(bits, duties.Length)))]);
        }

        if (phaseNames)
        {
            builder.Parasitic("wire" + stem, Node(plain.InputNode), Node(Converter.ReferenceNode), scale);
            builder.FurtherOutput("rail" + stem, Node(Converter.ReferenceNode), Node(plain.InputNode));
        }

        return builder.Build();

        string Node(string node) => node == Converter.ReferenceNode ? node : node + stem;

        static PhaseSet Set(int bits, int count) => PhaseSet.Of([.. Enumerable.Range(1, count).Where(p => ((bits >> (p - 1)) & 1) == 1)]);
    }
}
