namespace ScNet;

/// <summary>A quantity that elements of a kind have: the words of messages, and the value it has unless given.</summary>
/// <param name="What">What it is.</param>
/// <param name="Unit">The unit in the plural.</param>
/// <param name="Default">Its value where nothing is said; one whose default is zero may be zero.</param>
internal sealed record ElementQuantity(string What, string Unit, double Default)
{
    public static readonly ElementQuantity Capacitance = new("capacitance", "farads", 1);

    public static readonly ElementQuantity SeriesResistance = new("series resistance", "ohms", 0);

    public static readonly ElementQuantity OnResistance = new("on-resistance", "ohms", 1);

    public static readonly ElementQuantity BottomCapacitance = new("capacitance of the bottom plate", "farads", 0);

    public static readonly ElementQuantity TopCapacitance = new("capacitance of the positive plate", "farads", 0);

    public static readonly ElementQuantity ForwardVoltage = new("forward voltage of the diode", "volts", 0);

    public static readonly ElementQuantity Inductance = new("inductance", "henries", 1);

    public static readonly ElementQuantity WindingResistance = new("winding resistance", "ohms", 0);
}
