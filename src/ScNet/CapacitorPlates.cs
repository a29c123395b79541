namespace ScNet;

/// <summary>The parasitic capacitances from the plates of a capacitor to the body it lies in.</summary>
/// <param name="BottomFarads">From the bottom plate to the body, in farads (F); 0 for none.</param>
/// <param name="TopFarads">From the positive plate to the body, in farads (F); 0 for none.</param>
/// <param name="BodyNode">The node of the body.</param>
public sealed record CapacitorPlates(double BottomFarads = 0, double TopFarads = 0, string BodyNode = Converter.ReferenceNode)
{
    /// <summary>No parasitic capacitances.</summary>
    public static CapacitorPlates None { get; } = new();

    /// <summary>The plates of a capacitor that have a parasitic capacitance, bottom first, each with its node and its farads.</summary>
    internal IEnumerable<(string Plate, string Body, double Farads)> From(Capacitor capacitor)
    {
        if (BottomFarads > 0)
        {
            yield return (capacitor.BottomNode, BodyNode, BottomFarads);
        }

        if (TopFarads > 0)
        {
            yield return (capacitor.PositiveNode, BodyNode, TopFarads);
        }
    }
}
