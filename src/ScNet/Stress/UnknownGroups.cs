using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>
/// The components of a phase that capacitors of unknown voltage join, in groups. The component of the reference belongs to none: a
/// group that meets it at one rigid piece alone drives no current through it.
/// </summary>
/// <remarks>docs/theory/stress.md, "The instant of a change".</remarks>
internal sealed class UnknownGroups
{
    private readonly int[] _group;
    private readonly Dictionary<int, List<int>> _capacitors = [];

    private UnknownGroups(int components)
    {
        _group = [.. Enumerable.Range(0, components)];
        IsUnknown = new bool[components];
        IsAdrift = new bool[components];
    }

    /// <summary>Per component: a capacitor of unknown voltage closes a loop through it, so that its differences are unknown.</summary>
    public bool[] IsUnknown { get; }

    /// <summary>Per component: it floats on a capacitor of unknown voltage.</summary>
    public bool[] IsAdrift { get; }

    /// <summary>Finds the groups.</summary>
    /// <param name="network">The network.</param>
    /// <param name="pieces">Its rigid pieces.</param>
    /// <param name="held">The voltages of its capacitors.</param>
    /// <param name="component">The component of each piece; 0 is that of the reference.</param>
    /// <param name="components">The number of components.</param>
    public static UnknownGroups Of(SwitchedNetwork network, RigidPieces pieces, HeldVoltages held, int[] component, int components)
    {
        UnknownGroups groups = new(components);
        (int Capacitor, int First, int Second)[] unknown = [.. Enumerable.Range(0, network.CapacitorCount).Where(c => held[c] is null)
            .Select(c => (c, pieces.Piece[network.BranchFirst[c]], pieces.Piece[network.BranchSecond[c]]))];
        foreach ((_, int first, int second) in unknown)
        {
            groups.Join(component[first], component[second]);
        }

        for (int k = 0; k < components; k++)
        {
            groups._group[k] = groups.Find(k);
        }

        ILookup<int, int> members = Enumerable.Range(1, components - 1).ToLookup(k => groups._group[k]);
        foreach (var own in unknown.GroupBy(c => GroupOf(c.Capacitor, c.First, c.Second)))
        {
            int places = own.SelectMany(c => new[] { c.First, c.Second }).Where(piece => component[piece] == 0).Distinct().Count();
            groups.Mark([.. own.Select(c => c.Capacitor)], own.Key, members[own.Key], places);
        }

        return groups;

        // a capacitor both of whose ends lie in the reference's component is a group of its own
        int GroupOf(int capacitor, int first, int second) =>
            Math.Max(groups._group[component[first]], groups._group[component[second]]) is var group and > 0 ? group : -1 - capacitor;
    }

    /// <summary>The capacitors of unknown voltage that a component is joined to, directly or over others; in the converter's order.</summary>
    public IReadOnlyList<int> CapacitorsOf(int component) => _capacitors.GetValueOrDefault(_group[component]) ?? [];

    private void Join(int first, int second)
    {
        IsAdrift[first] |= first > 0;
        IsAdrift[second] |= second > 0;
        if (first > 0 && second > 0)
        {
            _group[Find(second)] = Find(first);
        }
    }

    // Without a loop the capacitors are one fewer than what they join: the components, and the reference's where they reach it.
    private void Mark(List<int> capacitors, int group, IEnumerable<int> components, int places)
    {
        int joined = components.Count() + Math.Min(places, 1);
        foreach (int k in components)
        {
            IsUnknown[k] = capacitors.Count >= joined;
        }

        if (group > 0)
        {
            _capacitors[group] = capacitors;
        }

        if (places > 1)
        {
            IsUnknown[0] = true;
            _capacitors[0] = [.. _capacitors.GetValueOrDefault(0, []).Concat(capacitors).Order()];
        }
    }

    private int Find(int component)
    {
        while (_group[component] != component)
        {
            component = _group[component] = _group[_group[component]];
        }

        return component;
    }
}
