using System.Numerics;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Networks;

/// <summary>The charge that each terminal's branch takes from its node in a phase.</summary>
internal static class TerminalCharges
{
    /// <summary>Writes it.</summary>
    /// <param name="branches">The charge of each branch from its positive to its negative end.</param>
    /// <param name="terminals">Receives the charge of each terminal; the reference takes what input and output leave.</param>
    public static void Write<T>(ReadOnlySpan<T> branches, Span<T> terminals)
        where T : INumber<T>
    {
        terminals[Terminals.Input] = branches[LoopSpace.InputColumn];
        terminals[Terminals.Output] = branches[LoopSpace.OutputColumn];
        terminals[Terminals.Reference] = -branches[LoopSpace.InputColumn] - branches[LoopSpace.OutputColumn];
        for (int c = 0; c < branches.Length - LoopSpace.FirstCapacitorColumn; c++)
        {
            terminals[Terminals.PositivePlate(c)] = branches[LoopSpace.FirstCapacitorColumn + c];
            terminals[Terminals.BottomPlate(c)] = -branches[LoopSpace.FirstCapacitorColumn + c];
        }
    }
}
