using Fractions;

namespace ScNet.Stress;

/// <summary>The voltages that one switch blocks: in one mode, at one change of mode, or over all of these.</summary>
/// <remarks>A voltage is the first terminal's potential minus the second's.</remarks>
public sealed class SwitchStress
{
    internal SwitchStress(
        Switch @switch, StressExtreme? largestPositive, StressExtreme? largestNegative, bool isFloating, bool isUndetermined, VoltageSpan[] phases)
    {
        Switch = @switch;
        LargestPositive = largestPositive;
        LargestNegative = largestNegative;
        IsFloating = isFloating;
        IsUndetermined = isUndetermined;
        Phases = phases;
    }

    /// <summary>The switch.</summary>
    public Switch Switch { get; }

    /// <summary>The largest positive voltage; null where it is never positive.</summary>
    public StressExtreme? LargestPositive { get; }

    /// <summary>The negative voltage of the largest magnitude; null where it is never negative.</summary>
    public StressExtreme? LargestNegative { get; }

    /// <summary>The extreme of the larger magnitude, the positive one on a tie; null where the switch never has a voltage.</summary>
    public StressExtreme? Largest => LargestNegative is { } negative
        && (LargestPositive is not { } positive || positive.PerVoltOfInput.ToFraction() * Input(positive) < -negative.PerVoltOfInput.ToFraction() * Input(negative))
            ? negative
            : LargestPositive;

    /// <summary>Which polarities it must block, as far as they are known.</summary>
    public BlockingDirection Direction =>
        (LargestPositive is null ? BlockingDirection.None : BlockingDirection.Positive, LargestNegative) switch
        {
            (var positive, null) => positive,
            (BlockingDirection.Positive, _) => BlockingDirection.Both,
            _ => BlockingDirection.Negative,
        };

    /// <summary>Whether in some phase a terminal floats, so that its voltage is bounded only.</summary>
    public bool IsFloating { get; }

    /// <summary>Whether in some phase nothing bounds its voltage; the extremes then speak of the other phases only.</summary>
    public bool IsUndetermined { get; }

    /// <summary>
    /// The bounds in each phase of the one mode, phase 1 at index 0: with one value where the voltage is
    /// fixed. Empty where the stress is one over several modes.
    /// </summary>
    public IReadOnlyList<VoltageSpan> Phases { get; }

    /// <summary>The largest magnitude in volts, exactly; zero where there is none.</summary>
    internal Fraction Magnitude => Largest is { } largest ? largest.PerVoltOfInput.ToFraction().Abs() * Input(largest) : Fraction.Zero;

    /// <summary>The name of the switch, both extremes, and what is not known.</summary>
    public override string ToString() =>
        $"{Switch.Name}: {LargestPositive?.ToString() ?? "never positive"}; {LargestNegative?.ToString() ?? "never negative"}"
        + (IsUndetermined ? "; undetermined in some phase" : string.Empty);

    /// <summary>The stress in one mode or at one change.</summary>
    internal static SwitchStress Of(Switch @switch, VoltageSpan[] phases, Mode mode, Mode? from, InputVoltageRange input)
    {
        int high = -1, low = -1;
        for (int j = 0; j < phases.Length; j++)
        {
            VoltageSpan span = phases[j];
            if (!span.IsDetermined)
            {
                continue;
            }

            high = span.Highest.Sign > 0 && (high < 0 || span.Highest.ToFraction() > phases[high].Highest.ToFraction()) ? j : high;
            low = span.Lowest.Sign < 0 && (low < 0 || span.Lowest.ToFraction() < phases[low].Lowest.ToFraction()) ? j : low;
        }

        return new SwitchStress(
            @switch,
            high < 0 ? null : At(phases[high].Highest, high),
            low < 0 ? null : At(phases[low].Lowest, low),
            phases.Any(p => p.Basis == VoltageBasis.Floating),
            phases.Any(p => !p.IsDetermined),
            phases);

        StressExtreme At(Quantity value, int phase) => new(
            value, (value.ToFraction() * input.ExactMaximum).ToDouble(), input.MaximumVolts, mode, from, phase + 1, phases[phase].Basis);
    }

    /// <summary>The worst of several stresses of one switch; undetermined where nothing is said of it.</summary>
    internal static SwitchStress Worst(Switch @switch, IReadOnlyCollection<SwitchStress> stresses) => new(
        @switch,
        stresses.Select(s => s.LargestPositive).OfType<StressExtreme>().MaxBy(e => e.PerVoltOfInput.ToFraction() * Input(e)),
        stresses.Select(s => s.LargestNegative).OfType<StressExtreme>().MinBy(e => e.PerVoltOfInput.ToFraction() * Input(e)),
        stresses.Any(s => s.IsFloating),
        stresses.Count == 0 || stresses.Any(s => s.IsUndetermined),
        []);

    private static Fraction Input(StressExtreme extreme) => Netlists.ExactDecimal.Of(extreme.InputVoltageVolts);
}
