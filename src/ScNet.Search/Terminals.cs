namespace ScNet.Search;

/// <summary>
/// How the terminals of a searched network are numbered: the reference, the input, the output, then the positive and
/// the bottom plate of each flying capacitor in turn.
/// </summary>
public static class Terminals
{
    /// <summary>The reference node.</summary>
    public const int Reference = 0;

    /// <summary>The node that the input source holds.</summary>
    public const int Input = 1;

    /// <summary>The node that the stiff output holds.</summary>
    public const int Output = 2;

    /// <summary>The terminals of a network of so many flying capacitors.</summary>
    /// <param name="capacitorCount">The number of flying capacitors.</param>
    public static int Count(int capacitorCount) => 3 + (2 * capacitorCount);

    /// <summary>The positive plate of a capacitor.</summary>
    /// <param name="capacitor">The capacitor's position, from 0.</param>
    public static int PositivePlate(int capacitor) => 3 + (2 * capacitor);

    /// <summary>The bottom plate of a capacitor.</summary>
    /// <param name="capacitor">The capacitor's position, from 0.</param>
    public static int BottomPlate(int capacitor) => 4 + (2 * capacitor);

    /// <summary>The node's name in a netlist: <c>gnd</c>, <c>vin</c>, <c>vout</c>, <c>p1</c>, <c>n1</c>, <c>p2</c> …</summary>
    /// <param name="terminal">A terminal, from 0.</param>
    public static string NameOf(int terminal) => terminal switch
    {
        Reference => "gnd",
        Input => "vin",
        Output => "vout",
        _ => ((terminal & 1) == 1 ? "p" : "n") + ((terminal - 1) / 2).ToString(System.Globalization.CultureInfo.InvariantCulture),
    };
}
