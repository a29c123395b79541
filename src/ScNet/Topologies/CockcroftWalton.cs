namespace ScNet.Topologies;

/// <summary>
/// The Cockcroft-Walton family, the voltage multiplier with capacitors in series: as Dickson's, but each
/// capacitor stands on the one two stages below instead of on the drive line, so that none holds more
/// than two of the 1/N steps.
/// </summary>
/// <remarks>
/// With k stages the ratio is N = k + 1. The drawing is for k = 4; the two lines of capacitors are the two
/// columns of the classic circuit, whose alternating source is the voltage between the lines odd and even:
/// <code>
///  odd ═fly1═ t1 ═══fly3═══ t3                 odd –oddlow– low,    odd –oddgnd– gnd
///             / \           / \                even –evenlow– low,  even –evengnd– gnd
///  low –s1–--    s2       s3   s4  --s5– high
///                  \     /       \ /            s(k+1), s(k-1), … closed in phase 1, the others in phase 2
///  even ═══fly2═══  t2 ═══fly4══  t4
/// </code>
/// k capacitors "fly1" to "fly(k)" counted from the low node; k + 1 chain switches "s1" to "s(k+1)" from
/// low over t1, t2, … to high and the drive switches "oddlow", "oddgnd", "evenlow", "evengnd" (for k = 1
/// only the first two): k + 5 switches, 4 for k = 1. In phase 1 the line of fly(k) is on the low node.
/// Every switch has its first terminal where the potential is higher while it is open. Per volt at the
/// high node fly1 holds 1/N and the others 2/N; s1, s(k+1) and the drive switches block 1/N, the inner
/// chain switches 2/N. Stepping down, per unit of output charge every chain switch carries 1/N, fly i
/// (⌊(k - i)/2⌋ + 1)/N, for it carries what the capacitors above it in its line do, the odd drive switches
/// ⌈k/2⌉/N and the even ones ⌊k/2⌋/N. With S(m) = m(m + 1)(2m + 1)/6, R_SSL = (S(⌈k/2⌉) + S(⌊k/2⌋))/(N²·f·C)
/// and R_FSL = 2(N + 2⌈k/2⌉² + 2⌊k/2⌋²)·R/N²; stepping up, N times the charge and N² times the resistances.
/// With a current load the capacitor "out" is on the output. Source: J. D. Cockcroft and E. T. S. Walton,
/// Proc. Royal Society A 136, 1932; J. F. Dickson, IEEE J. Solid-State Circuits 11(3), 1976 (both from
/// memory); derived in docs/theory/families.md.
/// </remarks>
public static class CockcroftWalton
{
    /// <summary>A converter of the ratio 1/(k + 1). Time and space are linear in k.</summary>
    /// <param name="stages">The number k of stages, one capacitor each, from 1 to 100,000.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(int stages, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(stages, stepUp: false, farads, ohms, load);

    /// <summary>A converter of the ratio k + 1. Time and space are linear in k.</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(int stages, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(stages, stepUp: true, farads, ohms, load);

    private static Converter Build(int stages, bool stepUp, double farads, double ohms, LoadKind load)
    {
        _ = Guard.Count(stages, 1, FamilyFrame.MostCells, nameof(stages));
        int ratio = stages + 1;
        FamilyFrame frame = new(FamilyFrame.Name("Cockcroft-Walton", ratio, stepUp), stepUp, farads, ohms, load);
        for (int k = 1; k <= stages; k++)
        {
            frame.Capacitor($"fly{k}", $"t{k}", k <= 2 ? Drive(k) : $"t{k - 2}");
        }

        for (int k = 1; k <= ratio; k++)
        {
            string upper = k == ratio ? frame.High : $"t{k}";
            string lower = k == 1 ? frame.Low : $"t{k - 1}";
            frame.Switch($"s{k}", upper, lower, PhaseOfChain(k));
        }

        for (int k = 1; k <= Math.Min(stages, 2); k++)
        {
            // A line is on the low node while the switch above its top plates is closed.
            int raised = PhaseOfChain(k + 1);
            frame.Switch($"{Drive(k)}low", frame.Low, Drive(k), raised);
            frame.Switch($"{Drive(k)}gnd", Drive(k), Converter.ReferenceNode, 3 - raised);
        }

        return frame.Build();

        int PhaseOfChain(int k) => (ratio - k) % 2 == 0 ? 1 : 2;

        static string Drive(int k) => k % 2 == 1 ? "odd" : "even";
    }
}
