using System.Numerics;
using Fractions;

namespace ScNet.Devices;

/// <summary>The verdict on one element in one mode, at the changes of mode, or over all of these.</summary>
/// <remarks>
/// A stack is taken to share its voltage equally in every phase (static balance). What keeps it so, such
/// as its own capacitances, balancing resistors or rails at its inner nodes, is for the designer to
/// provide. Ripple, load and spikes are not in the voltage.
/// </remarks>
public sealed class RatingVerdict
{
    private RatingVerdict(string element, Mode? mode, RatingOutcome outcome, int stackCount, double? volts, double ratedVolts)
    {
        Element = element;
        Mode = mode;
        Outcome = outcome;
        StackCount = stackCount;
        Volts = volts;
        RatedVolts = ratedVolts;
    }

    /// <summary>The name of the switch or capacitor.</summary>
    public string Element { get; }

    /// <summary>The mode; null for a verdict on all changes, or on everything.</summary>
    public Mode? Mode { get; }

    /// <summary>The outcome.</summary>
    public RatingOutcome Outcome { get; }

    /// <summary>
    /// The devices in series that the voltage takes: the smallest whole number not below voltage over
    /// rating, at least 1, whether the limit allows it or not. Where the outcome is undetermined, a lower bound.
    /// </summary>
    public int StackCount { get; }

    /// <summary>The largest magnitude of the voltage in volts (V); null where none is determined.</summary>
    public double? Volts { get; }

    /// <summary>The voltage in volts (V) that one device stands.</summary>
    public double RatedVolts { get; }

    /// <summary>The share of each device of the stack in volts (V); null where no voltage is determined.</summary>
    public double? VoltsPerDevice => Volts / StackCount;

    /// <summary>"s1, mode 1/3: 2.4 V of 1.2 V, needs a stack of 2".</summary>
    public override string ToString()
    {
        string mode = Mode is null ? string.Empty : $", mode {Mode}";
        string outcome = Outcome switch
        {
            RatingOutcome.WithinRating => "within rating",
            RatingOutcome.NeedsStack => FormattableString.Invariant($"needs a stack of {StackCount}"),
            RatingOutcome.NotAllowed => FormattableString.Invariant($"not allowed, as it needs a stack of {StackCount}"),
            _ => "undetermined",
        };
        string volts = Volts is { } known ? FormattableString.Invariant($"{known:G6} V") : "?";
        return FormattableString.Invariant($"{Element}{mode}: {volts} of {RatedVolts:G6} V, {outcome}");
    }

    internal static RatingVerdict Of(
        string element, Mode? mode, Fraction magnitude, bool isKnown, bool isUndetermined, Fraction rating, int mostInSeries)
    {
        // whole volts over rating, rounded up: exact, so that a third of 3.6 V needs one device of 1.2 V
        Fraction ratio = (magnitude / rating).Reduce();
        BigInteger count = BigInteger.Max(1, (ratio.Numerator + ratio.Denominator - 1) / ratio.Denominator);
        int stack = count > int.MaxValue ? int.MaxValue : (int)count;
        RatingOutcome outcome = stack > mostInSeries ? RatingOutcome.NotAllowed
            : isUndetermined ? RatingOutcome.Undetermined
            : stack > 1 ? RatingOutcome.NeedsStack
            : RatingOutcome.WithinRating;
        return new RatingVerdict(element, mode, outcome, stack, isKnown ? magnitude.ToDouble() : null, rating.ToDouble());
    }
}
