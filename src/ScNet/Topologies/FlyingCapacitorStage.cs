using Fractions;

namespace ScNet.Topologies;

/// <summary>
/// The n-level flying-capacitor stage: n - 1 cells of two switches that work against each other, between them flying
/// capacitors at equal steps of the input, behind them one inductor.
/// </summary>
/// <remarks>
/// The drawing is for n = 4, upper string to the left, lower one to the right; the cells are counted from the input:
/// <code>
///  vin –high1– u1 –high2– u2 –high3– x –low3– l2 –low2– l1 –low1– gnd          x –coil– vout
///              ╚══════════════════fly1══════════════════╝
///                          ╚══════════fly2══════╝
/// </code>
/// n - 2 capacitors "fly1" to "fly(n-2)", 2n - 2 switches "high1", "low1", …. The high switch of cell k is closed for the
/// duty D from the moment (k - 1)/(n - 1) of the period on, wrapped round, and its low switch for the rest: 2n - 2 phases,
/// or n - 1 where D is a multiple of 1/(n - 1). The ratio is D and every switch blocks 1/(n - 1). Averages leave the flying
/// capacitors open; with equal spacing they settle at fly k = (n - 1 - k)/(n - 1), by ripple where n is even and, for one
/// of them, by losses where n is odd. The switching node swings by 1/(n - 1). With a current load the capacitor "out" is
/// on the output. Source: T. A. Meynard and H. Foch, "Multi-level conversion: high voltage choppers and voltage-source
/// inverters", PESC 1992 (from memory); derived in docs/theory/inductive-families.md.
/// </remarks>
public static class FlyingCapacitorStage
{
    /// <summary>The most levels.</summary>
    public const int MaximumLevels = 200;

    /// <summary>A stage of the ratio D with evenly spaced cells.</summary>
    /// <param name="levels">The number n of levels of the switching node, from 2 to <see cref="MaximumLevels"/>; 2 is the plain step-down stage.</param>
    /// <param name="duty">The share D of the period in which the high switch of each cell is closed, between 0 and 1.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="henries">Inductance in henries (H).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="windingOhms">Winding resistance in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter Of(
        int levels, Fraction duty, double farads = 1, double henries = 1, double ohms = 1, double windingOhms = 0, LoadKind load = LoadKind.Stiff)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(levels, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(levels, MaximumLevels);
        FamilyFrame.RequireDuty(duty, Fraction.Zero, Fraction.One, nameof(duty));
        int cells = levels - 1;
        Fraction[] starts = [.. Enumerable.Range(0, cells).Select(k => new Fraction(k, cells))];
        Fraction[] edges = [.. starts.Concat(starts.Select(s => Wrapped(s + duty))).Distinct().Order()];
        Fraction[] durations = [.. edges.Select((edge, j) => (j + 1 < edges.Length ? edges[j + 1] : Fraction.One) - edge)];

        FamilyFrame frame = new($"Flying-capacitor stage, {levels} levels, duty {duty}", stepUp: false, farads, ohms, load, henries, windingOhms);
        frame.Duties(durations);
        for (int k = 1; k < cells; k++)
        {
            frame.Capacitor($"fly{k}", $"u{k}", $"l{k}");
        }

        frame.Inductor("coil", "x", frame.Low);
        for (int k = 1; k <= cells; k++)
        {
            // a phase lies wholly inside a cell's closed time or outside it
            int[] on = [.. Enumerable.Range(1, edges.Length).Where(j => Wrapped(edges[j - 1] - starts[k - 1]) < duty)];
            frame.Switch($"high{k}", Upper(k - 1), Upper(k), PhaseSet.Of(on));
            frame.Switch($"low{k}", Lower(k), Lower(k - 1), PhaseSet.Of([.. Enumerable.Range(1, edges.Length).Except(on)]));
        }

        return frame.Build();

        string Upper(int k) => k == 0 ? frame.High : k == cells ? "x" : $"u{k}";

        string Lower(int k) => k == 0 ? Converter.ReferenceNode : k == cells ? "x" : $"l{k}";

        static Fraction Wrapped(Fraction moment) =>
            moment >= Fraction.One ? moment - Fraction.One : moment.IsNegative ? moment + Fraction.One : moment;
    }
}
