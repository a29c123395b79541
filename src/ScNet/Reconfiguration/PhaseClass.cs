namespace ScNet.Reconfiguration;

/// <summary>
/// All sets of closed switches that say the same about voltages in one phase: their loops span the same
/// space. Ratio, capacitor charges and slow limit of a pattern depend on the classes of its phases only.
/// </summary>
internal sealed class PhaseClass(int[] equations)
{
    /// <summary>The reduced loop equations by rows; columns as branches.</summary>
    public int[] Equations { get; } = equations;

    /// <summary>How many sets belong to the class.</summary>
    public long Count { get; set; }

    /// <summary>The sets to which no switch can be added without leaving the class: the best by fast limit and stress are among them.</summary>
    public List<int> Largest { get; } = [];
}
