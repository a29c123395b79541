namespace ScNet.Topologies;

/// <summary>
/// The flying-capacitor divider of a general fraction: for every ratio p/q with p and q from 1 to 5 the
/// two-phase network of the fewest flying capacitors, at most three, and then of the fewest switches.
/// </summary>
/// <remarks>
/// Three flying capacitors give just these positive ratios in two phases: 1/5, 1/4, 1/3, 2/5, 1/2, 3/5,
/// 2/3, 3/4, 4/5, 1 and their reciprocals. The networks are a table found by searching all two-phase
/// networks of up to three flying capacitors (docs/theory/families.md): the fewest capacitors,
/// then the fewest switches, then the lowest sum of charge · blocked voltage over the switches, then of
/// charge · voltage over the capacitors. A ratio above 1 is the network of its reciprocal run backwards.
/// The drawing is 2/3:
/// <code>
///  phase 1   vout +═fly1═– gnd,   vin +═fly2═– vout      holding 2/3 and 1/3 of the input
///  phase 2   vin +═fly1═–═fly2═+ vout                    in series, fly2 turned: 1 - 2/3 + 1/3
/// </code>
/// Capacitors "fly1" to at most "fly3", switches "s1", "s2", …, those of phase 1 first:
/// <code>
///  ratio            1    1/2   1/3, 2/3   1/4, 3/4   1/5, 2/5, 3/5, 4/5    and the reciprocals
///  capacitors       1    1     2          3          3
///  switches         2    4     7          8          10
/// </code>
/// Every switch has its first terminal where the potential is higher while it is open. With a current
/// load the capacitor "out" is on the output. Source of the bound |p|, |q| ≤ 5: M. S. Makowski and
/// D. Maksimovic, PESC 1995 (from memory); that each fraction within it is reached: the search.
/// </remarks>
public static class FractionalDivider
{
    /// <summary>The largest numerator and denominator of a ratio in lowest terms.</summary>
    public const int MaximumTerm = 5;

    /// <summary>A converter of the ratio p/q; both are divided by their common factors first.</summary>
    /// <param name="numerator">The number p, at least 1; in lowest terms at most <see cref="MaximumTerm"/>.</param>
    /// <param name="denominator">The number q, at least 1; in lowest terms at most <see cref="MaximumTerm"/>.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter Of(int numerator, int denominator, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff)
    {
        (int p, int q) = FamilyFrame.LowestTerms(numerator, denominator);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(p, MaximumTerm, nameof(numerator));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(q, MaximumTerm, nameof(denominator));
        bool stepUp = p > q;
        FamilyFrame frame = new($"Fractional {FamilyFrame.Ratio(p, q)}", stepUp, farads, ohms, load);
        FractionalNetworks.AddTo(frame, Math.Min(p, q), Math.Max(p, q), stepUp);
        return frame.Build();
    }
}
