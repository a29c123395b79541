using System.Globalization;

namespace ScNet.Search;

/// <summary>
/// What the closed switches of one phase join: the terminals fall into nodes. Two wirings are equal when they join the
/// same terminals.
/// </summary>
[ShownAsText("The nodes fit in a line.")]
public sealed class Wiring : IEquatable<Wiring>
{
    private readonly byte[] _nodes;

    private Wiring(byte[] nodes, int nodeCount)
    {
        _nodes = nodes;
        NodeCount = nodeCount;
    }

    /// <summary>The number of nodes, a terminal that nothing is joined to being a node of its own.</summary>
    public int NodeCount { get; }

    /// <summary>The number of terminals, see <see cref="Terminals"/>.</summary>
    public int TerminalCount => _nodes.Length;

    /// <summary>The number of flying capacitors.</summary>
    public int CapacitorCount => (_nodes.Length - 3) / 2;

    /// <summary>The node of each terminal, numbered from 0 in the order in which terminals come to them; the reference is node 0.</summary>
    public ReadOnlySpan<byte> Nodes => _nodes;

    /// <summary>No branch lies on one node: neither the source, nor the output, nor a capacitor is short-circuited.</summary>
    public bool IsAdmissible
    {
        get
        {
            bool isAdmissible = _nodes[Terminals.Input] != 0 && _nodes[Terminals.Output] != 0;
            for (int c = 0; c < CapacitorCount; c++)
            {
                isAdmissible &= _nodes[Terminals.PositivePlate(c)] != _nodes[Terminals.BottomPlate(c)];
            }

            return isAdmissible;
        }
    }

    /// <summary>The wiring in which terminals with the same number share a node.</summary>
    /// <param name="nodes">A number per terminal, see <see cref="Terminals"/>; which numbers are used does not matter.</param>
    /// <exception cref="ArgumentException">There are fewer than three terminals, or a capacitor's second plate is missing.</exception>
    public static Wiring Of(ReadOnlySpan<int> nodes)
    {
        if (nodes.Length < 3 || (nodes.Length & 1) == 0)
        {
            throw new ArgumentException($"Expected reference, input, output and two plates per capacitor, but there are {nodes.Length} terminals.", nameof(nodes));
        }

        byte[] renumbered = new byte[nodes.Length];
        int count = 0;
        for (int t = 0; t < nodes.Length; t++)
        {
            int earlier = nodes[..t].IndexOf(nodes[t]);
            renumbered[t] = earlier >= 0 ? renumbered[earlier] : (byte)count++;
        }

        return new Wiring(renumbered, count);
    }

    /// <summary>Whether two terminals are joined.</summary>
    /// <param name="first">A terminal.</param>
    /// <param name="second">A terminal.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such terminal.</exception>
    public bool Joins(int first, int second)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)first, (uint)_nodes.Length, nameof(first));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)second, (uint)_nodes.Length, nameof(second));
        return _nodes[first] == _nodes[second];
    }

    /// <summary>The same wiring with its capacitors renamed and turned.</summary>
    /// <param name="map">Where each capacitor goes.</param>
    /// <exception cref="ArgumentException">The map is of another number of capacitors.</exception>
    public Wiring Moved(CapacitorMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        if (map.Count != CapacitorCount)
        {
            throw new ArgumentException($"Expected a map of {CapacitorCount} capacitors, but it has {map.Count}.", nameof(map));
        }

        Span<int> positions = stackalloc int[map.Count];
        int turns = 0;
        for (int c = 0; c < map.Count; c++)
        {
            positions[c] = map.Position(c);
            turns |= (map.IsTurned(c) ? 1 : 0) << c;
        }

        return Moved(positions, turns);
    }

    /// <summary>The same wiring with its capacitors renamed and turned.</summary>
    /// <param name="positions">The position that each capacitor takes.</param>
    /// <param name="turns">A bit per capacitor that is turned.</param>
    internal Wiring Moved(ReadOnlySpan<int> positions, int turns)
    {
        Span<int> moved = stackalloc int[_nodes.Length];
        moved[Terminals.Input] = _nodes[Terminals.Input];
        moved[Terminals.Output] = _nodes[Terminals.Output];
        for (int c = 0; c < positions.Length; c++)
        {
            int turn = turns >> c & 1;
            moved[Terminals.PositivePlate(positions[c]) + turn] = _nodes[Terminals.PositivePlate(c)];
            moved[Terminals.BottomPlate(positions[c]) - turn] = _nodes[Terminals.BottomPlate(c)];
        }

        return Of(moved);
    }

    /// <inheritdoc/>
    public bool Equals(Wiring? other) => other is not null && _nodes.AsSpan().SequenceEqual(other._nodes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Wiring);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        hash.AddBytes(_nodes);
        return hash.ToHashCode();
    }

    /// <summary>The nodes with more than one terminal, as <c>vin-p1 n1-p2 n2-vout</c>.</summary>
    public override string ToString() => string.Join(' ', Enumerable.Range(0, NodeCount)
        .Select(node => Enumerable.Range(0, TerminalCount).Where(t => _nodes[t] == node).Select(Terminals.NameOf).ToArray())
        .Where(names => names.Length > 1)
        .Select(names => string.Join('-', names)));

    /// <summary>A sign per terminal, from which <see cref="Parse"/> makes the wiring again: <c>0, 1, … 9, a, b, …</c> for the nodes.</summary>
    public string ToCode() => string.Create(_nodes.Length, _nodes, static (text, nodes) =>
    {
        for (int t = 0; t < nodes.Length; t++)
        {
            text[t] = "0123456789abcdefghijklmnopqrstuvwxyz"[nodes[t]];
        }
    });

    /// <summary>Reads what <see cref="ToCode"/> wrote.</summary>
    /// <param name="code">A sign per terminal.</param>
    /// <exception cref="FormatException">It is not such a code.</exception>
    public static Wiring Parse(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        int[] nodes = [.. code.Select(sign => sign is >= '0' and <= '9' ? sign - '0' : sign is >= 'a' and <= 'z' ? sign - 'a' + 10 : -1)];
        Wiring? wiring = code.Length >= 3 && (code.Length & 1) == 1 && !nodes.Contains(-1) ? Of(nodes) : null;
        return wiring?.ToCode() == code
            ? wiring
            : throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"Expected the nodes of an odd number of terminals, numbered as they come, but the code is '{code}'."));
    }
}
