using Google.OrTools.Sat;
using ScNet.Search;

namespace ScNet.Synthesis.Solving;

/// <summary>A pair of terminals that a switch or a wire may join.</summary>
internal readonly record struct SwitchPlace(int First, int Second)
{
    /// <summary>Whether it lies across part of a node and not within it.</summary>
    public bool Crosses(int block, int part)
    {
        int ends = (1 << First) | (1 << Second);
        return (ends & ~block) == 0 && (ends & part) != 0 && (ends & part) != ends;
    }

    /// <summary>Every pair but those whose joining short-circuits a branch in whatever phase it is closed.</summary>
    public static IReadOnlyList<SwitchPlace> All(int capacitors) => Array.AsReadOnly<SwitchPlace>([.. Pairs(capacitors).Where(p => !p.IsShort)]);

    /// <summary>Every pair of terminals.</summary>
    public static IReadOnlyList<SwitchPlace> Pairs(int capacitors) => Array.AsReadOnly<SwitchPlace>([..
        from second in Enumerable.Range(1, Terminals.Count(capacitors) - 1)
        from first in Enumerable.Range(0, second)
        select new SwitchPlace(first, second)]);

    /// <summary>Where a node is to be joined, every way to split it in two is crossed by a place that is there.</summary>
    public static void JoinWithin(CpModel model, IReadOnlyList<SwitchPlace> places, int block, BoolVar connected, IReadOnlyList<BoolVar> isThere)
    {
        int first = block & -block;
        for (int part = (block - 1) & block; part > 0; part = (part - 1) & block)
        {
            if ((part & first) != 0)
            {
                model.AddBoolOr([connected.Not(), .. Enumerable.Range(0, places.Count).Where(e => places[e].Crosses(block, part)).Select(e => isThere[e])]);
            }
        }
    }

    private bool IsShort => (First == Terminals.Reference && Second <= Terminals.Output) || (First >= 3 && (First & 1) == 1 && Second == First + 1);
}
