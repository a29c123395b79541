namespace ScNet.Netlists.Toml;

/// <summary>How the elements of a kind are written: the table they stand in, and the keys of each.</summary>
internal sealed class ElementShape
{
    public static readonly ElementShape Capacitor = new("capacitors", "capacitor", QuantityKey.Farads.Key, QuantityKey.EsrOhms.Key, QuantityKey.BottomFarads.Key, QuantityKey.TopFarads.Key, NetlistKeys.Body, NetlistKeys.Controlled);

    public static readonly ElementShape Switch = new("switches", "switch", QuantityKey.Ohms.Key, NetlistKeys.On, QuantityKey.DiodeVolts.Key);

    public static readonly ElementShape Inductor = new("inductors", "inductor", QuantityKey.Henries.Key, QuantityKey.WindingOhms.Key, NetlistKeys.UntilZero);

    public static readonly ElementShape Parasitic = new("parasitics", "parasitic capacitance", QuantityKey.Farads.Key);

    public static readonly ElementShape FurtherOutput = new("outputs", "further output");

    /// <summary>Every kind, in the order in which a document is written.</summary>
    public static readonly ElementShape[] All = [Capacitor, Inductor, Switch, Parasitic, FurtherOutput];

    private ElementShape(string table, string kind, params ReadOnlySpan<string> keys)
    {
        Table = table;
        Kind = kind;
        Keys = [NetlistKeys.Between, .. keys];
    }

    public string Table { get; }

    /// <summary>What one of them is called.</summary>
    public string Kind { get; }

    /// <summary>The keys of an element, the two nodes first.</summary>
    public string[] Keys { get; }
}
