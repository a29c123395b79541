using ScNet.Kernel;

namespace ScNet.SteadyState;

/// <summary>The resistors through which a loop of a phase runs: closed switches and series resistances.</summary>
internal sealed class LoopResistors
{
    private readonly SwitchedNetwork _network;
    private readonly PhaseForest _forest;
    private readonly int[] _depth;
    private readonly int[] _arrival;

    public LoopResistors(SwitchedNetwork network, PhaseForest forest)
    {
        _network = network;
        _forest = forest;
        _depth = new int[network.NodeCount];
        foreach (int node in forest.NodeOrder)
        {
            _depth[node] = forest.ParentNode[node] < 0 ? 0 : _depth[forest.ParentNode[node]] + 1;
        }

        _arrival = new int[forest.GroupCount];
    }

    /// <summary>Resistor (a switch by its index, a series resistance by the switch count plus the capacitor's) and sign: 1 from its first terminal to its second.</summary>
    public List<(int Resistor, int Sign)> Of(LoopSet loops, int loop)
    {
        ReadOnlySpan<int> branches = loops.Branches(loop), signs = loops.Signs(loop);
        List<(int Resistor, int Sign)> resistors = [];
        for (int e = 0; e < branches.Length; e++)
        {
            int to = signs[e] == 1 ? _network.BranchSecond[branches[e]] : _network.BranchFirst[branches[e]];
            _arrival[_forest.Group[to]] = to;
            if (branches[e] < _network.CapacitorCount)
            {
                resistors.Add((_network.SwitchCount + branches[e], signs[e]));
            }
        }

        for (int e = 0; e < branches.Length; e++)
        {
            // every contracted node of the loop is where exactly one of its branches starts
            int from = signs[e] == 1 ? _network.BranchFirst[branches[e]] : _network.BranchSecond[branches[e]];
            AddPath(_arrival[_forest.Group[from]], from, resistors);
        }

        return resistors;
    }

    // Up from both ends to where their ways meet.
    private void AddPath(int from, int to, List<(int Resistor, int Sign)> resistors)
    {
        while (from != to)
        {
            bool isAhead = _depth[from] >= _depth[to];
            int node = isAhead ? from : to, via = _forest.ParentSwitch[node];
            int towardsParent = _network.SwitchFirst[via] == node ? 1 : -1;
            resistors.Add((via, isAhead ? towardsParent : -towardsParent));
            if (isAhead)
            {
                from = _forest.ParentNode[from];
            }
            else
            {
                to = _forest.ParentNode[to];
            }
        }
    }
}
