using System.Numerics;
using Fractions;
using ScNet.Stress;

namespace ScNet.Devices;

/// <summary>The verdict on one element in one mode, at the changes of mode, or over all of these.</summary>
/// <remarks>
/// A stack is taken to share its voltage equally in every phase (static balance). What keeps it so, such
/// as its own capacitances, balancing resistors or rails at its inner nodes, is for the designer to
/// provide. Ripple, load and spikes are not in the voltage.
/// </remarks>
public sealed class RatingVerdict
{
    private RatingVerdict(
        string element, Mode? mode, RatingOutcome outcome, int stackCount, double? volts, double ratedVolts, bool isLowerBound, IReadOnlyList<UndeterminedStress> undetermined)
    {
        Element = element;
        Mode = mode;
        Outcome = outcome;
        StackCount = stackCount;
        Volts = volts;
        RatedVolts = ratedVolts;
        IsLowerBound = isLowerBound;
        Places = undetermined;
    }

    /// <summary>The name of the switch or capacitor.</summary>
    public string Element { get; }

    /// <summary>The mode; null for a verdict on all changes, or on everything.</summary>
    public Mode? Mode { get; }

    /// <summary>The outcome.</summary>
    public RatingOutcome Outcome { get; }

    /// <summary>
    /// The devices in series that the voltage takes: the smallest whole number not below voltage over
    /// rating, at least 1, whether the limit allows it or not. Where <see cref="IsLowerBound"/>, it may take more.
    /// </summary>
    public int StackCount { get; }

    /// <summary>The largest magnitude of the determined voltages in volts (V); null where none is determined.</summary>
    public double? Volts { get; }

    /// <summary>Whether voltage and stack are lower bounds, as some voltage is undetermined.</summary>
    public bool IsLowerBound { get; }

    /// <summary>Where nothing bounds the voltage, and why. Empty where all is known, and where no mode has a result.</summary>
    public IReadOnlyList<string> Undetermined => [.. Places.Select(p => p.ToString())];

    /// <summary>The same as places.</summary>
    internal IReadOnlyList<UndeterminedStress> Places { get; }

    /// <summary>The voltage in volts (V) that one device withstands.</summary>
    public double RatedVolts { get; }

    /// <summary>The share of each device of the stack in volts (V); null where no voltage is determined.</summary>
    public double? VoltsPerDevice => Volts / StackCount;

    /// <summary>"s1, mode 1/3: 2.4 V of 1.2 V, needs a stack of 2", or "s1: 2.4 V of 1.2 V, at least a stack of 2; undetermined in mode 1/3, phase 2, as fly3 idles".</summary>
    public override string ToString()
    {
        string mode = Mode is null ? string.Empty : $", mode {Mode}";
        string stack = FormattableString.Invariant($"{(IsLowerBound ? "at least " : string.Empty)}a stack of {StackCount}");
        string outcome = Outcome switch
        {
            RatingOutcome.WithinRating => ", within rating",
            RatingOutcome.NeedsStack => $", needs {stack}",
            RatingOutcome.NotAllowed => $", not allowed, as it needs {stack}",
            _ when StackCount > 1 => $", {stack}",
            _ => string.Empty,
        };
        string places = !IsLowerBound ? string.Empty
            : $"{(outcome.Length > 0 || Volts is not null ? ";" : ",")} {UndeterminedStress.Text(Places)}";
        string volts = Volts is { } known ? FormattableString.Invariant($"{known:G6} V") : "?";
        return FormattableString.Invariant($"{Element}{mode}: {volts} of {RatedVolts:G6} V{outcome}{places}");
    }

    /// <summary>The verdict on one element.</summary>
    /// <param name="element">Its name.</param>
    /// <param name="mode">The mode, or null.</param>
    /// <param name="volts">The largest magnitude of the determined voltages; null where none is determined.</param>
    /// <param name="isLowerBound">Whether some voltage is undetermined.</param>
    /// <param name="undetermined">Where.</param>
    /// <param name="rating">The voltage that one device withstands.</param>
    /// <param name="maximumInSeries">The largest stack that is allowed.</param>
    internal static RatingVerdict Of(
        string element, Mode? mode, Fraction? volts, bool isLowerBound, IReadOnlyList<UndeterminedStress> undetermined, Fraction rating, int maximumInSeries)
    {
        // whole volts over rating, rounded up: exact, so that a third of 3.6 V needs one device of 1.2 V
        Fraction ratio = ((volts ?? Fraction.Zero) / rating).Reduce();
        BigInteger count = BigInteger.Max(1, (ratio.Numerator + ratio.Denominator - 1) / ratio.Denominator);
        int stack = count > int.MaxValue ? int.MaxValue : (int)count;
        RatingOutcome outcome = stack > maximumInSeries ? RatingOutcome.NotAllowed
            : isLowerBound ? RatingOutcome.Undetermined
            : stack > 1 ? RatingOutcome.NeedsStack
            : RatingOutcome.WithinRating;
        return new RatingVerdict(element, mode, outcome, stack, volts?.ToDouble(), rating.ToDouble(), isLowerBound, undetermined);
    }
}
