namespace ScNet.Topologies;

/// <summary>
/// The series-parallel family: the flying capacitors are in series on the side of the high node in
/// phase 1 and in parallel on the low node in phase 2.
/// </summary>
/// <remarks>
/// For a ratio n, with "high" and "low" the two ports and the drawing for n = 3:
/// <code>
///  high –series1– p1 ═fly1═ n1 –series2– p2 ═fly2═ n2 –series3– low     closed in phase 1
///                 p1 –top1– low,   n1 –bottom1– gnd                      closed in phase 2
///                 p2 –top2– low,   n2 –bottom2– gnd                      closed in phase 2
/// </code>
/// n - 1 capacitors "fly1" to "fly(n-1)" counted from the high node; 3n - 2 switches: "series1" to
/// "series(n)", "top1" to "top(n-1)", "bottom1" to "bottom(n-1)". Every switch has its first terminal
/// where the potential is higher while it is open. Per volt at the high node every capacitor holds 1/n;
/// series1 blocks 1 - 1/n, the other series switches 1/n, top k and bottom k (n - k)/n. Stepping down,
/// every capacitor and switch carries 1/n per unit of output charge, so R_SSL = (n - 1)/(n²·f·C) and
/// R_FSL = 2·(3n - 2)·R/n²; stepping up, n times the charge and n² times the resistances. With a
/// current load the capacitor "out" is on the output. Source: M. D. Seeman and S. R. Sanders, IEEE
/// Trans. Power Electronics 23(2), 2008 (from memory); derived in docs/theory/families.md.
/// </remarks>
public static class SeriesParallel
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
        FamilyFrame frame = new(FamilyFrame.Name("Series-parallel", ratio, stepUp), stepUp, farads, ohms, load);
        for (int k = 1; k < ratio; k++)
        {
            frame.Capacitor($"fly{k}", $"p{k}", $"n{k}");
        }

        frame.Switch("series1", frame.High, "p1", phase: 1);
        for (int k = 2; k < ratio; k++)
        {
            frame.Switch($"series{k}", $"p{k}", $"n{k - 1}", phase: 1);
        }

        frame.Switch($"series{ratio}", frame.Low, $"n{ratio - 1}", phase: 1);
        for (int k = 1; k < ratio; k++)
        {
            frame.Switch($"top{k}", $"p{k}", frame.Low, phase: 2);
            frame.Switch($"bottom{k}", $"n{k}", Converter.ReferenceNode, phase: 2);
        }

        return frame.Build();
    }
}
