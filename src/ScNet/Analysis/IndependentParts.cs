using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The parts of a converter that meet at nodes of given voltage only: the reference, the input, and the output of a
/// stiff load. Of a converter with held currents or parasitic capacitances, which may hold all together, there is one.
/// </summary>
/// <remarks>
/// Every switch of the converter joins its nodes, also one that the mode never closes, so that what it blocks is a
/// matter of one part. Derivation: docs/theory/output-impedance.md, "Independent parts". Cost: the analysis of each part.
/// </remarks>
internal sealed class IndependentParts
{
    // a converter with one way to the load and few elements beside it costs less as a whole
    private const int FewElements = 64;

    private readonly Dictionary<string, int> _partOfNode = new(StringComparer.Ordinal);

    private IndependentParts(Converter converter, Mode mode, TopologySolution topology)
    {
        Parts = Find(converter, mode) is { } parts ? parts : [ConverterPart.Whole(converter, topology)];
        CapacitorPlaces = Places(converter.Capacitors.Count, p => p.Capacitors);
        SwitchPlaces = Places(converter.Switches.Count, p => p.Switches);
    }

    /// <summary>The parts, at least one.</summary>
    public ConverterPart[] Parts { get; }

    /// <summary>Of each capacitor the part, and its position there.</summary>
    public (int Part, int Position)[] CapacitorPlaces { get; }

    /// <summary>Of each switch the part, and its position there.</summary>
    public (int Part, int Position)[] SwitchPlaces { get; }

    /// <summary>Finds the parts.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="topology">The topology of the mode as a whole.</param>
    public static IndependentParts Of(Converter converter, Mode mode, TopologySolution topology) => new(converter, mode, topology);

    /// <summary>The part of a node; any for the reference, the input and the output.</summary>
    public int PartOf(string node) => _partOfNode.GetValueOrDefault(node);

    private ConverterPart[]? Find(Converter converter, Mode mode)
    {
        SwitchedNetwork network = converter.Network;
        if (network.HeldCurrentCount > 0 || converter.ParasiticBranches.Count > 0)
        {
            return null;
        }

        bool IsHeld(int node) => node == NetworkGraph.Reference || node == network.Input || node == network.Output;
        int elements = network.CapacitorCount + network.SwitchCount;
        DisjointSets sets = new(network.NodeCount + elements);
        for (int e = 0; e < elements; e++)
        {
            (int first, int second) = Ends(e);
            Join(first, network.NodeCount + e);
            Join(second, network.NodeCount + e);
        }

        if (Enumerable.Range(network.NodeCount, elements).All(e => sets.Find(e) == sets.Find(network.NodeCount)))
        {
            return null;
        }

        int[][] parts = [.. Enumerable.Range(0, elements).GroupBy(e => sets.Find(network.NodeCount + e), (_, own) => own.ToArray())];
        ConverterPart[] found = [.. parts.Select(own => ConverterPart.Of(
            converter,
            mode,
            [.. own.Where(e => e < network.CapacitorCount)],
            [.. own.Where(e => e >= network.CapacitorCount).Select(e => e - network.CapacitorCount)]))];
        if (elements <= FewElements && found.Count(p => p.Delivers) < 2)
        {
            return null;
        }

        for (int p = 0; p < parts.Length; p++)
        {
            foreach ((int first, int second) in parts[p].Select(Ends))
            {
                _partOfNode[converter.Nodes[first]] = p;
                _partOfNode[converter.Nodes[second]] = p;
            }
        }

        return found;

        (int First, int Second) Ends(int element) => element < network.CapacitorCount
            ? (network.BranchFirst[element], network.BranchSecond[element])
            : (network.SwitchFirst[element - network.CapacitorCount], network.SwitchSecond[element - network.CapacitorCount]);

        void Join(int node, int element)
        {
            if (!IsHeld(node))
            {
                sets.Join(node, element);
            }
        }
    }

    private (int Part, int Position)[] Places(int count, Func<ConverterPart, int[]> members)
    {
        var places = new (int Part, int Position)[count];
        for (int p = 0; p < Parts.Length; p++)
        {
            int[] own = members(Parts[p]);
            for (int i = 0; i < own.Length; i++)
            {
                places[own[i]] = (p, i);
            }
        }

        return places;
    }
}
