using System.Numerics;
using Fractions;

namespace ScNet.Kernel;

/// <summary>
/// A converter as plain integers: what every mode and phase of it shares, without names and without
/// component values. Node 0 is the reference.
/// </summary>
/// <remarks>
/// Branches are numbered in the order of the unknowns: the capacitors, whose voltage is held and whose
/// charge balances over the period; the ports whose voltage follows; the ports whose voltage is given.
/// Any port may hold its current in place of its voltage; its number then stands for its average voltage.
/// </remarks>
internal sealed class SwitchedNetwork
{
    public const int Reference = 0;

    private readonly bool[] _isCurrentHeld;

    /// <summary>Numbers the branches and finds which of them touch each node.</summary>
    /// <param name="nodeCount">The number of nodes.</param>
    /// <param name="capacitors">The nodes of each capacitor.</param>
    /// <param name="ports">The ports; those whose voltage follows come first.</param>
    /// <param name="switches">The nodes of each switch.</param>
    /// <param name="duties">The share of each phase in the period.</param>
    /// <param name="closed">One array per mode, see <see cref="Closed"/>.</param>
    public SwitchedNetwork(
        int nodeCount,
        (int[] First, int[] Second) capacitors,
        ReadOnlySpan<NetworkPort> ports,
        (int[] First, int[] Second) switches,
        Fraction[] duties,
        bool[][] closed)
    {
        NodeCount = nodeCount;
        Duties = duties;
        PhaseWeights = InProportion(duties);
        Closed = closed;
        SwitchFirst = switches.First;
        SwitchSecond = switches.Second;
        CapacitorCount = capacitors.First.Length;
        FirstGivenBranch = CapacitorCount;
        BranchFirst = new int[CapacitorCount + ports.Length];
        BranchSecond = new int[BranchCount];
        _isCurrentHeld = new bool[BranchCount];
        capacitors.First.CopyTo(BranchFirst, 0);
        capacitors.Second.CopyTo(BranchSecond, 0);
        for (int branch = CapacitorCount; branch < BranchCount; branch++)
        {
            NetworkPort port = ports[branch - CapacitorCount];
            (BranchFirst[branch], BranchSecond[branch], _isCurrentHeld[branch]) = (port.First, port.Second, port.IsCurrentHeld);
            FirstGivenBranch += !port.IsGiven && FirstGivenBranch == branch ? 1 : 0;
            if (port.IsGiven != branch >= FirstGivenBranch)
            {
                throw new ArgumentException("Expected the ports whose voltage follows before those whose voltage is given.", nameof(ports));
            }
        }

        HeldCurrents = [.. Sequence(0, BranchCount).Where(IsCurrentHeld)];
        SwitchIncidence = Incidence.Of(nodeCount, SwitchFirst, SwitchSecond, Sequence(0, SwitchCount));
        BranchIncidence = Incidence.Of(nodeCount, BranchFirst, BranchSecond, GivenPortsFirst());
    }

    private SwitchedNetwork(SwitchedNetwork other, bool[][] closed)
    {
        NodeCount = other.NodeCount;
        Duties = other.Duties;
        PhaseWeights = other.PhaseWeights;
        Closed = closed;
        SwitchFirst = other.SwitchFirst;
        SwitchSecond = other.SwitchSecond;
        CapacitorCount = other.CapacitorCount;
        FirstGivenBranch = other.FirstGivenBranch;
        BranchFirst = other.BranchFirst;
        BranchSecond = other.BranchSecond;
        _isCurrentHeld = other._isCurrentHeld;
        HeldCurrents = other.HeldCurrents;
        SwitchIncidence = other.SwitchIncidence;
        BranchIncidence = other.BranchIncidence;
    }

    public int NodeCount { get; }

    /// <summary>The share of each phase in the period.</summary>
    public Fraction[] Duties { get; }

    /// <summary>Whole numbers in the proportion of the duties.</summary>
    public BigInteger[] PhaseWeights { get; }

    /// <summary>Per mode: whether switch s is closed in phase j, at index j · SwitchCount + s.</summary>
    public bool[][] Closed { get; }

    /// <summary>First and second node of each switch.</summary>
    public int[] SwitchFirst { get; }

    public int[] SwitchSecond { get; }

    /// <summary>First and second node of each branch.</summary>
    public int[] BranchFirst { get; }

    public int[] BranchSecond { get; }

    /// <summary>The switches at each node, open or closed.</summary>
    public Incidence SwitchIncidence { get; }

    /// <summary>The branches of held voltage at each node: ports whose voltage is given, other ports, capacitors.</summary>
    public Incidence BranchIncidence { get; }

    /// <summary>The ports that hold their current, by branch, ascending.</summary>
    public int[] HeldCurrents { get; }

    public int CapacitorCount { get; }

    /// <summary>The first port whose voltage is given; those from <see cref="CapacitorCount"/> up to it follow.</summary>
    public int FirstGivenBranch { get; }

    public int SwitchCount => SwitchFirst.Length;

    public int PhaseCount => Duties.Length;

    public int BranchCount => BranchFirst.Length;

    public bool IsCurrentHeld(int branch) => _isCurrentHeld[branch];

    /// <summary>The switches closed in one phase of a mode, one flag per switch.</summary>
    public ReadOnlySpan<bool> ClosedIn(int mode, int phase) => Closed[mode].AsSpan(phase * SwitchCount, SwitchCount);

    /// <summary>The same connections with other modes; one array per mode, as in <see cref="Closed"/>.</summary>
    public SwitchedNetwork WithClosed(bool[][] closed) => new(this, closed);

    private static int[] Sequence(int from, int to)
    {
        var sequence = new int[to - from];
        for (int i = 0; i < sequence.Length; i++)
        {
            sequence[i] = from + i;
        }

        return sequence;
    }

    // A search that meets ports first puts them into the tree, so that loops name capacitors where they can.
    private int[] GivenPortsFirst() =>
    [
        .. Sequence(FirstGivenBranch, BranchCount).Where(b => !IsCurrentHeld(b)),
        .. Sequence(CapacitorCount, FirstGivenBranch).Where(b => !IsCurrentHeld(b)),
        .. Sequence(0, CapacitorCount),
    ];

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
