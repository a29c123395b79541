namespace ScNet.Topologies;

/// <summary>
/// The binary converter: n flying capacitors that hold a half, a quarter, … of the high voltage and give
/// every ratio k/2^n. Each phase is one string of capacitors, some turned round, from the high node or
/// the reference to the low node.
/// </summary>
/// <remarks>
/// A phase writes the ratio as A0 + A1/2 + … + An/2^n: A0 is 1 where the string starts at the high node and
/// 0 where it starts at the reference, Aj is 1 where capacitor j adds, -1 where it takes away, 0 where it
/// rests with its bottom plate on the reference. The drawing is for 3/8:
/// <code>
///  phase 1   gnd ─– fly2 +─– fly3 +─ low                3/8 = 1/4 + 1/8          2/8 of the charge
///  phase 2   gnd ─– fly1 +─+ fly2 –─– fly3 +─ low          = 1/2 - 1/4 + 1/8    2/8
///  phase 3   gnd ─– fly1 +─+ fly3 –─ low                   = 1/2 - 1/8          1/8
///  phase 4   high ─+ fly1 –─+ fly3 –─ low                  = 1 - 1/2 - 1/8      3/8
/// </code>
/// n capacitors "fly1" to "fly(n)", fly j holding 1/2^j per volt at the high node, and n + 1 phases of equal
/// duty for an odd k; an even k is built as k/2 with one capacitor less. The switches are named after what
/// they join: "high-p1", "n1-p2", "p3-low", "n2-gnd", where "pj" and "nj" are the plates of fly j, and block
/// both ways where both signs occur. Per unit of output charge the phases of an odd k carry charges y that
/// are positive multiples of 1/2^n (they need not be equal), and fly j carries -Aj·y:
/// R_SSL = Σ (y·Aj)²/(2·f·C) over phases and capacitors; stepping up, 1/ratio² times that. With a current
/// load the capacitor "out" is on the output. Source: S. Ben-Yaakov and A. Kushnerov, "Algebraic foundation
/// of self adjusting switched capacitors converters", ECCE 2009 (from memory); the choice of phases, and
/// why it settles, is derived in docs/theory/families.md.
/// </remarks>
public static class BinaryConverter
{
    /// <summary>The most capacitors of a converter of one ratio.</summary>
    public const int MaximumCapacitors = 30;

    /// <summary>The most capacitors of a converter with a mode per ratio.</summary>
    public const int MaximumReconfigurableCapacitors = 10;

    /// <summary>A converter of the ratio k/2^n in n + 1 phases. Time and space grow as n².</summary>
    /// <param name="capacitors">The number n, from 1 to <see cref="MaximumCapacitors"/>.</param>
    /// <param name="numerator">The number k, from 1 to 2^n - 1; each factor 2 in it saves a capacitor and a phase.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(int capacitors, int numerator, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(capacitors, numerator, stepUp: false, farads, ohms, load);

    /// <summary>A converter of the ratio 2^n/k in n + 1 phases. Time and space grow as n².</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(int capacitors, int numerator, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff) =>
        Build(capacitors, numerator, stepUp: true, farads, ohms, load);

    /// <summary>
    /// A converter with a mode for each ratio k/2^n, named by it in lowest terms ("3/8"), in n + 1 phases. A
    /// mode of a smaller denominator does nothing in the phases it does not need, save that in the last one
    /// the capacitors without a digit are charged from the low node. Time and space grow as 2^n·n².
    /// </summary>
    /// <param name="capacitors">The number n, from 1 to <see cref="MaximumReconfigurableCapacitors"/>.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter Reconfigurable(int capacitors, double farads = 1, double ohms = 1, LoadKind load = LoadKind.Stiff)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacitors, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(capacitors, MaximumReconfigurableCapacitors);
        int denominator = 1 << capacitors;
        FamilyFrame frame = new($"Binary 1/{denominator} to {denominator - 1}/{denominator}", stepUp: false, farads, ohms, load);
        var modes = new BinaryStrings[denominator - 1];
        for (int k = 1; k < denominator; k++)
        {
            modes[k - 1] = BinaryStrings.Of(capacitors, k);
        }

        AddCapacitors(frame, capacitors);
        frame.Phases(capacitors + 1);
        foreach (BinarySwitch @switch in modes.SelectMany(m => m.Switches.Keys).Distinct().Order())
        {
            frame.Switch(@switch.Name, @switch.First(frame), @switch.Second(frame), PhaseSet.None);
        }

        for (int k = 1; k < denominator; k++)
        {
            frame.Mode(FamilyFrame.Ratio(k, denominator), modes[k - 1].Switches.Select(s => (s.Key.Name, PhaseSet.Of([.. s.Value]))));
        }

        return frame.Build();
    }

    private static Converter Build(int capacitors, int numerator, bool stepUp, double farads, double ohms, LoadKind load)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacitors, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(capacitors, MaximumCapacitors);
        ArgumentOutOfRangeException.ThrowIfLessThan(numerator, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(numerator, 1 << capacitors);
        string ratio = stepUp ? FamilyFrame.Ratio(1L << capacitors, numerator) : FamilyFrame.Ratio(numerator, 1L << capacitors);
        while (numerator % 2 == 0)
        {
            (numerator, capacitors) = (numerator / 2, capacitors - 1);
        }

        FamilyFrame frame = new($"Binary {ratio}", stepUp, farads, ohms, load);
        AddCapacitors(frame, capacitors);
        frame.Phases(capacitors + 1);
        foreach ((BinarySwitch @switch, List<int> phases) in BinaryStrings.Of(capacitors, numerator).Switches)
        {
            frame.Switch(@switch.Name, @switch.First(frame), @switch.Second(frame), PhaseSet.Of([.. phases]));
        }

        return frame.Build();
    }

    private static void AddCapacitors(FamilyFrame frame, int capacitors)
    {
        for (int j = 1; j <= capacitors; j++)
        {
            frame.Capacitor($"fly{j}", $"p{j}", $"n{j}");
        }
    }
}
