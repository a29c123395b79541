using Fractions;
using MathNet.Numerics.Interpolation;

namespace ScNet.Devices;

/// <summary>A capacitor of a process: what it withstands, and what an area of it gives.</summary>
public sealed record CapacitorDevice
{
    private readonly LinearSpline? _density;

    /// <summary>The name, for people.</summary>
    public required string Name { get; init => field = Guard.Named(value, nameof(Name)); }

    /// <summary>Where the values come from; "invented" for a demonstration.</summary>
    public required string Source { get; init => field = Guard.Named(value, nameof(Source)); }

    /// <summary>The voltage in volts (V) that it withstands, either way round.</summary>
    public required double RatedVolts { get; init => field = SwitchDevice.Positive(value, nameof(RatedVolts)); }

    /// <summary>
    /// Capacitance per active area in farads per square metre (F/m²); 1 fF/µm² is 1e-3 F/m². With a table against bias,
    /// what counts where the voltage is not known, and what the plates are a fraction of.
    /// </summary>
    public required double FaradsPerSquareMetre { get; init => field = SwitchDevice.Positive(value, nameof(FaradsPerSquareMetre)); }

    /// <summary>Capacitance per active area against the voltage, by rising voltage, at least two points; empty where it does not depend on it.</summary>
    /// <exception cref="ArgumentException">There is one point only, a voltage does not rise, or a value is out of range.</exception>
    public IReadOnlyList<DensityPoint> DensityAgainstBias
    {
        get;
        init
        {
            field = Guard.Copy(value, nameof(DensityAgainstBias));
            _density = SplineOf(field);
        }
    }

        = [];

    /// <summary>The capacitance from the bottom plate to the substrate as a fraction of the nominal capacitance, without a unit.</summary>
    public double BottomPlateFraction { get; init => field = Guard.InRange(value, allowZero: true, nameof(BottomPlateFraction)); }

    /// <summary>The capacitance from the top plate to the substrate as a fraction of the nominal capacitance, without a unit.</summary>
    public double TopPlateFraction { get; init => field = Guard.InRange(value, allowZero: true, nameof(TopPlateFraction)); }

    /// <summary>Series resistance times active area in ohm square metres (Ω·m²).</summary>
    public double EsrOhmSquareMetres { get; init => field = Guard.InRange(value, allowZero: true, nameof(EsrOhmSquareMetres)); }

    /// <summary>Leakage at the rated voltage per active area in amperes per square metre (A/m²).</summary>
    public double LeakageAmperesPerSquareMetre { get; init => field = Guard.InRange(value, allowZero: true, nameof(LeakageAmperesPerSquareMetre)); }

    /// <summary>Factor on the area of each capacitor of a stack, without a unit: above 1 for wells of their own.</summary>
    public double StackAreaFactor { get; init => field = SwitchDevice.Positive(value, nameof(StackAreaFactor)); } = 1;

    /// <summary>Spacing in metres (m) that a capacitor keeps to its neighbours; one of active area A takes (√A + spacing)².</summary>
    public double GuardMetres { get; init => field = Guard.InRange(value, allowZero: true, nameof(GuardMetres)); }

    internal Fraction ExactRating => ExactDecimal.Of(RatedVolts);

    /// <summary>
    /// Capacitance per active area in farads per square metre (F/m²) at a voltage: straight lines between the points of
    /// <see cref="DensityAgainstBias"/>, which rise and fall only where the points do, and its ends beyond them.
    /// </summary>
    /// <param name="volts">Positive minus bottom plate in volts (V).</param>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is not finite.</exception>
    public double FaradsPerSquareMetreAt(double volts)
    {
        if (!double.IsFinite(volts))
        {
            throw new ArgumentOutOfRangeException(nameof(volts), volts, "Expected a finite voltage.");
        }

        return _density is null ? FaradsPerSquareMetre
            : volts <= DensityAgainstBias[0].Volts ? DensityAgainstBias[0].FaradsPerSquareMetre
            : volts >= DensityAgainstBias[^1].Volts ? DensityAgainstBias[^1].FaradsPerSquareMetre
            : _density.Interpolate(volts);
    }

    /// <summary>The name and the rating.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name} ({RatedVolts:G6} V)");

    /// <summary>What it is at a corner: every density by the factor, so that plates, a fraction of it, go along.</summary>
    internal CapacitorDevice At(Corner corner) => this with
    {
        FaradsPerSquareMetre = FaradsPerSquareMetre * corner.CapacitanceFactor,
        DensityAgainstBias = [.. DensityAgainstBias.Select(p => p with { FaradsPerSquareMetre = p.FaradsPerSquareMetre * corner.CapacitanceFactor })],
        EsrOhmSquareMetres = EsrOhmSquareMetres * corner.ResistanceFactor,
    };

    private static LinearSpline? SplineOf(IReadOnlyList<DensityPoint> points)
    {
        if (points.Count == 1)
        {
            throw new ArgumentException("Expected a density at no voltage or at two at least, but got one.", nameof(points));
        }

        for (int i = 0; i < points.Count; i++)
        {
            SwitchDevice.Positive(points[i].FaradsPerSquareMetre, nameof(points));
            if (!double.IsFinite(points[i].Volts) || (i > 0 && points[i].Volts <= points[i - 1].Volts))
            {
                throw new ArgumentException(FormattableString.Invariant($"Expected finite voltages that rise from point to point, but got {points[i].Volts} V at index {i}."), nameof(points));
            }
        }

        return points.Count == 0 ? null : LinearSpline.InterpolateSorted([.. points.Select(p => p.Volts)], [.. points.Select(p => p.FaradsPerSquareMetre)]);
    }
}
