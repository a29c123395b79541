namespace ScNet.Analysis;

/// <summary>What a <see cref="ModeAnalysis"/> says of the input or the output. A view: it copies nothing.</summary>
public sealed class PortAnalysis
{
    internal PortAnalysis(string node, PhaseValues charge)
    {
        Node = node;
        Charge = charge;
    }

    /// <summary>The name of the node that the source or the load is connected to.</summary>
    public string Node { get; }

    /// <summary>Charge per unit of output charge in each phase: what leaves the input source, or what enters the load.</summary>
    public PhaseValues Charge { get; }

    /// <summary>The node and the charges.</summary>
    public override string ToString() => $"{Node}: charge {Charge}";
}
