using Fractions;
using ScNet.Analysis;

namespace ScNet.Design;

/// <summary>A switched-capacitor converter that feeds its load through an inductor, so that its capacitors are charged by a current and not by impulses.</summary>
/// <remarks>
/// The inductor lies between what was the output, now the node "x", and the output "vout". Its voltage averages to zero, so
/// the ratio stays. It draws the same current in every phase, so the phases are made as long as the shares of the charge that
/// the converter delivers in them: then charge balances, and where no two capacitors close a loop without the inductor,
/// charging is fully soft. Averages no longer fix the capacitors' voltages: losses do. Source: R. C. N. Pilawa-Podgurski and D. J. Perreault, "Merged two-stage power converter with
/// soft charging switched-capacitor stage in 180 nm CMOS", JSSC 47(7), 2012 (from memory); derived in
/// docs/theory/inductive-families.md.
/// </remarks>
public static class InductorFed
{
    /// <summary>A converter with an inductor between its output and the load.</summary>
    /// <param name="converter">A converter of one mode with a stiff load, such as a member of the ladder or Dickson family.</param>
    /// <param name="henries">Inductance in henries (H).</param>
    /// <param name="windingOhms">Winding resistance in ohms (Ω).</param>
    /// <exception cref="ArgumentException">
    /// The converter has several modes, a load current, no result, or a phase in which it delivers nothing, where the
    /// inductor's current would have no path.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static Converter Behind(Converter converter, double henries = 1, double windingOhms = 0)
    {
        ArgumentNullException.ThrowIfNull(converter);
        Mode mode = converter.OnlyMode(nameof(converter));
        _ = Guard.InRange(henries, allowZero: false, nameof(henries));
        _ = Guard.InRange(windingOhms, allowZero: true, nameof(windingOhms));
        if (converter.Load != LoadKind.Stiff)
        {
            throw new ArgumentException($"Expected a stiff load, but '{converter.Name}' has a load current. Build it with a stiff load.", nameof(converter));
        }

        Fraction[] shares = Shares(converter, mode);
        ConverterBuilder builder = Converter.Create($"{converter.Name} behind an inductor").Input("vin").Output("vout").Duties(shares);
        builder.AddElements(converter, string.Empty, node => node == converter.InputNode ? "vin"
            : node == converter.OutputNode ? "x"
            : node is "x" or "vin" or "vout" ? node + "'" : node);
        return builder.Inductor("coil", "x", "vout", henries, windingOhms)
            .Mode(Mode.DefaultName, [.. converter.Entries(mode, string.Empty, p => [p])])
            .Build();
    }

    /// <summary>
    /// The same with a rest after every phase of the converter, in which the switch "rest" holds the node "x" at the reference:
    /// the ratio is that of the converter times the duty, which regulates.
    /// </summary>
    /// <remarks>
    /// The converter's phase j lasts its share of the charge times the duty, and is phase 2j - 1; the rests after it are equally
    /// long. Charge balances as without them. A controller keeps each capacitor at the voltage that it has without the
    /// inductor, which averages leave open. Source: common practice, no source; derived in docs/theory/inductive-families.md.
    /// </remarks>
    /// <param name="converter">A converter of one mode with a stiff load, such as a member of the ladder or Dickson family.</param>
    /// <param name="duty">The share of the converter's own phases in the period, above 0 and below 1.</param>
    /// <param name="henries">Inductance in henries (H).</param>
    /// <param name="windingOhms">Winding resistance in ohms (Ω).</param>
    /// <param name="restOhms">On-resistance of the switch "rest" in ohms (Ω).</param>
    /// <exception cref="ArgumentException">As without a duty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static Converter WithRests(Converter converter, Fraction duty, double henries = 1, double windingOhms = 0, double restOhms = 1)
    {
        if (duty.Denominator.IsZero || duty <= Fraction.Zero || duty >= Fraction.One)
        {
            throw new ArgumentOutOfRangeException(nameof(duty), duty, "Expected a duty above 0 and below 1.");
        }

        Converter fed = Behind(converter, henries, windingOhms);
        _ = Guard.InRange(restOhms, allowZero: false, nameof(restOhms));
        int count = fed.Phases.Count;
        IdealPoint held = Analysed(converter, converter.Modes[0]).IdealPoint;
        ConverterBuilder builder = Converter.Create($"{fed.Name}, duty {duty}").Input(fed.InputNode).Output(fed.OutputNode)
            .Duties([.. fed.Phases.SelectMany(p => new[] { p.Duty * duty, (Fraction.One - duty) / count })]);
        builder.AddElements(fed, string.Empty, node => node, c => held.CapacitorVoltages[c].TryGetFraction(out Fraction share) ? share : null);
        string rest = "rest";
        while (fed.Switches.Names.Find(rest) >= 0)
        {
            rest += "'";
        }

        return builder.Switch(rest, "x", Converter.ReferenceNode, PhaseSet.None, restOhms)
            .Mode(Mode.DefaultName, [
                .. fed.Entries(fed.Modes[0], string.Empty, p => [(2 * p) - 1]),
                (rest, PhaseSet.Of([.. Enumerable.Range(1, count).Select(p => 2 * p)])),
            ])
            .Build();
    }

    private static ModeAnalysis Analysed(Converter converter, Mode mode)
    {
        ModeOutcome outcome = ModeAnalysis.Try(converter, mode);
        return outcome.Analysis
            ?? throw new ArgumentException($"'{converter.Name}' has no result: {outcome.Diagnostics[0].Message}", nameof(converter));
    }

    private static Fraction[] Shares(Converter converter, Mode mode)
    {
        ModeAnalysis analysis = Analysed(converter, mode);
        PhaseValues delivered = analysis.ChargeFlow.Output;
        var shares = new Fraction[converter.Phases.Count];
        for (int j = 0; j < shares.Length; j++)
        {
            Quantity share = delivered[j + 1];
            shares[j] = share.IsExact && share.ToFraction() > Fraction.Zero
                ? share.ToFraction()
                : throw new ArgumentException($"Expected a converter that delivers charge in every phase, a share that topology decides, but '{converter.Name}' delivers {share} in phase {j + 1}. Take another family or another size.", nameof(converter));
        }

        return shares;
    }
}
