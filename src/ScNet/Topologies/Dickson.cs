namespace ScNet.Topologies;

/// <summary>
/// The Dickson family: a chain of switches hands charge from one capacitor to the next, while the
/// bottom plates are driven between the low node and the reference, odd and even ones in turn.
/// </summary>
/// <remarks>
/// For a ratio n, with "high" and "low" the two ports and the drawing for n = 4:
/// <code>
///  low –s1– t1 –s2– t2 –s3– t3 –s4– high      s(n), s(n-2), … closed in phase 1, the others in phase 2
///          fly1    fly2    fly3
///           ║       ║       ║                  odd –oddlow– low,    odd –oddgnd– gnd
///          odd     even    odd                 even –evenlow– low,  even –evengnd– gnd
/// </code>
/// n - 1 capacitors "fly1" to "fly(n-1)" counted from the low node; n chain switches "s1" to "s(n)" and
/// the four drive switches "oddlow", "oddgnd", "evenlow", "evengnd" (for n = 2 there is no even
/// capacitor, hence only the first two): n + 4 switches, 4 for n = 2. In phase 1 the bottom plate of
/// fly(n-1) is on the low node and its top plate on the high one. Every switch has its first terminal
/// where the potential is higher while it is open. Per volt at the high node fly k holds k/n; s1, s(n)
/// and the drive switches block 1/n, the inner chain switches 2/n. Stepping down, every capacitor and
/// chain switch carries 1/n per unit of output charge, the odd drive switches ⌊n/2⌋/n and the even ones
/// ⌊(n-1)/2⌋/n: R_SSL = (n - 1)/(n²·f·C) and R_FSL = 2(n + 2⌊n/2⌋² + 2⌊(n-1)/2⌋²)·R/n²; stepping up,
/// n times the charge and n² times the resistances. With a current load the capacitor "out" is on the
/// output. Source: M. D. Seeman and S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008 (from
/// memory); derived in docs/theory/families.md.
/// </remarks>
public static class Dickson
{
    /// <summary>A converter of the ratio 1/n. Time and space are linear in n.</summary>
    /// <param name="ratio">The number n, from 2 to 100,000.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(int ratio, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(ratio, stepUp: false, farads, ohms, load);

    /// <summary>A converter of the ratio n. Time and space are linear in n.</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(int ratio, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(ratio, stepUp: true, farads, ohms, load);

    private static Converter Build(int ratio, bool stepUp, double farads, double ohms, LoadKind load)
    {
        _ = Guard.Count(ratio, 2, FamilyFrame.MostCells, nameof(ratio));
        FamilyFrame frame = new(FamilyFrame.Name("Dickson", ratio, stepUp), stepUp, farads, ohms, load);
        for (int k = 1; k < ratio; k++)
        {
            frame.Capacitor($"fly{k}", $"t{k}", Drive(k));
        }

        for (int k = 1; k <= ratio; k++)
        {
            string upper = k == ratio ? frame.High : $"t{k}";
            string lower = k == 1 ? frame.Low : $"t{k - 1}";
            frame.Switch($"s{k}", upper, lower, PhaseOfChain(k));
        }

        for (int k = 1; k < Math.Min(ratio, 3); k++)
        {
            // A bottom plate is on the low node while the switch above its top plate is closed.
            int raised = PhaseOfChain(k + 1);
            frame.Switch($"{Drive(k)}low", frame.Low, Drive(k), raised);
            frame.Switch($"{Drive(k)}gnd", Drive(k), Converter.ReferenceNode, 3 - raised);
        }

        return frame.Build();

        int PhaseOfChain(int k) => (ratio - k) % 2 == 0 ? 1 : 2;

        static string Drive(int k) => k % 2 == 1 ? "odd" : "even";
    }
}
