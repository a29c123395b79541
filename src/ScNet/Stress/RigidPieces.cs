using Fractions;
using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>
/// The nodes that sources and capacitors of known voltage and without series resistance tie to each
/// other, whatever the switches do: each piece moves as one.
/// </summary>
internal sealed class RigidPieces
{
    private readonly int[] _parentNode;
    private readonly int[] _parentBranch;

    private RigidPieces(int nodeCount)
    {
        Piece = new int[nodeCount];
        Piece.AsSpan().Fill(-1);
        Offset = new Fraction[nodeCount];
        _parentNode = new int[nodeCount];
        _parentBranch = new int[nodeCount];
    }

    /// <summary>The piece of each node; piece 0 holds the reference.</summary>
    public int[] Piece { get; }

    /// <summary>The potential of each node minus that of the first node of its piece; the reference is the first of piece 0.</summary>
    public Fraction[] Offset { get; }

    public int PieceCount { get; private set; }

    /// <summary>Searches the branches. Time is linear in nodes and branches.</summary>
    public static RigidPieces Of(Converter converter, HeldVoltages held)
    {
        SwitchedNetwork network = converter.Network;
        RigidPieces pieces = new(network.NodeCount);
        Queue<int> queue = new();
        for (int start = 0; start < network.NodeCount; start++)
        {
            if (pieces.Piece[start] < 0)
            {
                pieces.Reach(start, -1, -1, Fraction.Zero);
                queue.Enqueue(start);
                while (queue.TryDequeue(out int node))
                {
                    pieces.Visit(converter, held, node, queue);
                }

                pieces.PieceCount++;
            }
        }

        return pieces;
    }

    /// <summary>Whether a branch ties its ends rigidly.</summary>
    public static bool IsRigid(Converter converter, HeldVoltages held, int branch) =>
        held[branch] is not null && (branch >= converter.Network.CapacitorCount || converter.Capacitors[branch].EsrOhms == 0);

    /// <summary>Adds to a set the branches between a node and the first of its piece; those met twice leave it.</summary>
    public void Toggle(HashSet<int> branches, int node)
    {
        for (int at = node; _parentBranch[at] >= 0; at = _parentNode[at])
        {
            if (!branches.Remove(_parentBranch[at]))
            {
                branches.Add(_parentBranch[at]);
            }
        }
    }

    private void Visit(Converter converter, HeldVoltages held, int node, Queue<int> queue)
    {
        SwitchedNetwork network = converter.Network;
        foreach (int branch in network.BranchIncidence[node])
        {
            bool isFirst = network.BranchFirst[branch] == node;
            int other = isFirst ? network.BranchSecond[branch] : network.BranchFirst[branch];
            if (Piece[other] < 0 && IsRigid(converter, held, branch))
            {
                Fraction voltage = held[branch]!.Value;
                Reach(other, node, branch, isFirst ? Offset[node] - voltage : Offset[node] + voltage);
                queue.Enqueue(other);
            }
        }
    }

    private void Reach(int node, int parent, int branch, Fraction offset)
    {
        Piece[node] = PieceCount;
        Offset[node] = offset;
        _parentNode[node] = parent;
        _parentBranch[node] = branch;
    }
}
