using ScNet.Design.Losses;

namespace ScNet.Design.Regulation;

/// <summary>One way to make the output from the input, prepared once, then asked at any operating point.</summary>
/// <remarks>A mode of a sized switched-capacitor converter (its frequency regulates), of a stage with an inductor (its duty does), or a linear regulator: <see cref="RegulatedModes"/> makes them.</remarks>
public abstract class RegulatedMode
{
    private protected RegulatedMode(string name) => Name = name;

    /// <summary>The name, for people.</summary>
    public string Name { get; }

    /// <summary>The losses of the sized converter behind it; null for a linear regulator and where they change with the duty.</summary>
    public virtual LossModel? Model => null;

    /// <summary>The ideal conversion ratio; null where the duty sets it.</summary>
    public virtual Quantity? Ratio => Model?.Analysis.Ratio;

    /// <summary>Finds what holds the output and the losses there. Safe on many threads, without allocation.</summary>
    /// <param name="inputVolts">Input voltage in volts (V).</param>
    /// <param name="outputVolts">Output voltage in volts (V) to be held; for a negative ratio its magnitude.</param>
    /// <param name="loadAmperes">Load current in amperes (A), above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite and positive.</exception>
    public abstract RegulatedPoint Hold(double inputVolts, double outputVolts, double loadAmperes);

    /// <summary>Why it does not hold the output there, in words with figures; empty where it does.</summary>
    /// <inheritdoc cref="Hold" path="/param"/>
    public abstract string ReasonAt(double inputVolts, double outputVolts, double loadAmperes);

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    /// <summary>The outcome alone, for less where it can be had for less.</summary>
    internal virtual RegulationOutcome OutcomeAt(double inputVolts, double outputVolts, double loadAmperes) => Hold(inputVolts, outputVolts, loadAmperes).Outcome;

    /// <summary>The factor, about, by which the load is too large there: at most 1 where it is held, infinite where no load is small enough.</summary>
    internal virtual double LackAt(double inputVolts, double outputVolts, double loadAmperes) =>
        Hold(inputVolts, outputVolts, loadAmperes).IsHeld ? 1 : double.PositiveInfinity;

    /// <summary>The network of values that runs at a duty, or at any where none regulates; null for what has none, or not at every duty.</summary>
    internal virtual (Converter Converter, Mode Mode)? NetworkAt(double duty) => null;

    /// <summary>An input power in watts (W) that it cannot do with less of.</summary>
    internal virtual double LeastInputWatts(double inputVolts, double outputVolts, double loadAmperes) => outputVolts * loadAmperes;

    private protected static void Require(double inputVolts, double outputVolts, double loadAmperes)
    {
        _ = Guard.InRange(inputVolts, allowZero: false, nameof(inputVolts));
        _ = Guard.InRange(outputVolts, allowZero: false, nameof(outputVolts));
        _ = Guard.InRange(loadAmperes, allowZero: false, nameof(loadAmperes));
    }
}
