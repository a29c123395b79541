using ScNet.Netlists;
using ScNet.Search.Queries;

namespace ScNet.Search;

/// <summary>A network that answers a query, with a name of its own and the families that it belongs to.</summary>
public sealed class FoundNetwork
{
    // a form takes milliseconds where there are many capacitors, and of a long list few are looked at
    private readonly Lazy<NetworkIdentity> _identity;

    internal FoundNetwork(SearchedNetwork network)
    {
        Network = network;
        _identity = new Lazy<NetworkIdentity>(() => NetworkIdentity.Of(network));
    }

    /// <summary>The network.</summary>
    public SearchedNetwork Network { get; }

    /// <summary>
    /// Its name: ratio, capacitors, switches and a word made of its structure, as <c>2-5-c3-s9-lumako</c>. The same network has the
    /// same name in every search, however its capacitors are numbered and turned and in whatever order its phases stand.
    /// </summary>
    public string Name => _identity.Value.Name;

    /// <summary>
    /// The standard families whose loops are the same in every phase, with their numbers as <c>scnet family</c> takes them;
    /// none where no family has them. Equal loops make equal voltages and charges, but may be wired in other ways.
    /// </summary>
    public IReadOnlyList<string> Families => _identity.Value.Families;

    /// <summary>The network as a converter under its name, with capacitors of 1 F and switches of 1 Ω.</summary>
    public Converter ToConverter() => Network.ToConverter(Name);

    /// <summary>The netlist document.</summary>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public string ToToml(double farads = 1, double ohms = 1)
    {
        Converter converter = ToConverter();
        return NetlistWriter.ToToml(converter.WithValues([.. converter.Capacitors.Select(_ => farads)], [.. converter.Switches.Select(_ => ohms)]));
    }

    /// <summary>Its name and the families.</summary>
    public override string ToString() => UnitText.Names($"{Name} (", Families, ")") is { Length: > 0 } text ? text : Name;
}
