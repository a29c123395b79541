using Fractions;

namespace ScNet;

/// <summary>Adds the elements of a converter to the description of another one, so that none of their values is lost.</summary>
internal static class ElementCopy
{
    /// <summary>Adds every element, its switches without phases.</summary>
    /// <param name="builder">The description.</param>
    /// <param name="converter">Where the elements are taken from.</param>
    /// <param name="prefix">What every element's name is to begin with.</param>
    /// <param name="node">The new name of each node.</param>
    /// <param name="controlled">What a controller keeps a capacitor at, by its position; null keeps what each has.</param>
    public static void AddElements(
        this ConverterBuilder builder, Converter converter, string prefix, Func<string, string> node, Func<int, Fraction?>? controlled = null)
    {
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            Capacitor c = converter.Capacitors[i];
            CapacitorPlates plates = c.Plates with { BodyNode = node(c.Plates.BodyNode) };
            builder.Capacitor(prefix + c.Name, node(c.PositiveNode), node(c.BottomNode), c.Farads, c.EsrOhms, plates, controlled is null ? c.Controlled : controlled(i));
        }

        foreach (Inductor l in converter.Inductors)
        {
            builder.Inductor(prefix + l.Name, node(l.FirstNode), node(l.SecondNode), l.Henries, l.Ohms);
        }

        foreach (Switch s in converter.Switches)
        {
            builder.Switch(prefix + s.Name, node(s.FirstNode), node(s.SecondNode), PhaseSet.None, s.Ohms, s.DiodeVolts);
        }

        foreach (Parasitic p in converter.Parasitics)
        {
            builder.Parasitic(prefix + p.Name, node(p.FirstNode), node(p.SecondNode), p.Farads);
        }

        foreach (FurtherOutput o in converter.FurtherOutputs)
        {
            builder.FurtherOutput(prefix + o.Name, node(o.Node), node(o.ReturnNode));
        }
    }

    /// <summary>What a mode says of its elements, every phase replaced by others.</summary>
    /// <param name="converter">The converter of the mode.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="prefix">What every element's name begins with.</param>
    /// <param name="phases">The phases, from 1, in the place of one, from 1.</param>
    public static IEnumerable<(string Element, PhaseSet Phases)> Entries(this Converter converter, Mode mode, string prefix, Func<int, IEnumerable<int>> phases) =>
        converter.Switches.Select((s, i) => (prefix + s.Name, Moved(mode.ClosedPhases[i], phases)))
            .Concat(converter.Inductors.Select((l, i) => (prefix + l.Name, Moved(mode.UntilZeroPhases[i], phases))).Where(e => e.Item2.Count > 0));

    private static PhaseSet Moved(PhaseSet phases, Func<int, IEnumerable<int>> places) => PhaseSet.Of([.. phases.SelectMany(places)]);
}
