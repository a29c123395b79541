namespace ScNet.Search.LoopSpaces;

/// <summary>
/// The 2^k k! ways to rename and turn k capacitors, numbered: an element's number is the rank of its permutation in
/// lexicographic order times 2^k, plus a bit per capacitor, as it was before, that is turned.
/// </summary>
internal sealed class SignedPermutations
{
    private readonly int[] _factorials;

    public SignedPermutations(int capacitors)
    {
        Capacitors = capacitors;
        _factorials = new int[capacitors + 1];
        _factorials[0] = 1;
        for (int n = 1; n <= capacitors; n++)
        {
            _factorials[n] = n * _factorials[n - 1];
        }
    }

    public int Capacitors { get; }

    /// <summary>The number of elements.</summary>
    public int Count => _factorials[Capacitors] << Capacitors;

    /// <summary>The number of an element.</summary>
    public int NumberOf(ReadOnlySpan<int> positions, int turns)
    {
        int rank = 0;
        uint taken = 0;
        for (int c = 0; c < Capacitors; c++)
        {
            // the smaller positions that are still free
            int smaller = positions[c] - System.Numerics.BitOperations.PopCount(taken & ((1u << positions[c]) - 1));
            rank += smaller * _factorials[Capacitors - 1 - c];
            taken |= 1u << positions[c];
        }

        return (rank << Capacitors) | turns;
    }

    /// <summary>The element of a number.</summary>
    /// <returns>A bit per capacitor that is turned.</returns>
    public int Read(int number, Span<int> positions)
    {
        int rank = number >> Capacitors;
        uint taken = 0;
        for (int c = 0; c < Capacitors; c++)
        {
            int smaller = rank / _factorials[Capacitors - 1 - c], position = 0;
            rank %= _factorials[Capacitors - 1 - c];
            while (smaller > 0 || (taken >> position & 1) != 0)
            {
                smaller -= (taken >> position & 1) == 0 ? 1 : 0;
                position++;
            }

            positions[c] = position;
            taken |= 1u << position;
        }

        return number & ((1 << Capacitors) - 1);
    }

    /// <summary>The element that first does one, then the other.</summary>
    /// <returns>A bit per capacitor that is turned.</returns>
    public static int Compose(ReadOnlySpan<int> first, int firstTurns, ReadOnlySpan<int> then, int thenTurns, Span<int> positions)
    {
        int turns = 0;
        for (int c = 0; c < first.Length; c++)
        {
            positions[c] = then[first[c]];
            turns |= ((firstTurns >> c & 1) ^ (thenTurns >> first[c] & 1)) << c;
        }

        return turns;
    }

    /// <summary>The element that undoes one.</summary>
    /// <returns>A bit per capacitor that is turned.</returns>
    public static int Invert(ReadOnlySpan<int> positions, int turns, Span<int> inverse)
    {
        int inverted = 0;
        for (int c = 0; c < positions.Length; c++)
        {
            inverse[positions[c]] = c;
            inverted |= (turns >> c & 1) << positions[c];
        }

        return inverted;
    }

    /// <summary>A few elements of a subgroup from which all its others can be composed.</summary>
    /// <param name="subgroup">The numbers of all elements of a subgroup.</param>
    public int[] Generators(ReadOnlySpan<int> subgroup)
    {
        HashSet<int> made = [0];
        List<int> generators = [];
        foreach (int element in subgroup)
        {
            if (made.Add(element))
            {
                generators.Add(element);
                Complete(made, generators);
            }
        }

        return [.. generators];
    }

    // number 0 is the identity
    private void Complete(HashSet<int> made, List<int> generators)
    {
        Span<int> positions = stackalloc int[Capacitors], then = stackalloc int[Capacitors], composed = stackalloc int[Capacitors];
        Queue<int> waiting = new(made);
        while (waiting.TryDequeue(out int element))
        {
            int turns = Read(element, positions);
            foreach (int generator in generators)
            {
                int thenTurns = Read(generator, then);
                int composedTurns = Compose(positions, turns, then, thenTurns, composed);
                int number = NumberOf(composed, composedTurns);
                if (made.Add(number))
                {
                    waiting.Enqueue(number);
                }
            }
        }
    }
}
