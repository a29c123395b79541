namespace ScNet.Design;

/// <summary>
/// One limit of the output impedance at a fixed total of capacitance or conductance, spread over the
/// elements in two ways.
/// </summary>
/// <remarks>
/// With coefficients k the limit is R = Σ k / x for elements x of a fixed sum X. The best spread is
/// x ∝ √k and gives R = (Σ√k)² / X. Derivation: docs/theory/utilisation.md. Source: M. D. Seeman and
/// S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008 (from memory).
/// </remarks>
public sealed class ComparedLimit
{
    private ComparedLimit(double? ownProportionsOhms, double? bestSplitOhms, bool dependsOnComponentValues, IReadOnlyList<string> undetermined)
    {
        OwnProportionsOhms = ownProportionsOhms;
        BestSplitOhms = bestSplitOhms;
        DependsOnComponentValues = dependsOnComponentValues;
        Undetermined = undetermined;
    }

    /// <summary>The limit in ohms (Ω) with the netlist's own values, all scaled by one factor to the total; null where a coefficient is undetermined.</summary>
    public double? OwnProportionsOhms { get; }

    /// <summary>The limit in ohms (Ω) with the spread that makes it smallest; null where a coefficient is undetermined.</summary>
    public double? BestSplitOhms { get; }

    /// <summary>
    /// Whether the coefficients themselves depend on component values. The best split then holds for the
    /// charge flow of the netlist's own values and is an estimate, as another split moves that flow.
    /// </summary>
    public bool DependsOnComponentValues { get; }

    /// <summary>The names of the elements whose coefficient is undetermined.</summary>
    public IReadOnlyList<string> Undetermined { get; }

    /// <summary>The limit in both splits, "?" where it is undetermined.</summary>
    public override string ToString() =>
        $"{UnitText.Of(OwnProportionsOhms, "Ω")} in own proportions, {UnitText.Of(BestSplitOhms, "Ω")} by the best split{(DependsOnComponentValues ? ", as component values decide" : string.Empty)}";

    /// <summary>Spreads a total over elements.</summary>
    /// <param name="names">The elements' names.</param>
    /// <param name="coefficients">The coefficient k of each.</param>
    /// <param name="values">The netlist's own value x of each, capacitance or conductance.</param>
    /// <param name="total">The total X, times frequency for capacitances.</param>
    /// <param name="dependsOnComponentValues">Whether component values decide the flow, where the coefficients do not tell.</param>
    internal static ComparedLimit Of(
        string[] names, IReadOnlyList<Quantity> coefficients, double[] values, double total, bool? dependsOnComponentValues = null)
    {
        IReadOnlyList<string> undetermined = [.. names.Where((_, i) => !coefficients[i].IsDetermined)];
        bool numeric = dependsOnComponentValues ?? coefficients.Any(k => k.Kind == QuantityKind.Numeric);
        if (undetermined.Count > 0)
        {
            return new ComparedLimit(null, null, numeric, undetermined);
        }

        double sum = values.Sum();
        double own = 0;
        double roots = 0;
        for (int i = 0; i < values.Length; i++)
        {
            double k = coefficients[i].ToDouble();
            own += k * (sum / values[i]);
            roots += Math.Sqrt(k);
        }

        return new ComparedLimit(own / total, roots * roots / total, numeric, []);
    }
}
