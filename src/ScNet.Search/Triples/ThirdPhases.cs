namespace ScNet.Search.Triples;

/// <summary>The spaces that the last phase of a triple goes through, their loops by number: few loops occur in many spaces.</summary>
internal sealed class ThirdPhases
{
    private readonly int[] _loopsOfSpaces;

    private ThirdPhases(int[] spaces, int dimension, sbyte[][] loops, int[] loopsOfSpaces)
    {
        Spaces = spaces;
        Dimension = dimension;
        Loops = loops;
        _loopsOfSpaces = loopsOfSpaces;
    }

    /// <summary>The numbers of the spaces among all.</summary>
    public int[] Spaces { get; }

    /// <summary>The number of loops of each.</summary>
    public int Dimension { get; }

    /// <summary>Every loop that occurs, an entry per branch.</summary>
    public sbyte[][] Loops { get; }

    /// <summary>The numbers of the loops of each space, one space after the other.</summary>
    public ReadOnlySpan<int> LoopsOfSpaces => _loopsOfSpaces;

    /// <summary>The spaces of so many loops.</summary>
    public static ThirdPhases Of(PlacedSpaces spaces, int dimension)
    {
        int[] ofDimension = spaces.OfDimension(dimension);
        int[] loopsOfSpaces = new int[ofDimension.Length * dimension];
        List<sbyte[]> loops = [];
        Dictionary<string, int> numbers = [];
        for (int place = 0; place < loopsOfSpaces.Length; place++)
        {
            sbyte[] loop = spaces[ofDimension[place / dimension]].Row(place % dimension).ToArray();
            string signs = string.Join(' ', loop);
            if (!numbers.TryGetValue(signs, out loopsOfSpaces[place]))
            {
                numbers.Add(signs, loopsOfSpaces[place] = loops.Count);
                loops.Add(loop);
            }
        }

        return new ThirdPhases(ofDimension, dimension, [.. loops], loopsOfSpaces);
    }
}
