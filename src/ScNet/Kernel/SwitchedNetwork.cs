using Fractions;

namespace ScNet.Kernel;

/// <summary>
/// A converter as plain integers: what every mode and phase of it shares, without names and without
/// component values. Node 0 is the reference.
/// </summary>
/// <remarks>
/// Branches whose voltage is held are numbered capacitors first, then the output, then the input. A
/// stiff output is such a branch; with a current load the output's number stands for its average voltage.
/// </remarks>
internal sealed class SwitchedNetwork
{
    public const int Reference = 0;

    public SwitchedNetwork(
        int nodeCount,
        int input,
        int output,
        LoadKind load,
        (int[] First, int[] Second) capacitors,
        (int[] First, int[] Second) switches,
        Fraction[] duties,
        bool[][] closed)
    {
        NodeCount = nodeCount;
        Input = input;
        Output = output;
        Load = load;
        Duties = duties;
        Closed = closed;
        SwitchFirst = switches.First;
        SwitchSecond = switches.Second;
        CapacitorCount = capacitors.First.Length;
        BranchFirst = [.. capacitors.First, output, input];
        BranchSecond = [.. capacitors.Second, Reference, Reference];
        SwitchIncidence = Incidence.Of(nodeCount, SwitchFirst, SwitchSecond, Sequence(SwitchCount));
        BranchIncidence = Incidence.Of(nodeCount, BranchFirst, BranchSecond, SourcesFirst());
    }

    private SwitchedNetwork(SwitchedNetwork other, bool[][] closed)
    {
        NodeCount = other.NodeCount;
        Input = other.Input;
        Output = other.Output;
        Load = other.Load;
        Duties = other.Duties;
        Closed = closed;
        SwitchFirst = other.SwitchFirst;
        SwitchSecond = other.SwitchSecond;
        CapacitorCount = other.CapacitorCount;
        BranchFirst = other.BranchFirst;
        BranchSecond = other.BranchSecond;
        SwitchIncidence = other.SwitchIncidence;
        BranchIncidence = other.BranchIncidence;
    }

    public int NodeCount { get; }

    public int Input { get; }

    public int Output { get; }

    public LoadKind Load { get; }

    public Fraction[] Duties { get; }

    /// <summary>Per mode: whether switch s is closed in phase j, at index j · SwitchCount + s.</summary>
    public bool[][] Closed { get; }

    /// <summary>First and second node of each switch.</summary>
    public int[] SwitchFirst { get; }

    public int[] SwitchSecond { get; }

    /// <summary>First and second node of each branch whose voltage is held.</summary>
    public int[] BranchFirst { get; }

    public int[] BranchSecond { get; }

    /// <summary>The switches at each node, open or closed.</summary>
    public Incidence SwitchIncidence { get; }

    /// <summary>The branches of held voltage at each node, sources before capacitors.</summary>
    public Incidence BranchIncidence { get; }

    public int CapacitorCount { get; }

    public int SwitchCount => SwitchFirst.Length;

    public int PhaseCount => Duties.Length;

    public int OutputBranch => CapacitorCount;

    public int InputBranch => CapacitorCount + 1;

    public int BranchCount => CapacitorCount + 2;

    /// <summary>The switches closed in one phase of a mode, one flag per switch.</summary>
    public ReadOnlySpan<bool> ClosedIn(int mode, int phase) => Closed[mode].AsSpan(phase * SwitchCount, SwitchCount);

    private static int[] Sequence(int count)
    {
        var sequence = new int[count];
        for (int i = 0; i < count; i++)
        {
            sequence[i] = i;
        }

        return sequence;
    }

    /// <summary>The same connections with other modes; one array per mode, as in <see cref="Closed"/>.</summary>
    public SwitchedNetwork WithClosed(bool[][] closed) => new(this, closed);

    // A search that meets sources first puts them into the tree, so that loops name capacitors where they can.
    private int[] SourcesFirst() => Load == LoadKind.Stiff
        ? [InputBranch, OutputBranch, .. Sequence(CapacitorCount)]
        : [InputBranch, .. Sequence(CapacitorCount)];
}
