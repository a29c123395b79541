using ScNet.Search;
using ScNet.Search.LoopSpaces;

namespace ScNet.Synthesis.Solving;

/// <summary>
/// What input, output and capacitors hold together whatever the switches do, wires joining some of it: each piece moves
/// as one, and a terminal's potential against its piece is a sum of branch voltages.
/// </summary>
internal sealed class HeldPieces
{
    private readonly int[] _piece;
    private readonly int[][] _offset;

    private HeldPieces(int capacitors)
    {
        int branches = capacitors + LoopSpace.FirstCapacitorColumn;
        _piece = [.. Enumerable.Range(0, Terminals.Count(capacitors)).Select(t => t <= Terminals.Output ? 0 : (t - 1) / 2)];
        _offset = [.. _piece.Select(_ => new int[branches])];
        _offset[Terminals.Input][LoopSpace.InputColumn] = 1;
        _offset[Terminals.Output][LoopSpace.OutputColumn] = 1;
        for (int c = 0; c < capacitors; c++)
        {
            _offset[Terminals.PositivePlate(c)][LoopSpace.FirstCapacitorColumn + c] = 1;
        }
    }

    /// <summary>The piece of a terminal; 0 is that of the reference.</summary>
    public int Piece(int terminal) => _piece[terminal];

    /// <summary>How much of each branch's voltage a terminal lies above the root of its piece.</summary>
    public IReadOnlyList<int> Offset(int terminal) => _offset[terminal];

    /// <summary>The pieces that wires leave.</summary>
    public static HeldPieces Of(int capacitors, IEnumerable<SwitchPlace> wires)
    {
        HeldPieces pieces = new(capacitors);
        foreach (SwitchPlace wire in wires)
        {
            pieces.Join(wire.First, wire.Second);
        }

        return pieces;
    }

    private void Join(int first, int second)
    {
        if (_piece[first] > _piece[second])
        {
            (first, second) = (second, first);
        }

        (int kept, int old) = (_piece[first], _piece[second]);
        int[] step = [.. _offset[first].Zip(_offset[second], (a, b) => a - b)];
        for (int t = 0; t < _piece.Length && kept != old; t++)
        {
            if (_piece[t] == old)
            {
                _piece[t] = kept;
                _offset[t] = [.. _offset[t].Zip(step, (o, s) => o + s)];
            }
        }
    }
}
