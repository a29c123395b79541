namespace ScNet.Analysis;

/// <summary>What a <see cref="ModeAnalysis"/> says of one node. A view: it copies nothing.</summary>
public sealed class NodeAnalysis
{
    internal NodeAnalysis(string name, PhaseValues potential)
    {
        Name = name;
        Potential = potential;
    }

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The potential against the reference in each phase without load, per volt of input; undetermined where the node floats.</summary>
    public PhaseValues Potential { get; }

    /// <summary>The name and the potentials.</summary>
    public override string ToString() => $"{Name}: potential {Potential}";
}
