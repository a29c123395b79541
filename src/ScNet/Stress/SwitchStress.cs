using Fractions;

namespace ScNet.Stress;

/// <summary>The voltages that one switch blocks: in one mode, at one change of mode, or over all of these.</summary>
/// <remarks>A voltage is the first terminal's potential minus the second's.</remarks>
public sealed class SwitchStress
{
    private readonly Func<int, PerPhase<VoltageSpan>> _phases;
    private readonly int _position;

    private SwitchStress(
        Converter converter, int position, StressExtreme? positive, StressExtreme? negative, bool isFloating, bool isDetermined,
        IReadOnlyList<UndeterminedStress> undetermined, Func<int, PerPhase<VoltageSpan>> phases)
    {
        _position = position;
        _phases = phases;
        Switch = converter.Switches[position];
        PeakPositive = positive;
        PeakNegative = negative;
        IsFloating = isFloating;
        IsDetermined = isDetermined;
        Places = undetermined;
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

    /// <summary>Whether it must block both ways, as far as is known: a device with its body tied to one terminal does not.</summary>
    public bool BlocksBothWays => PeakPositive is not null && PeakNegative is not null;

    /// <summary>Whether in some phase a terminal floats, so that its voltage is bounded only.</summary>
    public bool IsFloating { get; }

    /// <summary>Whether its voltage is bounded in every phase; the extremes else speak of the other phases only. False where no mode has a result.</summary>
    public bool IsDetermined { get; }

    /// <summary>Where nothing bounds its voltage, and why: "mode 1/3, phase 2, as fly3 idles".</summary>
    public IReadOnlyList<string> Undetermined => [.. Places.Select(p => p.ToString())];

    /// <summary>The same as places.</summary>
    internal IReadOnlyList<UndeterminedStress> Places { get; }

    /// <summary>
    /// The bounds in each phase of the one mode: with one value where the voltage is fixed. Without an entry where
    /// the stress is one over several modes. Of a change of mode found anew each time they are asked for, as there may be many changes.
    /// </summary>
    public PerPhase<VoltageSpan> Phases => _phases(_position);

    /// <summary>The largest magnitude in volts, exactly; zero where there is none.</summary>
    internal Fraction Magnitude => Peak?.ExactVolts.Abs() ?? Fraction.Zero;

    /// <summary>The name of the switch, both extremes, and what is not known.</summary>
    public override string ToString() =>
        $"{Switch.Name}: {PeakPositive?.ToString() ?? "never positive"}; {PeakNegative?.ToString() ?? "never negative"}"
        + (IsDetermined ? string.Empty : $"; {UndeterminedStress.Text(Places)}");

    /// <summary>The stress in one mode or at one change.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="switch">The position of the switch.</param>
    /// <param name="phases">The bounds of its voltage in each phase.</param>
    /// <param name="mode">The mode; at a change the new one.</param>
    /// <param name="from">At a change the old mode.</param>
    /// <param name="inputVolts">The input voltages.</param>
    /// <param name="exactMaximumInput">Their maximum as the decimal written.</param>
    /// <param name="reason">Why nothing bounds the voltage of the switch at a position in a phase from 0.</param>
    /// <param name="find">Gives the bounds again of the switch at a position; they are not kept.</param>
    /// <param name="isLeftToLosses">Whether the mode leaves the voltage of a capacitor to losses.</param>
    internal static SwitchStress Of(
        Converter converter, int @switch, ReadOnlySpan<VoltageSpan> phases, Mode mode, Mode? from, Interval<double> inputVolts, Fraction exactMaximumInput,
        Func<int, int, (IReadOnlyList<Capacitor> Idle, IReadOnlyList<string> Floating)> reason, Func<int, PerPhase<VoltageSpan>> find, Predicate<Capacitor>? isLeftToLosses = null)
    {
        int high = -1, low = -1;
        bool isFloating = false;
        List<UndeterminedStress>? undetermined = null;
        for (int j = 0; j < phases.Length; j++)
        {
            isFloating |= phases[j].Basis == VoltageBasis.Floating;
            if (!phases[j].IsDetermined)
            {
                (IReadOnlyList<Capacitor> idle, IReadOnlyList<string> floating) = reason(@switch, j);
                (undetermined ??= []).Add(new UndeterminedStress(mode, from, j + 1, idle, floating) { IsLeftToLosses = isLeftToLosses is not null && idle.Any(c => isLeftToLosses(c)) });
                continue;
            }

            Interval<Fraction> span = phases[j].PerVoltOfInput;
            high = span.Maximum!.Value.IsPositive && (high < 0 || span.Maximum!.Value > phases[high].PerVoltOfInput.Maximum!.Value) ? j : high;
            low = span.Minimum!.Value.IsNegative && (low < 0 || span.Minimum!.Value < phases[low].PerVoltOfInput.Minimum!.Value) ? j : low;
        }

        return new SwitchStress(
            converter,
            @switch,
            high < 0 ? null : At(phases[high].PerVoltOfInput.Maximum!.Value, high, phases[high].Basis),
            low < 0 ? null : At(phases[low].PerVoltOfInput.Minimum!.Value, low, phases[low].Basis),
            isFloating,
            undetermined is null,
            undetermined is null ? [] : [.. undetermined],
            find);

        StressExtreme At(Fraction value, int phase, VoltageBasis basis) => new(value, inputVolts, exactMaximumInput, mode, from, phase + 1, basis);
    }

    /// <summary>The worst of several stresses of one switch; undetermined where nothing is said of it.</summary>
    internal static SwitchStress Worst(Converter converter, int @switch, IReadOnlyCollection<SwitchStress> stresses) => new(
        converter,
        @switch,
        stresses.Select(s => s.PeakPositive).OfType<StressExtreme>().MaxBy(e => e.ExactVolts),
        stresses.Select(s => s.PeakNegative).OfType<StressExtreme>().MinBy(e => e.ExactVolts),
        stresses.Any(s => s.IsFloating),
        stresses.Count > 0 && stresses.All(s => s.IsDetermined),
        [.. stresses.SelectMany(s => s.Places)],
        _ => new PerPhase<VoltageSpan>([], converter.Phases.Names));
}
