namespace ScNet.Design.Sizing;

/// <summary>The closed forms of the best frequency, width and share of area at one point whose output may follow its load.</summary>
/// <remarks>
/// All take the loss as I² K_c/(C f) + I² K_g/G + f (β C + γ G): charge sharing and conduction at their limits, what swings with
/// capacitance, and what swings with conductance. K_c and K_g are those of the best split over the elements,
/// (Σ√k)² at equal cost of each: <see cref="ComparedLimit"/>. Where the impedance is the root of the sum of squares, or more points count,
/// <see cref="SizedDesign"/> finds the optimum. Source: M. D. Seeman and S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008;
/// H.-P. Le, S. R. Sanders and E. Alon, IEEE Journal of Solid-State Circuits 46(9), 2011 (both from memory); derived in
/// docs/theory/sizing.md, "Closed forms".
/// </remarks>
public sealed class SinglePointOptimum
{
    private SinglePointOptimum(double frequencyHz, double farads, double siemens, double lossWatts)
    {
        FrequencyHz = frequencyHz;
        Farads = farads;
        Siemens = siemens;
        LossWatts = lossWatts;
    }

    /// <summary>The switching frequency in hertz (Hz).</summary>
    public double FrequencyHz { get; }

    /// <summary>All capacitance in farads (F).</summary>
    public double Farads { get; }

    /// <summary>All conductance in siemens (S).</summary>
    public double Siemens { get; }

    /// <summary>The loss in watts (W).</summary>
    public double LossWatts { get; }

    /// <summary>The best frequency at given sizes: √(I² K_c/C / (β C + γ G)), at which charge sharing loses as much as what swings.</summary>
    /// <param name="law">The law of the losses.</param>
    /// <param name="farads">All capacitance in farads (F).</param>
    /// <param name="siemens">All conductance in siemens (S).</param>
    public static SinglePointOptimum OfFrequency(SinglePointLaw law, double farads, double siemens)
    {
        ArgumentNullException.ThrowIfNull(law);
        double swings = (law.JoulesPerFarad * Positive(farads, nameof(farads))) + (law.JoulesPerSiemens * Positive(siemens, nameof(siemens)));
        return At(law, Math.Sqrt(law.ChargeSharing / farads / swings), farads, siemens);
    }

    /// <summary>
    /// The best frequency and conductance at a given capacitance without plates: all three losses are equal, (I⁴ K_c K_g γ/C)^(1/3) each.
    /// </summary>
    /// <param name="law">The law of the losses; what swings with capacitance is not counted.</param>
    /// <param name="farads">All capacitance in farads (F).</param>
    public static SinglePointOptimum OfFrequencyAndConductance(SinglePointLaw law, double farads)
    {
        ArgumentNullException.ThrowIfNull(law);
        SinglePointLaw plain = law with { JoulesPerFarad = 0 };
        double each = Math.Cbrt(law.ChargeSharing / Positive(farads, nameof(farads)) * law.Conduction * law.JoulesPerSiemens);
        return At(plain, law.ChargeSharing / farads / each, farads, law.Conduction / each);
    }

    /// <summary>
    /// The best frequency and split of a total area without plates: switches over capacitors is
    /// (I K_g' / (A √(K_c' γ')))^(2/3), the primes for per area.
    /// </summary>
    /// <param name="law">The law of the losses; what swings with capacitance is not counted.</param>
    /// <param name="areaSquareMetres">The area of both in square metres (m²).</param>
    /// <param name="faradsPerSquareMetre">Capacitance per area in farads per square metre (F/m²).</param>
    /// <param name="siemensPerSquareMetre">Conductance per area in siemens per square metre (S/m²).</param>
    public static SinglePointOptimum OfArea(SinglePointLaw law, double areaSquareMetres, double faradsPerSquareMetre, double siemensPerSquareMetre)
    {
        ArgumentNullException.ThrowIfNull(law);
        double sharing = law.ChargeSharing / Positive(faradsPerSquareMetre, nameof(faradsPerSquareMetre));
        double conduction = law.Conduction / Positive(siemensPerSquareMetre, nameof(siemensPerSquareMetre));
        double swing = law.JoulesPerSiemens * siemensPerSquareMetre;
        double ratio = Math.Pow(conduction / (Positive(areaSquareMetres, nameof(areaSquareMetres)) * Math.Sqrt(sharing * swing)), 2.0 / 3);
        double switches = areaSquareMetres * ratio / (1 + ratio);
        return OfFrequency(law with { JoulesPerFarad = 0 }, (areaSquareMetres - switches) * faradsPerSquareMetre, switches * siemensPerSquareMetre);
    }

    /// <summary>Frequency, sizes and loss.</summary>
    public override string ToString() =>
        $"{UnitText.Of(FrequencyHz, "Hz")}, {UnitText.Of(Farads, "F")}, {UnitText.Of(Siemens, "S")}: {UnitText.Of(LossWatts, "W")}";

    private static SinglePointOptimum At(SinglePointLaw law, double frequencyHz, double farads, double siemens) =>
        new(frequencyHz, farads, siemens, law.LossWatts(frequencyHz, farads, siemens));

    private static double Positive(double value, string name) => Guard.InRange(value, allowZero: false, name);
}
