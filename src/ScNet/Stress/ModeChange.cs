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
    private readonly ModeStress _from;

    private ModeChange(ModeStress from, ModeStress to)
    {
        _from = from;
        To = to.Mode;
        InputVolts = InputInterval.Between(from.InputVolts, to.InputVolts);
        Fraction maximumInput = MaximumInput;
        Converter converter = from.Analysis.Converter;
        ChangedPhase[][] phases = Phases();
        var open = new SwitchStress[converter.Switches.Count];
        var closed = new SwitchStress[converter.Switches.Count];
        var spans = new VoltageSpan[phases.Length];
        Func<int, int, (IReadOnlyList<Capacitor>, IReadOnlyList<string>)> reason = (s, j) => phases[j][0].ReasonOf(s);
        Func<int, PerPhase<VoltageSpan>> whileOpen = s => Spans(s, isClosed: false), whileClosed = s => Spans(s, isClosed: true);
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Fill(spans, phases, s, isClosed: false);
            open[s] = SwitchStress.Of(converter, s, spans, To, From, InputVolts, maximumInput, reason, whileOpen);
            Fill(spans, phases, s, isClosed: true);
            closed[s] = SwitchStress.Of(converter, s, spans, To, From, InputVolts, maximumInput, reason, whileClosed);
        }

        OpenSwitches = new NamedList<SwitchStress>(open, converter.Switches.Names);
        ClosedSwitches = new NamedList<SwitchStress>(closed, converter.Switches.Names);
        IsExact = phases.All(corners => corners.All(p => p.IsExact));
    }

    /// <summary>The old mode, whose voltages the capacitors hold.</summary>
    public Mode From => _from.Mode;

    /// <summary>The new mode, as whose phases the switches stand.</summary>
    public Mode To { get; }

    /// <summary>The input voltages in volts (V) at which the change can happen: those common to both modes, or between them.</summary>
    public Interval<double> InputVolts { get; }

    /// <summary>What each switch blocks, by name and by position as in <see cref="Converter.Switches"/>; zero in phases in which it is closed.</summary>
    public NamedList<SwitchStress> OpenSwitches { get; }

    /// <summary>What each closed switch takes of the surges, by name and by position as in <see cref="Converter.Switches"/>; zero in phases in which it is open.</summary>
    public NamedList<SwitchStress> ClosedSwitches { get; }

    /// <summary>A set of conflicting loops, one per closed switch (or series resistance) that closes one, phase after phase; every other is composed of these. Found when first asked for.</summary>
    public IReadOnlyList<LoopSurge> Surges => field ??= [.. Phases().SelectMany((corners, j) => SurgesOf(_from.Analysis.Converter, j + 1, corners, MaximumInput))];

    /// <summary>The largest voltage in volts (V) that any open switch blocks; null where one is undetermined.</summary>
    public double? PeakStressVolts => Peak(OpenSwitches)?.ToDouble();

    /// <summary>The largest voltage in volts (V) that any closed switch can take of the surges; null where one is undetermined.</summary>
    public double? PeakSurgeVolts => Peak(ClosedSwitches)?.ToDouble();

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
            ? new ModeChange(from, to)
            : throw new ArgumentException($"Expected a mode of '{from.Analysis.Converter.Name}', but mode '{to.Mode}' is one of '{to.Analysis.Converter.Name}'.", nameof(to));
    }

    /// <summary>Both modes, the largest stress and the largest surge.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{From} to {To}: open switches block {Text(PeakStressVolts)}, closed ones take {Text(PeakSurgeVolts)}");

    /// <summary>The larger of both, exactly; null where it is undetermined.</summary>
    internal Fraction? Cost(ModeOrderCriterion criterion) => criterion switch
    {
        ModeOrderCriterion.Stress => Peak(OpenSwitches),
        ModeOrderCriterion.Surge => Peak(ClosedSwitches),
        _ => Peak([.. OpenSwitches, .. ClosedSwitches]),
    };

    private Fraction MaximumInput => InputInterval.Exact(InputVolts).Maximum!.Value;

    // the networks are not kept: there may be thousands of changes
    private ChangedPhase[][] Phases() => [.. _from.Analysis.Converter.Phases.Select((_, j) =>
        _from.Corners.Select(corner => new ChangedPhase(_from, corner, To, j)).ToArray())];

    private PerPhase<VoltageSpan> Spans(int @switch, bool isClosed)
    {
        ChangedPhase[][] phases = Phases();
        var spans = new VoltageSpan[phases.Length];
        Fill(spans, phases, @switch, isClosed);
        return new PerPhase<VoltageSpan>(spans, _from.Analysis.Converter.Phases.Names);
    }

    // zero in the phases in which the switch stands the other way
    private void Fill(Span<VoltageSpan> spans, ChangedPhase[][] phases, int @switch, bool isClosed)
    {
        IReadOnlyList<int> closedPhases = To.ClosedPhases[@switch];
        for (int j = 0; j < spans.Length; j++)
        {
            spans[j] = closedPhases.Contains(j + 1) == isClosed ? Across(phases[j], @switch) : VoltageSpan.Fixed(Fraction.Zero);
        }
    }

    // the hull over the voltages of idle capacitors
    private static VoltageSpan Across(ChangedPhase[] corners, int @switch)
    {
        VoltageSpan hull = corners[0].Across(@switch);
        foreach (ChangedPhase corner in corners.AsSpan(1))
        {
            hull = hull.Hull(corner.Across(@switch));
        }

        return hull.Basis == VoltageBasis.Fixed && !hull.PerVoltOfInput.IsPoint ? new VoltageSpan(hull.PerVoltOfInput, VoltageBasis.Idle) : hull;
    }

    // the same loops conflict whatever idle capacitors hold, by other amounts: the largest of each counts
    private static IEnumerable<LoopSurge> SurgesOf(Converter converter, int phase, ChangedPhase[] corners, Fraction maximumInput) => corners
        .SelectMany(corner => corner.Surges())
        .GroupBy(surge => surge.Chord)
        .Select(loop => loop.MaxBy(surge => surge.Surge))
        .Select(surge => new LoopSurge(
            phase,
            surge.Surge,
            (surge.Surge * maximumInput).ToDouble(),
            [.. surge.Switches.Select(s => converter.Switches[s])],
            [.. surge.Capacitors.Select(c => converter.Capacitors[c])]));

    private static Fraction? Peak(IEnumerable<SwitchStress> switches)
    {
        Fraction largest = Fraction.Zero;
        foreach (SwitchStress stress in switches)
        {
            if (!stress.IsDetermined)
            {
                return null;
            }

            largest = stress.Magnitude > largest ? stress.Magnitude : largest;
        }

        return largest;
    }

    private static string Text(double? volts) => volts is { } known ? FormattableString.Invariant($"{known:G6} V") : "? V";
}
