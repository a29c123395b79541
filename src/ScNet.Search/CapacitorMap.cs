namespace ScNet.Search;

/// <summary>A renaming of flying capacitors that may also turn them round, which exchanges their plates.</summary>
public sealed class CapacitorMap
{
    private readonly int[] _positions;
    private readonly bool[] _turned;

    private CapacitorMap(int[] positions, bool[] turned)
    {
        _positions = positions;
        _turned = turned;
    }

    /// <summary>The number of capacitors.</summary>
    public int Count => _positions.Length;

    /// <summary>A map.</summary>
    /// <param name="positions">For each capacitor the position that it takes, each once.</param>
    /// <param name="turned">For each capacitor whether it is turned round.</param>
    /// <exception cref="ArgumentException">The positions are not a permutation, or the lengths differ.</exception>
    public static CapacitorMap Of(ReadOnlySpan<int> positions, ReadOnlySpan<bool> turned)
    {
        int[] sorted = positions.ToArray();
        Array.Sort(sorted);
        return positions.Length == turned.Length && sorted.AsSpan().SequenceEqual(Enumerable.Range(0, positions.Length).ToArray())
            ? new CapacitorMap(positions.ToArray(), turned.ToArray())
            : throw new ArgumentException("Expected a permutation of the capacitors and a turn for each.", nameof(positions));
    }

    /// <summary>Every map of so many capacitors, 2^n n! of them.</summary>
    /// <param name="count">The number of capacitors, up to <see cref="Atlas.MaximumCapacitorCount"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are none, or more.</exception>
    public static IEnumerable<CapacitorMap> All(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, Atlas.MaximumCapacitorCount);
        return Maps(count);
    }

    private static IEnumerable<CapacitorMap> Maps(int count)
    {
        foreach (int[] positions in Permutations(count))
        {
            for (int turns = 0; turns < 1 << count; turns++)
            {
                yield return new CapacitorMap(positions, [.. Enumerable.Range(0, count).Select(c => (turns >> c & 1) == 1)]);
            }
        }
    }

    /// <summary>The position that a capacitor takes.</summary>
    /// <param name="capacitor">A capacitor, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such capacitor.</exception>
    public int Position(int capacitor) => _positions[Among(capacitor)];

    /// <summary>Whether a capacitor is turned round.</summary>
    /// <param name="capacitor">A capacitor, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such capacitor.</exception>
    public bool IsTurned(int capacitor) => _turned[Among(capacitor)];

    private int Among(int capacitor) => (uint)capacitor < (uint)_positions.Length
        ? capacitor : throw new ArgumentOutOfRangeException(nameof(capacitor), capacitor, $"Expected a capacitor below {_positions.Length}.");

    /// <summary>The terminal that a terminal becomes.</summary>
    /// <param name="terminal">A terminal, see <see cref="Terminals"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such terminal.</exception>
    public int Terminal(int terminal)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(terminal);
        if (terminal < 3)
        {
            return terminal;
        }

        int capacitor = Among((terminal - 3) / 2);
        bool isBottom = ((terminal - 3) & 1) == 1;
        return isBottom != _turned[capacitor] ? Terminals.BottomPlate(_positions[capacitor]) : Terminals.PositivePlate(_positions[capacitor]);
    }

    /// <summary>Every order of so many things.</summary>
    internal static IEnumerable<int[]> Permutations(int count)
    {
        if (count == 0)
        {
            yield return [];
            yield break;
        }

        foreach (int[] shorter in Permutations(count - 1))
        {
            for (int place = count - 1; place >= 0; place--)
            {
                yield return [.. shorter[..place], count - 1, .. shorter[place..]];
            }
        }
    }
}
