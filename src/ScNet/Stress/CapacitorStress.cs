using Fractions;

namespace ScNet.Stress;

/// <summary>The voltage that one capacitor holds: in one mode, or the peak over all modes.</summary>
/// <remarks>
/// Positive plate minus bottom plate. At a change of mode capacitors keep their voltages, so changes add
/// nothing. A capacitor that a mode leaves idle keeps what another mode left it with.
/// </remarks>
public sealed class CapacitorStress
{
    private CapacitorStress(Capacitor capacitor, StressExtreme? peak, IReadOnlyList<UndeterminedStress> undetermined, bool isUndetermined)
    {
        Capacitor = capacitor;
        Peak = peak;
        Undetermined = undetermined;
        IsUndetermined = isUndetermined;
    }

    /// <summary>The capacitor.</summary>
    public Capacitor Capacitor { get; }

    /// <summary>The voltage of the largest magnitude; null where none is determined.</summary>
    public StressExtreme? Peak { get; }

    /// <summary>Whether nothing bounds its voltage, in the mode or in one of them, or no mode has a result.</summary>
    public bool IsUndetermined { get; }

    /// <summary>The modes in which nothing bounds it; the peak then speaks of the others only.</summary>
    public IReadOnlyList<UndeterminedStress> Undetermined { get; }

    /// <summary>The largest magnitude in volts, exactly; zero where there is none.</summary>
    internal Fraction Magnitude => Peak?.ExactVolts.Abs() ?? Fraction.Zero;

    /// <summary>The name of the capacitor and its peak voltage.</summary>
    public override string ToString() => $"{Capacitor.Name}: {Peak?.ToString() ?? "undetermined"}";

    internal static CapacitorStress Of(Capacitor capacitor, VoltageSpan span, Mode mode, Interval<double> inputVolts, Fraction exactMaximumInput)
    {
        if (!span.IsDetermined)
        {
            return new CapacitorStress(capacitor, null, [new UndeterminedStress(mode, null, null, [capacitor], [])], true);
        }

        Fraction low = span.PerVoltOfInput.Low, high = span.PerVoltOfInput.High;
        Fraction peak = -low > high ? low : high;
        return new CapacitorStress(capacitor, new StressExtreme(peak, inputVolts, exactMaximumInput, mode, null, null, span.Basis), [], false);
    }

    internal static CapacitorStress Worst(Capacitor capacitor, IReadOnlyCollection<CapacitorStress> stresses) => new(
        capacitor,
        stresses.Select(s => s.Peak).OfType<StressExtreme>().MaxBy(e => (e.ExactVolts.Abs(), e.Basis == VoltageBasis.Fixed)),
        [.. stresses.SelectMany(s => s.Undetermined)],
        stresses.Count == 0 || stresses.Any(s => s.IsUndetermined));
}
