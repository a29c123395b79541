using Fractions;

namespace ScNet.Stress;

/// <summary>The voltage that one capacitor holds: in one mode, or the peak over all modes.</summary>
/// <remarks>
/// Positive plate minus bottom plate. At a change of mode capacitors keep their voltages, so changes add
/// nothing. A capacitor that a mode leaves idle keeps what another mode left it with.
/// </remarks>
public sealed class CapacitorStress
{
    private CapacitorStress(Capacitor capacitor, StressExtreme? peak, IReadOnlyList<UndeterminedStress> undetermined, bool isDetermined)
    {
        Capacitor = capacitor;
        Peak = peak;
        Places = undetermined;
        IsDetermined = isDetermined;
    }

    /// <summary>The capacitor.</summary>
    public Capacitor Capacitor { get; }

    /// <summary>The voltage of the largest magnitude; null where none is determined.</summary>
    public StressExtreme? Peak { get; }

    /// <summary>Whether its voltage is bounded, in every mode that it speaks of; false where no mode has a result.</summary>
    public bool IsDetermined { get; }

    /// <summary>The modes in which nothing bounds it, with the reason: "mode 1/3, as fly3 idles"; the peak then speaks of the others only.</summary>
    public IReadOnlyList<string> Undetermined => [.. Places.Select(p => p.ToString())];

    /// <summary>The same as places.</summary>
    internal IReadOnlyList<UndeterminedStress> Places { get; }

    /// <summary>The largest magnitude in volts, exactly; zero where there is none.</summary>
    internal Fraction Magnitude => Peak?.ExactVolts.Abs() ?? Fraction.Zero;

    /// <summary>The name of the capacitor and its peak voltage.</summary>
    public override string ToString() => $"{Capacitor.Name}: {Peak?.ToString() ?? "undetermined"}";

    internal static CapacitorStress Of(Capacitor capacitor, VoltageSpan span, Mode mode, Interval<double> inputVolts, Fraction exactMaximumInput, bool isLeftToLosses)
    {
        if (!span.IsDetermined)
        {
            return new CapacitorStress(capacitor, null, [new UndeterminedStress(mode, null, null, [capacitor], []) { IsLeftToLosses = isLeftToLosses }], false);
        }

        Fraction low = span.PerVoltOfInput.Minimum!.Value, high = span.PerVoltOfInput.Maximum!.Value;
        Fraction peak = -low > high ? low : high;
        return new CapacitorStress(capacitor, new StressExtreme(peak, inputVolts, exactMaximumInput, mode, null, null, span.Basis), [], true);
    }

    internal static CapacitorStress Worst(Capacitor capacitor, IReadOnlyCollection<CapacitorStress> stresses) => new(
        capacitor,
        stresses.Select(s => s.Peak).OfType<StressExtreme>().MaxBy(e => (e.ExactVolts.Abs(), e.Basis == VoltageBasis.Fixed)),
        [.. stresses.SelectMany(s => s.Places)],
        stresses.Count > 0 && stresses.All(s => s.IsDetermined));
}
