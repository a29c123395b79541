namespace ScNet;

/// <summary>
/// An output beside the main one: a constant current that a load draws from one node and gives back at another. The
/// capacitors that carry it on while the network does not are elements of the converter like any other.
/// </summary>
/// <remarks>
/// It carries nothing unless a result says so: ideal point, charge flow, limits and two-port of the converter are those with
/// every further output at rest. What the outputs see of one another: <see cref="Analysis.OutputMatrices"/>.
/// </remarks>
public sealed class FurtherOutput
{
    internal FurtherOutput(string name, string node, string returnNode)
    {
        Name = name;
        Node = node;
        ReturnNode = returnNode;
    }

    /// <summary>The name, unique among all elements of the converter and no name of the main output's node.</summary>
    public string Name { get; }

    /// <summary>The node that the load's current leaves. The output's voltage is this node's minus that of <see cref="ReturnNode"/>.</summary>
    public string Node { get; }

    /// <summary>The node at which the current comes back.</summary>
    public string ReturnNode { get; }

    /// <summary>The name and the two nodes.</summary>
    public override string ToString() => $"{Name} ({Node} – {ReturnNode})";
}
