namespace ScNet.Tests.Laws;

/// <summary>The nodes of a converter joined into sets.</summary>
internal sealed class NodeSets
{
    private readonly Dictionary<string, int> _setOf;

    private NodeSets(Converter converter) =>
        _setOf = converter.Nodes.Select((node, i) => (node, i)).ToDictionary(n => n.node, n => n.i);

    /// <summary>One set per node.</summary>
    public static NodeSets Single(Converter converter) => new(converter);

    /// <summary>Nodes that a capacitor connects, directly or through others, share a set.</summary>
    public static NodeSets JoinedByCapacitors(Converter converter)
    {
        NodeSets sets = new(converter);
        foreach (Capacitor capacitor in converter.Capacitors)
        {
            sets.Join(capacitor.PositiveNode, capacitor.BottomNode);
        }

        return sets;
    }

    /// <summary>Nodes that closed switches connect in a phase share a set.</summary>
    public static NodeSets JoinedBySwitches(Converter converter, Mode mode, int phase)
    {
        NodeSets sets = new(converter);
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            if (mode.ClosedPhases[s].Contains(phase))
            {
                sets.Join(converter.Switches[s].FirstNode, converter.Switches[s].SecondNode);
            }
        }

        return sets;
    }

    /// <summary>The same with the ends of an element joined too.</summary>
    public NodeSets With(string first, string second)
    {
        Join(first, second);
        return this;
    }

    public int this[string node] => _setOf[node];

    public IEnumerable<int> All => _setOf.Values.Distinct();

    private void Join(string first, string second)
    {
        (int kept, int gone) = (_setOf[first], _setOf[second]);
        foreach (string node in _setOf.Keys.Where(n => _setOf[n] == gone).ToArray())
        {
            _setOf[node] = kept;
        }
    }
}
