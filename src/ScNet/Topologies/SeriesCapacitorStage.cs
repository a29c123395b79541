using Fractions;

namespace ScNet.Topologies;

/// <summary>The series-capacitor stage of two inductors: two step-down stages half a period apart that share the input through one flying capacitor.</summary>
/// <remarks>
/// <code>
///  phase 1    vin –high1– p ═fly═ x1,   x2 –low2– gnd          for the duty D
///  phase 3    p –high2– x2,             x1 –low1– gnd          for the duty D
///  2, 4       x1 –low1– gnd,            x2 –low2– gnd          for 1/2 - D each
///  coil1      x1 → vout,    coil2  x2 → vout
/// </code>
/// The capacitor holds 1/2, the ratio is D/2, each inductor carries half the load whatever its resistance, low1 and low2
/// block 1/2, high1 blocks 1/2 and high2 blocks 1. With a current load the capacitor "out" is on the output. Source:
/// P. S. Shenoy et al., "Automatic current sharing mechanism in the series capacitor buck converter", ECCE 2015 (from
/// memory); derived in docs/theory/inductive-families.md.
/// </remarks>
public static class SeriesCapacitorStage
{
    /// <summary>A stage of the ratio D/2.</summary>
    /// <param name="duty">The share D of each of the two active phases in the period, above 0 and below 1/2.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="henries">Inductance of each inductor in henries (H).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="windingOhms">Winding resistance of each inductor in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter Of(
        Fraction duty, double farads = 1, double henries = 1, double ohms = 1, double windingOhms = 0, LoadKind load = LoadKind.Stiff)
    {
        Fraction half = new(1, 2);
        FamilyFrame.RequireDuty(duty, Fraction.Zero, half, nameof(duty));
        FamilyFrame frame = new($"Series-capacitor stage, duty {duty}", stepUp: false, farads, ohms, load, henries, windingOhms);
        frame.Duties([duty, half - duty, duty, half - duty]);
        frame.Capacitor("fly", "p", "x1");
        frame.Inductor("coil1", "x1", frame.Low);
        frame.Inductor("coil2", "x2", frame.Low);
        frame.Switch("high1", frame.High, "p", 1);
        frame.Switch("low1", "x1", Converter.ReferenceNode, [2, 3, 4]);
        frame.Switch("high2", "p", "x2", 3);
        frame.Switch("low2", "x2", Converter.ReferenceNode, [1, 2, 4]);
        return frame.Build();
    }
}
