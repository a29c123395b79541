using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>The wirings of one phase of the pair at hand, in the numbering of the fixed space: node and potential of every terminal.</summary>
internal sealed class PlacedWirings
{
    private readonly int[] _nodePotentials;
    private readonly int[] _ownVoltages;
    private readonly int[] _ownPotentials;
    private readonly int[] _terminals;
    private byte[] _nodes = [];
    private int[] _potentials = [];
    private byte[] _rows = [];

    public PlacedWirings(int capacitors)
    {
        TerminalCount = Terminals.Count(capacitors);
        _nodePotentials = new int[TerminalCount];
        _ownVoltages = new int[capacitors + LoopSpace.FirstCapacitorColumn];
        _ownPotentials = new int[TerminalCount];
        _terminals = new int[TerminalCount];
    }

    /// <summary>The number of terminals.</summary>
    public int TerminalCount { get; }

    /// <summary>The number of wirings.</summary>
    public int Count { get; private set; }

    /// <summary>The node of each terminal in a wiring, numbered in the order of terminals.</summary>
    public ReadOnlySpan<byte> Nodes(int wiring) => _nodes.AsSpan(wiring * TerminalCount, TerminalCount);

    /// <summary>The potential of each terminal in a wiring.</summary>
    public ReadOnlySpan<int> Potentials(int wiring) => _potentials.AsSpan(wiring * TerminalCount, TerminalCount);

    /// <summary>The terminals of a wiring by potential, then by node.</summary>
    public ReadOnlySpan<byte> Row(int wiring) => _rows.AsSpan(wiring * TerminalCount, TerminalCount);

    /// <summary>Places the wirings of a moved space.</summary>
    /// <param name="frames">The wirings of its orbit.</param>
    /// <param name="voltages">The branches' voltages, in the fixed numbering.</param>
    /// <param name="positions">The position that each capacitor takes in the fixed numbering.</param>
    /// <param name="turns">A bit per capacitor that is turned.</param>
    public void Place(WiringFrame[] frames, ReadOnlySpan<int> voltages, ReadOnlySpan<int> positions, int turns)
    {
        Count = frames.Length;
        if (_nodes.Length < Count * TerminalCount)
        {
            _nodes = new byte[2 * Count * TerminalCount];
            _rows = new byte[2 * Count * TerminalCount];
            _potentials = new int[2 * Count * TerminalCount];
        }

        Number(voltages, positions, turns);
        for (int w = 0; w < Count; w++)
        {
            frames[w].WritePotentials(_ownVoltages, _ownPotentials, _nodePotentials);
            ReadOnlySpan<byte> nodes = frames[w].Wiring.Nodes;
            Span<byte> placed = _nodes.AsSpan(w * TerminalCount, TerminalCount);
            for (int t = 0; t < TerminalCount; t++)
            {
                placed[_terminals[t]] = nodes[t];
                _potentials[(w * TerminalCount) + _terminals[t]] = _ownPotentials[t];
            }

            Renumber(placed, frames[w].Wiring.NodeCount);
            Sort(placed, Potentials(w), _rows.AsSpan(w * TerminalCount, TerminalCount));
        }
    }

    // nodes in the order in which terminals come to them, as in a wiring
    private static void Renumber(Span<byte> nodes, int count)
    {
        Span<sbyte> numbers = stackalloc sbyte[count];
        numbers.Fill(-1);
        sbyte next = 0;
        for (int t = 0; t < nodes.Length; t++)
        {
            if (numbers[nodes[t]] < 0)
            {
                numbers[nodes[t]] = next++;
            }

            nodes[t] = (byte)numbers[nodes[t]];
        }
    }

    private static void Sort(ReadOnlySpan<byte> nodes, ReadOnlySpan<int> potentials, Span<byte> row)
    {
        Span<int> order = stackalloc int[nodes.Length];
        for (int t = 0; t < nodes.Length; t++)
        {
            // potentials are far below 2^15
            int key = ((potentials[t] + (1 << 14)) << 16) | (nodes[t] << 8) | t, place = t;
            for (; place > 0 && order[place - 1] > key; place--)
            {
                order[place] = order[place - 1];
            }

            order[place] = key;
        }

        for (int t = 0; t < row.Length; t++)
        {
            row[t] = (byte)order[t];
        }
    }

    private void Number(ReadOnlySpan<int> voltages, ReadOnlySpan<int> positions, int turns)
    {
        (_terminals[0], _terminals[1], _terminals[2]) = (0, 1, 2);
        (_ownVoltages[0], _ownVoltages[1]) = (voltages[0], voltages[1]);
        for (int c = 0; c < positions.Length; c++)
        {
            int turn = turns >> c & 1, voltage = voltages[LoopSpace.FirstCapacitorColumn + positions[c]];
            _ownVoltages[LoopSpace.FirstCapacitorColumn + c] = turn == 0 ? voltage : -voltage;
            _terminals[Terminals.PositivePlate(c)] = Terminals.PositivePlate(positions[c]) + turn;
            _terminals[Terminals.BottomPlate(c)] = Terminals.BottomPlate(positions[c]) - turn;
        }
    }
}
