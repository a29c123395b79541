namespace ScNet.Topologies;

/// <summary>
/// The polarity inverters: the flying capacitors are charged from the input the right way up and
/// emptied into the output upside down.
/// </summary>
/// <remarks>
/// <see cref="StepDown"/> and <see cref="StepUp"/> are the series-parallel ones of the ratio -1/n and -n.
/// The drawing is for n = 2, with "high" the port of the larger voltage and "low" the other:
/// <code>
///  high –series1– p1 ═fly1═ n1 –series2– p2 ═fly2═ n2 –series3– gnd     closed in phase 1
///                 p1 –top1– gnd,   n1 –bottom1– low                      closed in phase 2
///                 p2 –top2– gnd,   n2 –bottom2– low                      closed in phase 2
/// </code>
/// n capacitors "fly1" to "fly(n)" counted from the high node; 3n + 1 switches: "series1" to
/// "series(n+1)", "top1" to "top(n)", "bottom1" to "bottom(n)". Per volt at the high node every capacitor
/// holds 1/n; series1 blocks 1, the other series switches 1/n, top k and bottom k (n - k + 1)/n. Stepping
/// down, every capacitor and switch carries 1/n per unit of output charge, so R_SSL = 1/(n·f·C) and
/// R_FSL = 2(3n + 1)·R/n²; stepping up, n times the charge and n² times the resistances.
/// <para>
/// <see cref="Of"/> gives the ratio -p/q for p + q up to 5, all negative ratios of three flying capacitors
/// in two phases, with the fewest capacitors and then the fewest switches, from the same search as
/// <see cref="FractionalDivider"/>; the switches are "s1", "s2", …:
/// </para>
/// <code>
///  ratio            -1    -1/2, -2   -1/3, -3   -2/3, -3/2, -1/4, -4
///  capacitors       1     2          3          3
///  switches         4     7          8          10
/// </code>
/// Stepping down a switch has its first terminal where the potential is higher while it is open; so has it
/// stepping up, where positive and negative plate change places too, for the high node is the negative one.
/// A negative output takes charge out of the load: charges per unit of output charge are those of the
/// load that gives. With a current load the capacitor "out" is on the output, its first plate on the
/// output node. Source: common practice, no source; derived in docs/theory/families.md.
/// </remarks>
public static class PolarityInverter
{
    /// <summary>The largest sum p + q of the ratio -p/q in lowest terms.</summary>
    public const int MaximumSum = 5;

    /// <summary>A series-parallel converter of the ratio -1/n. Time and space are linear in n.</summary>
    /// <param name="ratio">The number n, from 1 to 100,000.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(int ratio, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(ratio, stepUp: false, farads, ohms, load);

    /// <summary>A series-parallel converter of the ratio -n. Time and space are linear in n.</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(int ratio, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(ratio, stepUp: true, farads, ohms, load);

    /// <summary>A converter of the ratio -p/q; both numbers are divided by their common factors first.</summary>
    /// <param name="numerator">The number p, at least 1.</param>
    /// <param name="denominator">The number q, at least 1; in lowest terms p + q is at most <see cref="MaximumSum"/>.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter Of(int numerator, int denominator, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff)
    {
        (int p, int q) = FamilyFrame.LowestTerms(numerator, denominator);
        if (p > MaximumSum - q)
        {
            throw new ArgumentOutOfRangeException(
                nameof(numerator), numerator, $"Expected a ratio -p/q with p + q up to {MaximumSum} in lowest terms, but got -{p}/{q}. Cascade an inverter and a divider.");
        }

        bool stepUp = p > q;
        FamilyFrame frame = new($"Polarity inverter {FamilyFrame.Ratio(-p, q)}", stepUp, farads, ohms, load);
        FractionalNetworks.AddTo(frame, -Math.Min(p, q), Math.Max(p, q), stepUp);
        return frame.Build();
    }

    private static Converter Build(int ratio, bool stepUp, double farads, double ohms, LoadKind load)
    {
        _ = Guard.Count(ratio, 1, FamilyFrame.MostCells, nameof(ratio));
        string name = $"Polarity inverter {(stepUp ? FamilyFrame.Ratio(-ratio, 1) : FamilyFrame.Ratio(-1, ratio))}";
        FamilyFrame frame = new(name, stepUp, farads, ohms, load);
        for (int k = 1; k <= ratio; k++)
        {
            (string positive, string bottom) = Upright($"p{k}", $"n{k}");
            frame.Capacitor($"fly{k}", positive, bottom);
        }

        AddSwitch("series1", frame.High, "p1", phase: 1);
        for (int k = 2; k <= ratio; k++)
        {
            AddSwitch($"series{k}", $"p{k}", $"n{k - 1}", phase: 1);
        }

        AddSwitch($"series{ratio + 1}", Converter.ReferenceNode, $"n{ratio}", phase: 1);
        for (int k = 1; k <= ratio; k++)
        {
            AddSwitch($"top{k}", $"p{k}", Converter.ReferenceNode, phase: 2);
            AddSwitch($"bottom{k}", $"n{k}", frame.Low, phase: 2);
        }

        return frame.Build();

        void AddSwitch(string name, string upper, string lower, int phase)
        {
            (string first, string second) = Upright(upper, lower);
            frame.Switch(name, first, second, phase);
        }

        // Stepping up the high node is the negative one, and every potential has the other sign.
        (string, string) Upright(string upper, string lower) => stepUp ? (lower, upper) : (upper, lower);
    }
}
