namespace ScNet.Topologies;

/// <summary>
/// The ladder family: a string of switches between the high node and the reference, with flying
/// capacitors that shuttle between neighbouring rungs and dc capacitors that hold the rungs.
/// </summary>
/// <remarks>
/// For n levels the rungs are r0 = gnd, r1 = low, r2, …, rn = high, at k/n of the high voltage; between
/// rungs k - 1 and k lies the middle node mk. The drawing is for n = 3:
/// <code>
///  high –s6– m3 –s5– r2 –s4– m2 –s3– low –s2– m1 –s1– gnd      even switches closed in phase 1,
///            ╚═══fly2══════╝ ╚════fly1════════╝                odd switches closed in phase 2
///                     ╚═══════dc1════╝
/// </code>
/// n - 1 capacitors "fly1" to "fly(n-1)", fly k between m(k+1) and mk; n - 2 capacitors "dc1" to
/// "dc(n-2)", dc k between r(k+1) and rk; 2n switches "s1" to "s(2n)" counted from the reference, the
/// first terminal of each on the upper side. The lowest rung is held by the load (or the source) and
/// the highest is supplied through the port, so that neither needs a capacitor and Kirchhoff's current
/// law with charge balance leaves exactly one degree of freedom.
/// Per volt at the high node every capacitor holds 1/n and every switch blocks 1/n. Stepping down, fly
/// k carries (n - k)/n per unit of output charge, dc k (n - k - 1)/n, s1 and s2 (n - 1)/n, the other
/// switches 1/n: R_SSL = (n - 1)(2n² - 4n + 3)/(3n²·f·C) and R_FSL = 4(n - 1)·R/n; stepping up, n times
/// the charge and n² times the resistances. With a current load the capacitor "out" is on the output.
/// Source: M. D. Seeman and S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008 (from memory);
/// derived in docs/theory/families.md.
/// </remarks>
public static class Ladder
{
    /// <summary>A converter of the ratio 1/n. Time and space are linear in n.</summary>
    /// <param name="levels">The number n, from 2 to 100,000.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(int levels, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(levels, stepUp: false, farads, ohms, load);

    /// <summary>A converter of the ratio n. Time and space are linear in n.</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(int levels, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(levels, stepUp: true, farads, ohms, load);

    private static Converter Build(int levels, bool stepUp, double farads, double ohms, LoadKind load)
    {
        _ = Guard.Count(levels, 2, FamilyFrame.MostCells, nameof(levels));
        FamilyFrame frame = new(FamilyFrame.Name("Ladder", levels, stepUp), stepUp, farads, ohms, load);
        for (int k = 1; k < levels; k++)
        {
            frame.Capacitor($"fly{k}", $"m{k + 1}", $"m{k}");
        }

        for (int k = 1; k < levels - 1; k++)
        {
            frame.Capacitor($"dc{k}", Rung(k + 1), Rung(k));
        }

        for (int k = 1; k <= levels; k++)
        {
            frame.Switch($"s{(2 * k) - 1}", $"m{k}", Rung(k - 1), phase: 2);
            frame.Switch($"s{2 * k}", Rung(k), $"m{k}", phase: 1);
        }

        return frame.Build();

        string Rung(int k) => k == 0 ? Converter.ReferenceNode
            : k == 1 ? frame.Low
            : k == levels ? frame.High : $"r{k}";
    }
}
