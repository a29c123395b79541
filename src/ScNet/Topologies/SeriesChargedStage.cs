using Fractions;

namespace ScNet.Topologies;

/// <summary>
/// The four-level stage of lower stress: two flying capacitors are charged in series with the inductor and discharged
/// one by one, so that each holds a third of the input.
/// </summary>
/// <remarks>
/// <code>
///  phase 1    vin –charge1– p1 ═fly1═ n1 –charge2– p2 ═fly2═ n2 –charge3– x        for the duty D
///  phase 3    n1 –ground1– gnd,  p1 –feed1– x                                       for the duty D
///  phase 5    n2 –ground2– gnd,  p2 –feed2– x                                       for the duty D
///  2, 4, 6    x –rest– gnd                                                          for 1/3 - D each
///  coil       x → vout
/// </code>
/// The ratio is D, up to 1/3, and the switching node swings by a third of the input. Averages leave both capacitors open;
/// ripple settles them at 1/3 each. With a current load the capacitor "out" is on the output. Source: common practice, no
/// source; derived in docs/theory/inductive-families.md.
/// </remarks>
public static class SeriesChargedStage
{
    /// <summary>A stage of the ratio D.</summary>
    /// <param name="duty">The share D of each of the three active phases in the period, above 0 and up to 1/3; at 1/3 the phases between are left out.</param>
    /// <param name="farads">Capacitance of every capacitor in farads (F).</param>
    /// <param name="henries">Inductance in henries (H).</param>
    /// <param name="ohms">On-resistance of every switch in ohms (Ω).</param>
    /// <param name="windingOhms">Winding resistance in ohms (Ω).</param>
    /// <param name="load">What is connected to the output; a current load adds the capacitor "out".</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Converter Of(
        Fraction duty, double farads = 1, double henries = 1, double ohms = 1, double windingOhms = 0, LoadKind load = LoadKind.Stiff)
    {
        Fraction third = new(1, 3);
        bool rests = duty != third;
        if (rests)
        {
            FamilyFrame.RequireDuty(duty, Fraction.Zero, third, nameof(duty));
        }

        FamilyFrame frame = new($"Series-charged stage, duty {duty}", stepUp: false, farads, ohms, load, henries, windingOhms);
        frame.Duties(Enumerable.Repeat<Fraction[]>(rests ? [duty, third - duty] : [third], 3).SelectMany(d => d));
        int second = rests ? 3 : 2, last = rests ? 5 : 3;
        frame.Capacitor("fly1", "p1", "n1");
        frame.Capacitor("fly2", "p2", "n2");
        frame.Inductor("coil", "x", frame.Low);
        frame.Switch("charge1", frame.High, "p1", 1);
        frame.Switch("charge2", "p2", "n1", 1);
        frame.Switch("charge3", "x", "n2", 1);
        frame.Switch("feed1", "p1", "x", second);
        frame.Switch("ground1", "n1", Converter.ReferenceNode, second);
        frame.Switch("feed2", "p2", "x", last);
        frame.Switch("ground2", "n2", Converter.ReferenceNode, last);
        if (rests)
        {
            frame.Switch("rest", "x", Converter.ReferenceNode, [2, 4, 6]);
        }

        return frame.Build();
    }
}
