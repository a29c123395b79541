using ScNet.Kernel;

namespace ScNet.Design;

/// <summary>
/// The capacitors with both plates on the nodes that the sources hold: across the input, across a stiff
/// output, or between both.
/// </summary>
/// <remarks>
/// No phase moves charge through them, and an ideal source needs none of them: they belong to the source or
/// to the reservoir, not to the converter's own silicon, and take no share of a total.
/// </remarks>
internal static class DecouplingCapacitors
{
    /// <summary>Finds them; the cost is one pass over the capacitors.</summary>
    public static IReadOnlySet<Capacitor> Of(Converter converter)
    {
        SwitchedNetwork network = converter.Network;
        return converter.Capacitors
            .Where((_, c) => IsHeld(network.BranchFirst[c]) && IsHeld(network.BranchSecond[c]))
            .ToHashSet();

        bool IsHeld(int node) =>
            node == SwitchedNetwork.Reference || node == network.Input || (converter.Load == LoadKind.Stiff && node == network.Output);
    }
}
