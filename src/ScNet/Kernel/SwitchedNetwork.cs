using System.Numerics;
using Fractions;

namespace ScNet.Kernel;

/// <summary>A network with its phases and modes, which never changes.</summary>
internal sealed class SwitchedNetwork : NetworkGraph
{
    private Incidence? _branchIncidence;

    /// <summary>Wires the network.</summary>
    /// <param name="nodeCount">The number of nodes.</param>
    /// <param name="capacitors">The nodes of each capacitor.</param>
    /// <param name="ports">The ports; those whose voltage follows come first.</param>
    /// <param name="switches">The nodes of each switch.</param>
    /// <param name="duties">The share of each phase in the period.</param>
    /// <param name="closed">One array per mode, see <see cref="Closed"/>.</param>
    public SwitchedNetwork(
        int nodeCount,
        ReadOnlySpan<NodePair> capacitors,
        ReadOnlySpan<NetworkPort> ports,
        ReadOnlySpan<NodePair> switches,
        Fraction[] duties,
        bool[][] closed)
    {
        Duties = duties;
        PhaseWeights = InProportion(duties);
        Closed = closed;
        Wire(nodeCount, capacitors, ports, switches);
    }

    private SwitchedNetwork(SwitchedNetwork other, Fraction[] duties, bool[][] closed)
        : base(other)
    {
        Duties = duties;
        PhaseWeights = ReferenceEquals(duties, other.Duties) ? other.PhaseWeights : InProportion(duties);
        Closed = closed;
    }

    /// <summary>The share of each phase in the period.</summary>
    public Fraction[] Duties { get; }

    /// <summary>Whole numbers in the proportion of the duties.</summary>
    public BigInteger[] PhaseWeights { get; }

    /// <summary>Per mode: whether switch s is closed in phase j, at index j · SwitchCount + s.</summary>
    public bool[][] Closed { get; }

    public int PhaseCount => Duties.Length;

    /// <summary>The branches of held voltage at each node, in the order of <see cref="NetworkGraph.HeldVoltages"/>; found when first asked for.</summary>
    public Incidence BranchIncidence => _branchIncidence ??= Incidence.Of(NodeCount, BranchFirst, BranchSecond, HeldVoltages.AsSpan(0, HeldVoltageCount));

    /// <summary>The switches closed in one phase of a mode, one flag per switch.</summary>
    public ReadOnlySpan<bool> ClosedIn(int mode, int phase) => Closed[mode].AsSpan(phase * SwitchCount, SwitchCount);

    /// <summary>The same connections with other modes; one array per mode, as in <see cref="Closed"/>.</summary>
    public SwitchedNetwork WithClosed(bool[][] closed) => new(this, Duties, closed);

    /// <summary>The same connections and modes with phases of other lengths.</summary>
    public SwitchedNetwork WithDuties(Fraction[] duties) => new(this, duties, Closed);

    /// <summary>The same network with more capacitors, which are numbered after its own.</summary>
    public SwitchedNetwork WithCapacitors(ReadOnlySpan<NodePair> more) => With(more, []);

    /// <summary>The same network with more ports that hold their currents and whose average voltage follows, numbered after such of its own.</summary>
    public SwitchedNetwork WithHeldOutputs(ReadOnlySpan<NodePair> more) => With([], more);

    private SwitchedNetwork With(ReadOnlySpan<NodePair> moreCapacitors, ReadOnlySpan<NodePair> moreOutputs)
    {
        var capacitors = new NodePair[CapacitorCount + moreCapacitors.Length];
        for (int c = 0; c < CapacitorCount; c++)
        {
            capacitors[c] = new NodePair(BranchFirst[c], BranchSecond[c]);
        }

        moreCapacitors.CopyTo(capacitors.AsSpan(CapacitorCount));
        List<NetworkPort> ports = new(BranchCount - CapacitorCount + moreOutputs.Length);
        for (int branch = CapacitorCount; branch < BranchCount; branch++)
        {
            if (branch == FirstGivenBranch)
            {
                foreach (NodePair nodes in moreOutputs)
                {
                    ports.Add(new NetworkPort(nodes, IsGiven: false, IsCurrentHeld: true));
                }
            }

            ports.Add(new NetworkPort(new NodePair(BranchFirst[branch], BranchSecond[branch]), branch >= FirstGivenBranch, IsCurrentHeld(branch)));
        }

        var switches = new NodePair[SwitchCount];
        for (int s = 0; s < switches.Length; s++)
        {
            switches[s] = new NodePair(SwitchFirst[s], SwitchSecond[s]);
        }

        return new SwitchedNetwork(NodeCount, capacitors, [.. ports], switches, Duties, Closed);
    }

    private static BigInteger[] InProportion(Fraction[] duties)
    {
        BigInteger common = BigInteger.One;
        foreach (Fraction duty in duties)
        {
            common *= duty.Denominator / BigInteger.GreatestCommonDivisor(common, duty.Denominator);
        }

        return Array.ConvertAll(duties, duty => duty.Numerator * (common / duty.Denominator));
    }
}
