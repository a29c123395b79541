namespace ScNet.Search.Networks;

/// <summary>A switch while a network is made: its terminals, and in which phases it is closed with what charge.</summary>
internal sealed class PlannedSwitch(int first, int second, int phaseCount)
{
    public int First { get; } = first;

    public int Second { get; } = second;

    public bool[] IsClosed { get; } = new bool[phaseCount];

    /// <summary>Per phase the charge from the first terminal to the second.</summary>
    public long[] Charges { get; } = new long[phaseCount];

    public bool Joins(int first, int second) => (First, Second) == (first, second) || (First, Second) == (second, first);

    public void Close(int phase, long charge)
    {
        IsClosed[phase] = true;
        Charges[phase] = charge;
    }
}
