namespace ScNet.Netlists.Toml;

/// <summary>A key whose value is a quantity of an element.</summary>
internal sealed record QuantityKey(string Key, ElementQuantity Quantity)
{
    public static readonly QuantityKey Farads = new("farads", ElementQuantity.Capacitance);

    public static readonly QuantityKey EsrOhms = new("esr_ohms", ElementQuantity.SeriesResistance);

    public static readonly QuantityKey Ohms = new("ohms", ElementQuantity.OnResistance);

    public static readonly QuantityKey BottomFarads = new("bottom_farads", ElementQuantity.BottomCapacitance);

    public static readonly QuantityKey TopFarads = new("top_farads", ElementQuantity.TopCapacitance);

    public static readonly QuantityKey DiodeVolts = new("diode_volts", ElementQuantity.ForwardVoltage);

    public static readonly QuantityKey Henries = new("henries", ElementQuantity.Inductance);

    public static readonly QuantityKey WindingOhms = new("ohms", ElementQuantity.WindingResistance);
}
