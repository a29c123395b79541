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

    private static Fraction[] Shares(Converter converter, Mode mode)
    {
        ModeOutcome outcome = ModeAnalysis.Try(converter, mode);
        if (outcome.Analysis is not { } analysis)
        {
            throw new ArgumentException($"'{converter.Name}' has no result: {outcome.Diagnostics[0].Message}", nameof(converter));
        }

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
