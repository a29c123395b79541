namespace ScNet.Tests.Design.Sizing;

/// <summary>The least impedance of one flying capacitor and its four switches in an area.</summary>
/// <remarks>
/// A capacitor C that charges and discharges half a period T each through two switches of r in series has R_out = coth(T/(8 r C))/(4 f C) as a halver: between
/// the ends of the phases its voltage moves by (V_in − 2 V_out) (1 − x)/(1 + x), x = exp(−T/(4 r C)), and twice C times that goes to the output per period. A
/// doubler of the same elements gives half as much charge at twice the voltage: four times the impedance.
/// </remarks>
internal static class LeastImpedance
{
    // golden section over the share of the capacitor; four switches of equal width have the rest: 1 mm is 1 Ω and 10⁻⁹ m²
    public static double OfHalver(double faradsPerSquareMetre, double squareMetres, double hertz)
    {
        double low = 0.01, high = 0.99, golden = (Math.Sqrt(5) - 1) / 2;
        while (high - low > 1e-9)
        {
            double lower = high - (golden * (high - low)), upper = low + (golden * (high - low));
            (low, high) = Ohms(lower) < Ohms(upper) ? (low, upper) : (lower, high);
        }

        return Ohms((low + high) / 2);

        double Ohms(double share)
        {
            double farads = faradsPerSquareMetre * share * squareMetres, ohms = 4e-9 / ((1 - share) * squareMetres);
            return 1 / (4 * hertz * farads * Math.Tanh(1 / (8 * hertz * ohms * farads)));
        }
    }
}
