using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Design.Regulation;

/// <summary>A converter cut into n equal parts of the same total area that work one after the other.</summary>
/// <remarks>
/// Ratio and output impedance stay about as they are, ripple and the ripple of the input current fall. Both come from the exact
/// waveforms of all parts on one load current, not from an estimate. A stiff load is replaced by the load current: what holds the output up
/// are the capacitors of the netlist. Derivation: docs/theory/parts-steps-and-schedules.md. Cost: a periodic solution of n times the elements.
/// </remarks>
public sealed class Interleaving
{
    /// <summary>The most parts that <see cref="Least"/> tries where nothing else is said.</summary>
    public const int DefaultMaximumParts = 16;

    // the two ways are the same for an odd number of parts of a mode of two like halves, but for rounding
    private const double Smoother = 1 - 1e-9;

    private static readonly Fraction s_half = new(1, 2);

    private Interleaving(int parts, Fraction spread, PeriodicSteadyState steady)
    {
        Parts = parts;
        SpreadOfPeriod = spread;
        Steady = steady;
    }

    /// <summary>The number of parts, at least 1.</summary>
    public int Parts { get; }

    /// <summary>
    /// The share of the period over which the parts are spread: 1, or 1/2 where that is smoother, since a mode that delivers alike in
    /// both halves of its period repeats itself after half of it.
    /// </summary>
    public Fraction SpreadOfPeriod { get; }

    /// <summary>The converter of all parts.</summary>
    public Converter Converter => Steady.Converter;

    /// <summary>Its periodic steady state.</summary>
    public PeriodicSteadyState Steady { get; }

    /// <summary>Ripple of the output, peak to peak, in volts (V); null where nothing holds the output up in some phase.</summary>
    public double? OutputRippleVolts => Steady.OutputRippleVolts;

    /// <summary>Ripple of the input current, peak to peak, in amperes (A).</summary>
    public double InputRippleAmperes => Steady.InputRippleAmperes;

    /// <summary>Cuts a mode into parts.</summary>
    /// <param name="converter">The converter as a whole.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="point">The operating point of the whole.</param>
    /// <param name="parts">The number of parts, at least 1.</param>
    /// <exception cref="ScNetException">The network of all parts has no result or is too large.</exception>
    public static Interleaving Of(Converter converter, Mode mode, OperatingPoint point, int parts)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ArgumentNullException.ThrowIfNull(mode);
        ArgumentNullException.ThrowIfNull(point);
        ArgumentOutOfRangeException.ThrowIfLessThan(parts, 1);
        if (mode.UntilZeroPhases.Any(p => p.Count > 0))
        {
            throw new ArgumentException($"Expected phases of fixed length, but an inductor's current ends a phase of mode '{mode.Name}'.", nameof(mode));
        }

        Interleaving even = Spread(Fraction.One);
        return parts > 1 && converter.Phases.Count % 2 == 0 && Spread(s_half) is var half && half.OutputRippleVolts < Smoother * even.OutputRippleVolts ? half : even;

        Interleaving Spread(Fraction spread)
        {
            Converter whole = InterleavedParts.Of(converter, mode, parts, spread);
            return new Interleaving(parts, spread, PeriodicSteadyState.Of(ModeAnalysis.Of(whole, whole.Modes[0]), point));
        }
    }

    /// <summary>Tries one part, two, three, and so on until the ripple is as small as it may be.</summary>
    /// <param name="converter">The converter as a whole.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="point">The operating point of the whole.</param>
    /// <param name="rippleVolts">Ripple of the output, peak to peak, in volts (V) that is allowed.</param>
    /// <param name="maximumParts">The most parts to try, at least 1.</param>
    /// <returns>Every number of parts tried, in order; the last one has the ripple allowed if any has.</returns>
    /// <exception cref="ScNetException">The network of all parts has no result or is too large.</exception>
    public static IReadOnlyList<Interleaving> Least(
        Converter converter, Mode mode, OperatingPoint point, double rippleVolts, int maximumParts = DefaultMaximumParts)
    {
        _ = Guard.InRange(rippleVolts, allowZero: false, nameof(rippleVolts));
        ArgumentOutOfRangeException.ThrowIfLessThan(maximumParts, 1);
        List<Interleaving> tried = [];
        do
        {
            tried.Add(Of(converter, mode, point, tried.Count + 1));
        }
        while (tried.Count < maximumParts && !(tried[^1].OutputRippleVolts <= rippleVolts));
        return [.. tried];
    }

    /// <summary>Parts and ripples.</summary>
    public override string ToString() =>
        $"{UnitText.Count(Parts, "part", "parts")}: {UnitText.Of(OutputRippleVolts, "V")} of output ripple, {UnitText.Of(InputRippleAmperes, "A")} of input ripple";
}
