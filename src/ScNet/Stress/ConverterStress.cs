using Fractions;
using ScNet.Analysis;

namespace ScNet.Stress;

/// <summary>The stress of every element of a converter in every mode that has a result, and at every change between two of them.</summary>
public sealed class ConverterStress
{
    private readonly ModeChanges _changes;
    private readonly Lazy<NamedList<SwitchStress>> _switchesAtChanges;

    private ConverterStress(ConverterAnalysis analysis, ModeStress[] modes)
    {
        Analysis = analysis;
        Modes = [.. modes];
        Converter converter = analysis.Converter;
        ModesWithoutResult = [.. analysis.Modes.Where(m => !m.HasResult).Select(m => m.Mode)];
        _changes = new ModeChanges(modes);
        Switches = Worst(i => [.. modes.Select(m => m.Switches[i])]);
        _switchesAtChanges = new(() =>
        {
            FindChanges();
            return Worst(AtChanges);
        });
        Capacitors = new NamedList<CapacitorStress>(
            [.. converter.Capacitors.Select((c, i) => CapacitorStress.Worst(c, [.. modes.Select(m => m.Capacitors[i])]))], converter.Capacitors.Names);

        SwitchStress[] AtChanges(int position)
        {
            var stresses = new SwitchStress[2 * _changes.Count];
            for (int k = 0; k < _changes.Count; k++)
            {
                (stresses[2 * k], stresses[(2 * k) + 1]) = (_changes[k].OpenSwitches[position], _changes[k].ClosedSwitches[position]);
            }

            return stresses;
        }

        NamedList<SwitchStress> Worst(Func<int, SwitchStress[]> stresses) =>
            new([.. converter.Switches.Select((_, i) => SwitchStress.Worst(converter, i, stresses(i)))], converter.Switches.Names);
    }

    /// <summary>The analysis of the converter.</summary>
    public ConverterAnalysis Analysis { get; }

    /// <summary>The stress in each mode that has a result, in the order of <see cref="Converter.Modes"/>.</summary>
    public IReadOnlyList<ModeStress> Modes { get; }

    /// <summary>The modes of which nothing is said, as they have no result.</summary>
    public IReadOnlyList<Mode> ModesWithoutResult { get; }

    /// <summary>
    /// The changes of every ordered pair of different modes, by old mode, then by new one. Each is found when
    /// it is first asked for, in a time of phases · switches, and more where loops conflict.
    /// </summary>
    public IReadOnlyList<ModeChange> Changes => _changes;

    /// <summary>The worst of each switch over all modes, changes left out, by name and by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<SwitchStress> Switches { get; }

    /// <summary>
    /// The worst of each switch over all changes, open or closed, by name and by position as in
    /// <see cref="Converter.Switches"/>; undetermined where there are no changes. Finds all of them when first asked for.
    /// </summary>
    public NamedList<SwitchStress> SwitchesAtChanges => _switchesAtChanges.Value;

    /// <summary>The worst of each capacitor over all modes, by name and by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<CapacitorStress> Capacitors { get; }

    /// <summary>Finds the stress of a converter in every mode, in a time of modes · phases · elements; the changes are found when they are asked for.</summary>
    /// <param name="analysis">The analysis of the converter.</param>
    /// <param name="inputVolts">The input voltages in volts (V) at which it runs.</param>
    /// <param name="openSwitchesLeak">
    /// Whether open switches at a floating node may leak: it then lies anywhere between its potentials of the phase
    /// before, which its parasitic capacitances hold, and those at the other ends of its open switches. Without
    /// leakage it lies between its potentials of the phase before. See docs/theory/stress.md, "Floating nodes".
    /// </param>
    /// <param name="inputVoltsOfModes">The input voltages of single modes, by name, where they differ from <paramref name="inputVolts"/>.</param>
    /// <exception cref="ArgumentException">A name in <paramref name="inputVoltsOfModes"/> is not one of the converter's modes.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An input voltage is missing, not positive or not from 1e-60 to 1e60.</exception>
    public static ConverterStress Of(
        ConverterAnalysis analysis,
        Interval<double> inputVolts,
        bool openSwitchesLeak = true,
        IReadOnlyDictionary<string, Interval<double>>? inputVoltsOfModes = null)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        InputInterval.Check(inputVolts, nameof(inputVolts));
        foreach (string name in inputVoltsOfModes?.Keys ?? [])
        {
            analysis.Modes.PositionOf(name);
        }

