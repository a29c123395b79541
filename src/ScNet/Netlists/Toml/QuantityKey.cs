namespace ScNet.Netlists.Toml;

/// <summary>A key whose value is a quantity of an element.</summary>
internal sealed record QuantityKey(string Key, ElementQuantity Quantity)
{
    public static readonly QuantityKey Farads = new("farads", ElementQuantity.Capacitance);

    public static readonly QuantityKey EsrOhms = new("esr_ohms", ElementQuantity.SeriesResistance);

    public static readonly QuantityKey Ohms = new("ohms", ElementQuantity.OnResistance);
}
