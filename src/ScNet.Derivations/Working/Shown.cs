namespace ScNet.Derivations.Working;

/// <summary>Numbers as they are shown.</summary>
internal static class Shown
{
    // charges are per unit of charge into the load; what is smaller is rounding
    private const double Smallest = 1e-12;

    /// <summary>The value with rounding residues as zero.</summary>
    public static Quantity Value(Quantity value) =>
        value.Kind == QuantityKind.Numeric && Math.Abs(value.ToDouble()) < Smallest ? Quantity.Zero : value;

    /// <summary>The value with rounding residues as zero.</summary>
    public static Quantity Value(double value) => Value(Quantity.Numeric(value));
}
