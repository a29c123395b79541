namespace ScNet.Search.Queries;

/// <summary>What the closed switches of a converter join in a phase.</summary>
internal static class ConverterWiring
{
    /// <summary>The wiring, the capacitors in the converter's order.</summary>
    /// <param name="converter">A converter of one mode without inductors.</param>
    /// <param name="phase">The number of a phase, from 1.</param>
    public static Wiring Of(Converter converter, int phase)
    {
        string[] terminals =
        [
            Converter.ReferenceNode, converter.InputNode, converter.OutputNode,
            .. converter.Capacitors.SelectMany(c => (string[])[c.PositiveNode, c.BottomNode]),
        ];
        Dictionary<string, int> pieces = terminals.Concat(converter.Switches.SelectMany(s => (string[])[s.FirstNode, s.SecondNode]))
            .Distinct(StringComparer.Ordinal).Select((node, i) => (node, i)).ToDictionary(n => n.node, n => n.i, StringComparer.Ordinal);
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            if (converter.Modes[0].ClosedPhases[s].Contains(phase))
            {
                int kept = pieces[converter.Switches[s].FirstNode], joined = pieces[converter.Switches[s].SecondNode];
                foreach (string node in pieces.Keys.Where(n => pieces[n] == joined).ToArray())
                {
                    pieces[node] = kept;
                }
            }
        }

        return Wiring.Of([.. terminals.Select(t => pieces[t])]);
    }
}
