namespace ScNet;

/// <summary>
/// The names of the elements of a list, with the position of each: found by walking up to a handful, by a
/// dictionary that is made at first use beyond. Lists over the same elements share one.
/// </summary>
internal sealed class NameIndex
{
    private const int MostWalked = 8;
    private const int MostListed = 20;

    private readonly string _owner;
    private readonly string _kind;
    private readonly string[] _names;
    private Dictionary<string, int>? _positions;

    /// <summary>Creates an index.</summary>
    /// <param name="owner">What has the elements, for messages.</param>
    /// <param name="kind">What an element is, for messages: "capacitor".</param>
    /// <param name="names">The names in order, no two alike.</param>
    public NameIndex(string owner, string kind, string[] names)
    {
        _owner = owner;
        _kind = kind;
        _names = names;
    }

    /// <summary>A list by position and name, with an index of its own.</summary>
    /// <param name="owner">What has the elements, for messages.</param>
    /// <param name="kind">What an element is, for messages.</param>
    /// <param name="items">The elements.</param>
    /// <param name="name">The name of an element.</param>
    public static NamedList<T> ListOf<T>(string owner, string kind, T[] items, Converter<T, string> name) =>
        new(items, new NameIndex(owner, kind, Array.ConvertAll(items, name)));

    /// <summary>The number of names.</summary>
    public int Count => _names.Length;

    /// <summary>What an element is: "capacitor".</summary>
    public string Kind => _kind;

    /// <summary>The name at a position.</summary>
    public string this[int position] => _names[position];

    /// <summary>The position of a name, or -1.</summary>
    public int Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (_names.Length <= MostWalked)
        {
            return Array.IndexOf(_names, name);
        }

        // threads that meet here build the same dictionary
        Dictionary<string, int> positions = _positions ??= Build(_names);
        return positions.TryGetValue(name, out int position) ? position : -1;
    }

    /// <summary>The position of a name.</summary>
    /// <exception cref="ArgumentException">There is no such name; the message says what comes near.</exception>
    public int Require(string name, string parameterName)
    {
        int position = Find(name);
        return position >= 0 ? position : throw new ArgumentException(Unknown(name), parameterName);
    }

    private string Unknown(string name)
    {
        string? nearest = NearestName.Of(name, _names);
        string advice = nearest is not null ? $" Did you mean '{nearest}'?"
            : _names.Length is > 0 and <= MostListed ? $" It has {string.Join(", ", _names)}."
            : string.Empty;
        return $"'{_owner}' has no {_kind} '{name}'.{advice}";
    }

    private static Dictionary<string, int> Build(string[] names)
    {
        Dictionary<string, int> positions = new(names.Length, StringComparer.Ordinal);
        for (int i = 0; i < names.Length; i++)
        {
            positions.Add(names[i], i);
        }

        return positions;
    }
}