        ModeAnalysis[] modes = [.. analysis.Results];
        Interval<Fraction>[] kept = [.. analysis.Converter.Capacitors.Select((_, c) => Kept(modes, c))];
        return new ConverterStress(analysis, [.. modes.Select(m => ModeStress.Of(m, InputOf(m.Mode), openSwitchesLeak, kept))]);

        Interval<double> InputOf(Mode mode) =>
            inputVoltsOfModes is not null && inputVoltsOfModes.TryGetValue(mode.Name, out Interval<double> own) ? own : inputVolts;
    }

    /// <summary>The stress in the mode of the given name.</summary>
    /// <exception cref="ArgumentException">The converter has no such mode, or it has no result.</exception>
    public ModeStress this[string mode] => Modes[IndexOf(mode)];

    /// <summary>The change between two modes.</summary>
    /// <param name="from">The name of the old mode.</param>
    /// <param name="to">The name of the new mode, another one.</param>
    /// <exception cref="ArgumentException">The converter has no such mode, it has no result, or both are one.</exception>
    public ModeChange Change(string from, string to) => IndexOf(from) is var a && IndexOf(to) is var b && a != b
        ? _changes.Between(a, b)
        : throw new ArgumentException($"Expected two different modes, but got '{from}' twice.", nameof(to));

    /// <summary>Finds all <see cref="Changes"/> at once, on as many threads as the machine has; what was found before is not found again.</summary>
    /// <param name="progress">Is told the share that is found, from 0 to 1, from any thread; null for nobody.</param>
    /// <param name="cancellationToken">Stops the search; the changes found until then stay.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public void FindChanges(IProgress<double>? progress = null, CancellationToken cancellationToken = default) => _changes.FindAll(progress, cancellationToken);

    /// <summary>The order through all modes with the smallest peak stress at a change. Finds all changes.</summary>
    /// <param name="criterion">What is kept small.</param>
    /// <param name="isCycle">Whether the last mode leads back to the first.</param>
    /// <exception cref="InvalidOperationException">No mode has a result, or more than <see cref="ModeOrder.MaximumModes"/> have.</exception>
    public ModeOrder FindOrder(ModeOrderCriterion criterion = ModeOrderCriterion.StressAndSurge, bool isCycle = false) =>
        Modes.Count is > 0 and <= ModeOrder.MaximumModes
            ? ModeOrder.Of([.. Modes.Select(m => m.Mode)], _changes.Between, criterion, isCycle)
            : throw new InvalidOperationException($"Expected 1 to {ModeOrder.MaximumModes} modes with a result, but '{Analysis.Converter.Name}' has {Modes.Count}.");

    /// <summary>The converter, and its modes with and without a result.</summary>
    public override string ToString() =>
        $"{Analysis.Converter.Name}: stress in {UnitText.Count(Modes.Count, "mode", "modes")} and at {UnitText.Count(_changes.Count, "change", "changes")}{UnitText.Names("; no result in ", [.. ModesWithoutResult.Select(m => m.Name)])}";

    // what a capacitor that a mode leaves idle was left with by the mode before, whichever that was
    private static Interval<Fraction> Kept(ModeAnalysis[] modes, int capacitor)
    {
        Interval<Fraction> hull = Intervals.Empty<Fraction>();
        foreach (ModeAnalysis mode in modes)
        {
            if (mode.IdealPoint.CapacitorVoltages[capacitor].TryGetFraction(out Fraction voltage))
            {
                hull = hull.Hull(Intervals.Point(voltage));
            }
        }

        return hull;
    }

    private int IndexOf(string mode)
    {
        Analysis.Modes.PositionOf(mode);
        int index = Modes.ToList().FindIndex(m => m.Mode.Name == mode);
        return index >= 0
            ? index
            : throw new ArgumentException($"Mode '{mode}' of '{Analysis.Converter.Name}' has no result.", nameof(mode));
    }
}
