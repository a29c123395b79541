using Fractions;
using ScNet.Netlists;

namespace ScNet.Stress;

/// <summary>The voltage that one capacitor holds: in one mode, or the largest over all modes.</summary>
/// <remarks>Positive plate minus bottom plate. At a change of mode capacitors keep their voltages, so changes add nothing.</remarks>
public sealed class CapacitorStress
{
    internal CapacitorStress(Capacitor capacitor, StressExtreme? largest, bool isUndetermined)
    {
        Capacitor = capacitor;
        Largest = largest;
        IsUndetermined = isUndetermined;
    }

    /// <summary>The capacitor.</summary>
    public Capacitor Capacitor { get; }

    /// <summary>The voltage of the largest magnitude; null where none is determined.</summary>
    public StressExtreme? Largest { get; }

    /// <summary>Whether nothing fixes its voltage, in the mode or in one of them.</summary>
    public bool IsUndetermined { get; }

    /// <summary>The largest magnitude in volts, exactly; zero where there is none.</summary>
    internal Fraction Magnitude => Largest is { } largest ? MagnitudeOf(largest) : Fraction.Zero;

    /// <summary>The name of the capacitor and its largest voltage.</summary>
    public override string ToString() => $"{Capacitor.Name}: {Largest?.ToString() ?? "undetermined"}";

    internal static CapacitorStress Of(Capacitor capacitor, Quantity voltage, Mode mode, InputVoltageRange input)
    {
        StressExtreme? extreme = voltage.TryGetFraction(out Fraction exact)
            ? new StressExtreme(voltage, (exact * input.ExactMaximum).ToDouble(), input.MaximumVolts, mode, null, null, VoltageBasis.Fixed)
            : null;
        return new CapacitorStress(capacitor, extreme, extreme is null);
    }

    internal static CapacitorStress Worst(Capacitor capacitor, IReadOnlyCollection<CapacitorStress> stresses) => new(
        capacitor,
        stresses.Select(s => s.Largest).OfType<StressExtreme>().MaxBy(MagnitudeOf),
        stresses.Count == 0 || stresses.Any(s => s.IsUndetermined));

    private static Fraction MagnitudeOf(StressExtreme extreme) =>
        extreme.PerVoltOfInput.ToFraction().Abs() * ExactDecimal.Of(extreme.InputVoltageVolts);
}
