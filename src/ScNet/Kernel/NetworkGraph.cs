namespace ScNet.Kernel;

/// <summary>
/// Nodes, switches and branches as plain integers, without names and without component values. Node 0 is
/// the reference.
/// </summary>
/// <remarks>
/// Branches are numbered in the order of the unknowns: the capacitors, whose voltage is held and whose
/// charge balances over the period; the ports whose voltage follows; the ports whose voltage is given.
/// Any port may hold its current in place of its voltage; its number then stands for its average voltage.
/// Arrays are read up to the counts.
/// </remarks>
internal abstract class NetworkGraph
{
    public const int Reference = 0;

    private bool[] _isCurrentHeld = [];

    protected NetworkGraph()
    {
    }

    /// <summary>The same connections, shared.</summary>
    protected NetworkGraph(NetworkGraph other)
    {
        (NodeCount, SwitchCount, BranchCount) = (other.NodeCount, other.SwitchCount, other.BranchCount);
        (CapacitorCount, FirstGivenBranch, HeldCurrentCount) = (other.CapacitorCount, other.FirstGivenBranch, other.HeldCurrentCount);
        (SwitchFirst, SwitchSecond) = (other.SwitchFirst, other.SwitchSecond);
        (BranchFirst, BranchSecond) = (other.BranchFirst, other.BranchSecond);
        (HeldVoltages, HeldCurrents, _isCurrentHeld) = (other.HeldVoltages, other.HeldCurrents, other._isCurrentHeld);
    }

    public int NodeCount { get; private set; }

    public int SwitchCount { get; private set; }

    public int BranchCount { get; private set; }

    public int CapacitorCount { get; private set; }

    /// <summary>The first port whose voltage is given; those from <see cref="CapacitorCount"/> up to it follow.</summary>
    public int FirstGivenBranch { get; private set; }

    /// <summary>First and second node of each switch.</summary>
    public int[] SwitchFirst { get; private set; } = [];

    public int[] SwitchSecond { get; private set; } = [];

    /// <summary>First and second node of each branch.</summary>
    public int[] BranchFirst { get; private set; } = [];

    public int[] BranchSecond { get; private set; } = [];

    /// <summary>
    /// The branches of held voltage in the order in which a search takes them: ports whose voltage is given, other
    /// ports, capacitors. A search that meets ports first puts them into the tree, so that loops name capacitors
    /// where they can.
    /// </summary>
    public int[] HeldVoltages { get; private set; } = [];

    public int HeldVoltageCount => BranchCount - HeldCurrentCount;

    /// <summary>The ports that hold their current, by branch, ascending.</summary>
    public int[] HeldCurrents { get; private set; } = [];

    public int HeldCurrentCount { get; private set; }

    public bool IsCurrentHeld(int branch) => _isCurrentHeld[branch];

    /// <summary>Takes other nodes, branches and switches; new memory is taken only for more of them than before.</summary>
    /// <param name="nodeCount">The number of nodes.</param>
    /// <param name="capacitors">The nodes of each capacitor.</param>
    /// <param name="ports">The ports; those whose voltage follows come first.</param>
    /// <param name="switches">The nodes of each switch.</param>
    /// <exception cref="ArgumentException">A port whose voltage follows comes after one whose voltage is given.</exception>
    protected void Wire(
        int nodeCount, ReadOnlySpan<NodePair> capacitors, ReadOnlySpan<NetworkPort> ports, ReadOnlySpan<NodePair> switches)
    {
        (NodeCount, SwitchCount, CapacitorCount, BranchCount) = (nodeCount, switches.Length, capacitors.Length, capacitors.Length + ports.Length);
        Reserve();
        for (int s = 0; s < switches.Length; s++)
        {
            (SwitchFirst[s], SwitchSecond[s]) = (switches[s].First, switches[s].Second);
        }

        for (int c = 0; c < capacitors.Length; c++)
        {
            (BranchFirst[c], BranchSecond[c], _isCurrentHeld[c]) = (capacitors[c].First, capacitors[c].Second, false);
        }

        FirstGivenBranch = CapacitorCount;
        for (int branch = CapacitorCount; branch < BranchCount; branch++)
        {
            NetworkPort port = ports[branch - CapacitorCount];
            (BranchFirst[branch], BranchSecond[branch], _isCurrentHeld[branch]) = (port.Nodes.First, port.Nodes.Second, port.IsCurrentHeld);
            FirstGivenBranch += !port.IsGiven && FirstGivenBranch == branch ? 1 : 0;
            if (port.IsGiven != branch >= FirstGivenBranch)
            {
                throw new ArgumentException("Expected the ports whose voltage follows before those whose voltage is given.", nameof(ports));
            }
        }

        Order();
    }

    private void Order()
    {
        int voltages = 0, currents = 0;
        for (int k = 0; k < BranchCount; k++)
        {
            // given ports, then the others, then capacitors
            int branch = k + FirstGivenBranch < BranchCount ? k + FirstGivenBranch
                : k + CapacitorCount < BranchCount ? k + CapacitorCount - (BranchCount - FirstGivenBranch)
                : k + CapacitorCount - BranchCount;
            if (!IsCurrentHeld(branch))
            {
                HeldVoltages[voltages++] = branch;
            }
        }

        for (int branch = CapacitorCount; branch < BranchCount; branch++)
        {
            if (IsCurrentHeld(branch))
            {
                HeldCurrents[currents++] = branch;
            }
        }

        HeldCurrentCount = currents;
    }

    private void Reserve()
    {
        if (SwitchFirst.Length < SwitchCount)
        {
            SwitchFirst = new int[SwitchCount];
            SwitchSecond = new int[SwitchCount];
        }

        if (BranchFirst.Length < BranchCount)
        {
            BranchFirst = new int[BranchCount];
            BranchSecond = new int[BranchCount];
            _isCurrentHeld = new bool[BranchCount];
            HeldVoltages = new int[BranchCount];
        }

        if (HeldCurrents.Length < BranchCount - CapacitorCount)
        {
            HeldCurrents = new int[BranchCount - CapacitorCount];
        }
    }
}
