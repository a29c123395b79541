using Fractions;
using ScNet.Kernel;
using ScNet.Stress;

namespace ScNet.Devices;

/// <summary>
/// The nodes of a converter in one phase of a mode in the order of their potentials, those apart that float
/// together: a search finds the ones within a window above or below a source.
/// </summary>
internal sealed class GateNodes
{
    private readonly Converter _converter;
    private readonly ModeStress _mode;
    private readonly int _phase;
    private readonly int[] _group;
    private readonly Dictionary<int, (Fraction[] Potentials, int[] Nodes)> _frames;

    /// <summary>Sorts the nodes, in a time of n log n.</summary>
    public GateNodes(ModeStress mode, int phase)
    {
        _converter = mode.Analysis.Converter;
        _mode = mode;
        _phase = phase;
        _group = mode.Analysis.Topology.Forests[phase].Group;
        _frames = Enumerable.Range(0, _converter.Nodes.Count)
            .GroupBy(node => mode.Fixed.Frame(node, phase))
            .ToDictionary(frame => frame.Key, frame =>
            {
                int[] nodes = [.. frame];
                Fraction[] potentials = [.. nodes.Select(node => mode.Fixed.Offset(node, phase))];
                Array.Sort(potentials, nodes);
                return (potentials, nodes);
            });
    }

    /// <summary>Whether some node can supply the gate over the whole input range. Time is log n.</summary>
    public bool HasSupply(SwitchDevice device, int source)
    {
        Interval<Fraction> input = _mode.ExactInput;
        (Fraction[] potentials, _, int from, Fraction high) = Window(device, source, device.ExactDrive / input.Minimum!.Value, device.ExactGateRating / input.Maximum!.Value);
        return from < potentials.Length && potentials[from] <= high;
    }

    /// <summary>The nodes that can supply the gate of a device with the given source, in the converter's order. Time is log n and those found.</summary>
    public IReadOnlyList<GateSupply> SuppliesOf(SwitchDevice device, int source)
    {
        Interval<Fraction> input = _mode.ExactInput;

        // shares of the input that drive the gate somewhere in the range and do not break it there
        (Fraction[] potentials, int[] nodes, int from, Fraction high) =
            Window(device, source, device.ExactDrive / input.Maximum!.Value, device.ExactGateRating / input.Minimum!.Value);
        Fraction own = _mode.Fixed.Offset(source, _phase);
        List<(int Node, Fraction Share)> found = [];
        for (int k = from; k < potentials.Length && potentials[k] <= high; k++)
        {
            found.Add((nodes[k], (potentials[k] - own).Abs()));
        }

        return [.. found.OrderBy(f => f.Node).Select(f => SupplyOf(device, source, f.Node, f.Share)).OfType<GateSupply>()];
    }

    // the nodes that move as one with the source, from the first one that lies at least so far above it (p-type: below), and the end
    private (Fraction[] Potentials, int[] Nodes, int From, Fraction High) Window(SwitchDevice device, int source, Fraction smallest, Fraction largest)
    {
        Fraction own = _mode.Fixed.Offset(source, _phase);
        (Fraction[] potentials, int[] nodes) = _frames[_mode.Fixed.Frame(source, _phase)];
        (Fraction low, Fraction high) = device.Polarity == DevicePolarity.NType ? (own + smallest, own + largest) : (own - largest, own - smallest);
        return (potentials, nodes, FirstFrom(potentials, low), high);
    }

    private static int FirstFrom(Fraction[] potentials, Fraction low)
    {
        int from = 0, to = potentials.Length;
        while (from < to)
        {
            int middle = (from + to) / 2;
            (from, to) = potentials[middle] < low ? (middle + 1, to) : (from, middle);
        }

        return from;
    }

    private GateSupply? SupplyOf(SwitchDevice device, int source, int node, Fraction share)
    {
        Interval<Fraction> input = _mode.ExactInput;
        Fraction from = device.ExactDrive / share, to = device.ExactGateRating / share;
        Fraction low = from > input.Minimum!.Value ? from : input.Minimum!.Value, high = to < input.Maximum!.Value ? to : input.Maximum!.Value;
        return low > high ? null : new GateSupply(
            _converter.Nodes[node],
            CapacitorBetween(node, source),
            Quantity.Exact(share),
            new Interval<double>(low.ToDouble(), high.ToDouble()),
            low == input.Minimum!.Value && high == input.Maximum!.Value);
    }

    // a capacitor with one plate on the node and the other one on the source by closed switches
    private Capacitor? CapacitorBetween(int node, int source)
    {
        SwitchedNetwork network = _converter.Network;
        int found = int.MaxValue;
        foreach (int branch in network.BranchIncidence[node])
        {
            int other = network.BranchFirst[branch] == node ? network.BranchSecond[branch] : network.BranchFirst[branch];
            if (branch < network.CapacitorCount && _group[other] == _group[source])
            {
                found = Math.Min(found, branch);
            }
        }

        return found < int.MaxValue ? _converter.Capacitors[found] : null;
    }
}
