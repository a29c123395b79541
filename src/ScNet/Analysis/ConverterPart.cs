namespace ScNet.Analysis;

/// <summary>
/// A part of a converter that meets the others at the reference, the input and a stiff output only, whose voltages
/// nothing inside can move: a converter of its own, with one mode. See docs/theory/output-impedance.md,
/// "Independent parts".
/// </summary>
internal sealed class ConverterPart
{
    private readonly Converter? _pattern;

    private ConverterPart(Converter? pattern, TopologySolution topology, int[] capacitors, int[] switches)
    {
        _pattern = pattern;
        Topology = topology;
        Capacitors = capacitors;
        Switches = switches;
    }

    /// <summary>The topology of the part. It has no result where the part delivers nothing to the load.</summary>
    public TopologySolution Topology { get; }

    /// <summary>The position in the whole of each capacitor of the part, ascending.</summary>
    public int[] Capacitors { get; }

    /// <summary>The position in the whole of each switch of the part, ascending.</summary>
    public int[] Switches { get; }

    /// <summary>Whether charge flows through the part to the load. Else its capacitors hold what voltage they have.</summary>
    public bool Delivers => Topology.HasResult;

    /// <summary>A converter that falls into no parts.</summary>
    public static ConverterPart Whole(Converter converter, TopologySolution topology) => new(
        null, topology, [.. Enumerable.Range(0, converter.Capacitors.Count)], [.. Enumerable.Range(0, converter.Switches.Count)]);

    /// <summary>Makes a converter of some elements.</summary>
    /// <param name="converter">The whole.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="capacitors">The positions of the part's capacitors, ascending.</param>
    /// <param name="switches">The positions of the part's switches, ascending.</param>
    public static ConverterPart Of(Converter converter, Mode mode, int[] capacitors, int[] switches)
    {
        Converter pattern = converter.Part(mode, capacitors, switches);
        return new ConverterPart(pattern, TopologySolver.Solve(pattern, pattern.Modes[0]), capacitors, switches);
    }

    /// <summary>The part with the component values of the whole.</summary>
    /// <param name="converter">The whole, or one of the same topology.</param>
    public Converter With(Converter converter) => _pattern?.WithValues(
        Array.ConvertAll(Capacitors, i => converter.Capacitors[i].Farads),
        Array.ConvertAll(Switches, s => converter.Switches[s].Ohms),
        Array.ConvertAll(Capacitors, i => converter.Capacitors[i].EsrOhms)) ?? converter;
}
