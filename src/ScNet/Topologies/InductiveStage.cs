using Fractions;

namespace ScNet.Topologies;

/// <summary>The plain inductive stages, with one inductor and two switches: step-down, step-up and inverting.</summary>
/// <remarks>
/// Phase 1 lasts the duty D of the period, phase 2 the rest. "coil" is the inductor, "high" and "low" are the switches:
/// <code>
///             step-down                  step-up                     inverting
///  phase 1    vin –high– x               x –low– gnd                 vin –high– x
///  phase 2    x –low– gnd                x –high– vout               x –low– vout
///  coil       x → vout                   vin → x                     x → gnd
///  ratio      D                          1/(1 - D)                   -D/(1 - D)
///  current    1                          1/(1 - D)                   -1/(1 - D)    of the coil, per unit of load current
///  blocking   high 1, low 1              1/(1 - D)                   1/(1 - D)     per volt of input
/// </code>
/// With a current load the capacitor "out" is on the output. Source: R. W. Erickson and D. Maksimović, Fundamentals of
/// Power Electronics, chapter 2 (from memory); derived in docs/theory/inductive-families.md.
/// </remarks>
public static class InductiveStage
{
    /// <summary>A stage of the ratio D.</summary>
    /// <param name="duty">The share D of phase 1 in the period, between 0 and 1.</param>
    /// <param name="henries">Inductance in henries (H).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="windingOhms">Winding resistance in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <param name="farads">Capacitance of the capacitor "out" in farads (F).</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter StepDown(
        Fraction duty, double henries = 1, double ohms = 1, double windingOhms = 0, LoadKind load = LoadKind.Stiff, double farads = 1)
    {
        FamilyFrame frame = Frame("Inductive step-down", duty, henries, ohms, windingOhms, load, farads);
        frame.Inductor("coil", "x", frame.Low);
        frame.Switch("high", frame.High, "x", 1);
        frame.Switch("low", "x", Converter.ReferenceNode, 2);
        return frame.Build();
    }

    /// <summary>A stage of the ratio 1/(1 - D).</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter StepUp(
        Fraction duty, double henries = 1, double ohms = 1, double windingOhms = 0, LoadKind load = LoadKind.Stiff, double farads = 1)
    {
        FamilyFrame frame = Frame("Inductive step-up", duty, henries, ohms, windingOhms, load, farads);
        frame.Inductor("coil", frame.High, "x");
        frame.Switch("low", "x", Converter.ReferenceNode, 1);
        frame.Switch("high", frame.Low, "x", 2);
        return frame.Build();
    }

    /// <summary>A stage of the ratio -D/(1 - D).</summary>
    /// <inheritdoc cref="StepDown"/>
    public static Converter Inverting(
        Fraction duty, double henries = 1, double ohms = 1, double windingOhms = 0, LoadKind load = LoadKind.Stiff, double farads = 1)
    {
        FamilyFrame frame = Frame("Inductive inverter", duty, henries, ohms, windingOhms, load, farads);
        frame.Inductor("coil", "x", Converter.ReferenceNode);
        frame.Switch("high", frame.High, "x", 1);
        frame.Switch("low", "x", frame.Low, 2);
        return frame.Build();
    }

    private static FamilyFrame Frame(
        string name, Fraction duty, double henries, double ohms, double windingOhms, LoadKind load, double farads)
    {
        FamilyFrame.RequireDuty(duty, Fraction.Zero, Fraction.One, nameof(duty));
        FamilyFrame frame = new($"{name}, duty {duty}", stepUp: false, farads, ohms, load, henries, windingOhms);
        frame.Duties([duty, Fraction.One - duty]);
        return frame;
    }
}
