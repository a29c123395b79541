namespace ScNet;

/// <summary>What decided the value of a <see cref="Quantity"/>.</summary>
internal enum QuantityKind
{
    /// <summary>Nothing in the circuit determines the value (a floating node, say). It is not zero.</summary>
    Undetermined,

    /// <summary>The topology alone fixes the value: an exact reduced fraction.</summary>
    Exact,

    /// <summary>Component values decide: a double, accurate to rounding.</summary>
    Numeric,
}
