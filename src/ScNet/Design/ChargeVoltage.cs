namespace ScNet.Design;

/// <summary>
/// How much charge times voltage the elements of one kind handle for what reaches the output: Σ charge
/// cycled · voltage over the elements, per unit of output charge and per volt of output. Less is
/// better; the reciprocal is the utilisation of the literature, delivered over handled.
/// </summary>
/// <remarks>
/// A capacitor cycles half of Σ|a| over the phases (it gives back what it takes) at its ideal voltage; a
/// switch conducts Σ|a| and is weighed with its peak blocking voltage. Derivation:
/// docs/theory/utilisation.md. Source: M. D. Seeman and S. R. Sanders, IEEE Trans. Power Electronics
/// 23(2), 2008 (from memory).
/// </remarks>
public sealed class ChargeVoltage
{
    private ChargeVoltage(Quantity value, IReadOnlyList<string> undetermined)
    {
        Value = value;
        Undetermined = undetermined;
    }

    /// <summary>The measure, without a unit; exact where charges and voltages are; undetermined where the product of an element is.</summary>
    public Quantity Value { get; }

    /// <summary>
    /// The names of the elements whose product is undetermined. An element that carries no charge at all
    /// counts with zero, whatever its voltage.
    /// </summary>
    public IReadOnlyList<string> Undetermined { get; }

    /// <summary>The value, and whether it is a lower bound.</summary>
    public override string ToString() => $"{(Undetermined.Count > 0 ? "at least " : string.Empty)}{Value}{UnitText.Names("; ", Undetermined, " undetermined")}";

    /// <summary>The measure over the elements of one kind.</summary>
    /// <param name="names">The elements' names.</param>
    /// <param name="charges">The charge of each in each phase.</param>
    /// <param name="chargeShare">What of Σ|a| counts: 1/2 for capacitors, 1 for switches.</param>
    /// <param name="voltages">The voltage of each per volt of input.</param>
    /// <param name="ratio">Output voltage per volt of input.</param>
    internal static ChargeVoltage Of(
        string[] names, PhaseTable charges, Quantity chargeShare, IReadOnlyList<Quantity> voltages, Quantity ratio)
    {
        Quantity sum = Quantity.Zero;
        List<string> undetermined = [];
        for (int i = 0; i < names.Length; i++)
        {
            Quantity charge = Quantity.Zero;
            foreach (Quantity a in charges[i].AsSpan())
            {
                charge = QuantityArithmetic.Add(charge, QuantityArithmetic.Abs(a));
            }

            Quantity product = QuantityArithmetic.Multiply(charge, QuantityArithmetic.Abs(voltages[i]));
            if (!product.IsDetermined)
            {
                undetermined.Add(names[i]);
            }

            sum = QuantityArithmetic.Add(sum, QuantityArithmetic.Multiply(chargeShare, product));
        }

        return new ChargeVoltage(QuantityArithmetic.Divide(sum, QuantityArithmetic.Abs(ratio)), [.. undetermined]);
    }
}
