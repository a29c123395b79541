using Fractions;

namespace ScNet.Stress;

/// <summary>
/// The instant at which a converter changes from one mode to another: the capacitors (and a stiff output)
/// still hold the voltages of the old mode while the switches stand as in some phase of the new one.
/// </summary>
/// <remarks>
/// Where capacitor loops conflict, the voltages depend on the resistances of the closed switches; the
/// spans given hold for any positive resistances and are the tightest that do:
/// docs/theory/stress.md, "The instant of a change". The change may happen at the end of any phase of the
/// old mode and lead into any phase of the new one.
/// </remarks>
public sealed class ModeChange
{
    private ModeChange(ModeStress from, ModeStress to, InputVoltageRange input)
    {
        From = from.Mode;
        To = to.Mode;
        Input = input;
        Converter converter = from.Analysis.Converter;
        ChangedPhase[] phases = [.. converter.Phases.Select((_, j) => new ChangedPhase(from, To, j))];
        Surges = [.. phases.SelectMany(p => p.Surges(input))];
        List<SwitchStress> open = [];
        List<SwitchStress> closed = [];
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            VoltageSpan[] spans = [.. phases.Select(p => p.Across(s))];
            bool[] isClosed = [.. converter.Phases.Select(p => To.ClosedPhases[s].Contains(p.Number))];
            open.Add(Stress(converter.Switches[s], spans, j => !isClosed[j]));
            closed.Add(Stress(converter.Switches[s], spans, j => isClosed[j]));
        }

        OpenSwitches = open;
        ClosedSwitches = closed;
        IsExact = phases.All(p => p.IsExact);

        SwitchStress Stress(Switch @switch, VoltageSpan[] spans, Predicate<int> counts) => SwitchStress.Of(
            @switch, [.. spans.Select((span, j) => counts(j) ? span : VoltageSpan.Fixed(Fraction.Zero))], To, From, input);
    }

    /// <summary>The old mode, whose voltages the capacitors hold.</summary>
    public Mode From { get; }

    /// <summary>The new mode, as whose phases the switches stand.</summary>
    public Mode To { get; }

    /// <summary>The input voltages at which the change can happen: those common to both modes, or between them.</summary>
    public InputVoltageRange Input { get; }

    /// <summary>What each switch blocks, index as in <see cref="Converter.Switches"/>; zero in phases in which it is closed.</summary>
    public IReadOnlyList<SwitchStress> OpenSwitches { get; }

    /// <summary>What each closed switch takes of the surges, index as in <see cref="Converter.Switches"/>; zero in phases in which it is open.</summary>
    public IReadOnlyList<SwitchStress> ClosedSwitches { get; }

    /// <summary>A set of conflicting loops, one per closed switch (or series resistance) that closes one, phase after phase; every other is composed of these.</summary>
    public IReadOnlyList<LoopSurge> Surges { get; }

    /// <summary>The largest voltage in volts (V) that any open switch blocks; null where one is undetermined.</summary>
    public double? LargestStressVolts => Largest(OpenSwitches)?.ToDouble();

    /// <summary>The largest voltage in volts (V) that any closed switch can take of the surges; null where one is undetermined.</summary>
    public double? LargestSurgeVolts => Largest(ClosedSwitches)?.ToDouble();

    /// <summary>
    /// Whether the spans of surges are the tightest ones. Where a phase has too many paths of closed
    /// switches to look at, they are safe but wider.
    /// </summary>
    public bool IsExact { get; }

    /// <summary>Finds the stress of a change.</summary>
    /// <param name="from">The old mode.</param>
    /// <param name="to">The new mode, of the same converter; it may be the old one.</param>
    /// <exception cref="ArgumentException">The modes belong to different converters.</exception>
    public static ModeChange Of(ModeStress from, ModeStress to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        return ReferenceEquals(from.Analysis.Converter, to.Analysis.Converter)
            ? new ModeChange(from, to, from.Input.Between(to.Input))
            : throw new ArgumentException($"Expected a mode of '{from.Analysis.Converter.Name}', but mode '{to.Mode}' is one of '{to.Analysis.Converter.Name}'.", nameof(to));
    }

    /// <summary>Both modes, the largest stress and the largest surge.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{From} to {To}: open switches block {Text(LargestStressVolts)}, closed ones take {Text(LargestSurgeVolts)}");

    /// <summary>The larger of both, exactly; null where it is undetermined.</summary>
    internal Fraction? Cost(ModeOrderCriterion criterion) => criterion switch
    {
        ModeOrderCriterion.Stress => Largest(OpenSwitches),
        ModeOrderCriterion.Surge => Largest(ClosedSwitches),
        _ => Largest([.. OpenSwitches, .. ClosedSwitches]),
    };

    private static Fraction? Largest(IReadOnlyList<SwitchStress> switches)
    {
        Fraction largest = Fraction.Zero;
        foreach (SwitchStress stress in switches)
        {
            if (stress.IsUndetermined)
            {
                return null;
            }

            largest = stress.Magnitude > largest ? stress.Magnitude : largest;
        }

        return largest;
    }

    private static string Text(double? volts) => volts is { } known ? FormattableString.Invariant($"{known:G6} V") : "? V";
}
