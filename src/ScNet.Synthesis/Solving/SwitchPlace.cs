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
    public static IReadOnlyList<SwitchPlace> All(int capacitors)
    {
        List<SwitchPlace> places = [];
        for (int second = 1; second < Terminals.Count(capacitors); second++)
        {
            for (int first = 0; first < second; first++)
            {
                bool isPort = first == Terminals.Reference && second <= Terminals.Output;
                bool isOneCapacitor = first >= 3 && (first & 1) == 1 && second == first + 1;
                if (!isPort && !isOneCapacitor)
                {
                    places.Add(new SwitchPlace(first, second));
                }
            }
        }

        return places.AsReadOnly();
    }
}
