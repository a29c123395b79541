using Fractions;

namespace ScNet.Stress;

/// <summary>The voltages that one switch blocks: in one mode, at one change of mode, or over all of these.</summary>
/// <remarks>A voltage is the first terminal's potential minus the second's.</remarks>
public sealed class SwitchStress
{
    private SwitchStress(
        Switch @switch, StressExtreme? positive, StressExtreme? negative, bool isFloating, bool isUndetermined,
        IReadOnlyList<UndeterminedStress> undetermined, IReadOnlyList<VoltageSpan> phases)
    {
        Switch = @switch;
        PeakPositive = positive;
        PeakNegative = negative;
        IsFloating = isFloating;
        IsUndetermined = isUndetermined;
        Undetermined = undetermined;
        Phases = phases;
    }

    /// <summary>The switch.</summary>
    public Switch Switch { get; }

    /// <summary>The largest positive voltage; null where it is never positive.</summary>
    public StressExtreme? PeakPositive { get; }

    /// <summary>The negative voltage of the largest magnitude; null where it is never negative.</summary>
    public StressExtreme? PeakNegative { get; }

    /// <summary>The extreme of the larger magnitude, the positive one on a tie; null where the switch never has a voltage.</summary>
    public StressExtreme? Peak =>
        PeakNegative is { } negative && (PeakPositive is not { } positive || positive.ExactVolts < -negative.ExactVolts) ? negative : PeakPositive;

    /// <summary>Which polarities it must block, as far as they are known.</summary>
    public BlockingDirection Direction =>
        (PeakPositive is null ? BlockingDirection.None : BlockingDirection.Positive, PeakNegative) switch
        {
            (var positive, null) => positive,
            (BlockingDirection.Positive, _) => BlockingDirection.Both,
            _ => BlockingDirection.Negative,
        };

    /// <summary>Whether in some phase a terminal floats, so that its voltage is bounded only.</summary>
    public bool IsFloating { get; }

    /// <summary>Whether in some phase nothing bounds its voltage, or no mode has a result; the extremes then speak of the other phases only.</summary>
    public bool IsUndetermined { get; }

    /// <summary>Where nothing bounds its voltage, and why.</summary>
    public IReadOnlyList<UndeterminedStress> Undetermined { get; }

    /// <summary>
    /// The bounds in each phase of the one mode, phase 1 at index 0: with one value where the voltage is
    /// fixed. Empty where the stress is one over several modes.
    /// </summary>
    public IReadOnlyList<VoltageSpan> Phases { get; }

    /// <summary>The largest magnitude in volts, exactly; zero where there is none.</summary>
    internal Fraction Magnitude => Peak?.ExactVolts.Abs() ?? Fraction.Zero;

    /// <summary>The name of the switch, both extremes, and what is not known.</summary>
    public override string ToString() =>
        $"{Switch.Name}: {PeakPositive?.ToString() ?? "never positive"}; {PeakNegative?.ToString() ?? "never negative"}"
        + (IsUndetermined ? $"; {UndeterminedStress.Text(Undetermined)}" : string.Empty);

    /// <summary>The stress in one mode or at one change.</summary>
    /// <param name="switch">The switch.</param>
    /// <param name="phases">The bounds of its voltage in each phase.</param>
    /// <param name="mode">The mode; at a change the new one.</param>
    /// <param name="from">At a change the old mode.</param>
    /// <param name="inputVolts">The input voltages.</param>
    /// <param name="exactMaximumInput">Their maximum as the decimal written.</param>
    /// <param name="reason">Why nothing bounds the voltage in a phase from 0.</param>
    internal static SwitchStress Of(
        Switch @switch, VoltageSpan[] phases, Mode mode, Mode? from, Interval<double> inputVolts, Fraction exactMaximumInput,
        Func<int, (IReadOnlyList<Capacitor> Idle, IReadOnlyList<string> Floating)> reason)
    {
        int high = -1, low = -1;
        List<UndeterminedStress> undetermined = [];
        for (int j = 0; j < phases.Length; j++)
        {
            if (!phases[j].IsDetermined)
            {
                (IReadOnlyList<Capacitor> idle, IReadOnlyList<string> floating) = reason(j);
                undetermined.Add(new UndeterminedStress(mode, from, j + 1, idle, floating));
                continue;
            }

            Interval<Fraction> span = phases[j].PerVoltOfInput;
            high = span.Maximum.IsPositive && (high < 0 || span.Maximum > phases[high].PerVoltOfInput.Maximum) ? j : high;
            low = span.Minimum.IsNegative && (low < 0 || span.Minimum < phases[low].PerVoltOfInput.Minimum) ? j : low;
        }

        return new SwitchStress(
            @switch,
            high < 0 ? null : At(phases[high].PerVoltOfInput.Maximum, high),
            low < 0 ? null : At(phases[low].PerVoltOfInput.Minimum, low),
            phases.Any(p => p.Basis == VoltageBasis.Floating),
            undetermined.Count > 0,
            undetermined,
            phases);

        StressExtreme At(Fraction value, int phase) => new(value, inputVolts, exactMaximumInput, mode, from, phase + 1, phases[phase].Basis);
    }

    /// <summary>The worst of several stresses of one switch; undetermined where nothing is said of it.</summary>
    internal static SwitchStress Worst(Switch @switch, IReadOnlyCollection<SwitchStress> stresses) => new(
        @switch,
        stresses.Select(s => s.PeakPositive).OfType<StressExtreme>().MaxBy(e => e.ExactVolts),
        stresses.Select(s => s.PeakNegative).OfType<StressExtreme>().MinBy(e => e.ExactVolts),
        stresses.Any(s => s.IsFloating),
        stresses.Count == 0 || stresses.Any(s => s.IsUndetermined),
        [.. stresses.SelectMany(s => s.Undetermined)],
        []);
}
