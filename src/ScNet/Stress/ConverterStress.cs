using ScNet.Analysis;

namespace ScNet.Stress;

/// <summary>The stress of every element of a converter in every mode that has a result, and at every change between two of them.</summary>
public sealed class ConverterStress
{
    private readonly ModeChange?[,] _changes;

    private ConverterStress(ConverterAnalysis analysis, ModeStress[] modes)
    {
        Analysis = analysis;
        Modes = modes;
        Converter converter = analysis.Converter;
        ModesWithoutResult = [.. analysis.Modes.Where(m => !m.HasResult).Select(m => m.Mode)];
        _changes = new ModeChange?[modes.Length, modes.Length];
        for (int a = 0; a < modes.Length; a++)
        {
            for (int b = 0; b < modes.Length; b++)
            {
                _changes[a, b] = a == b ? null : ModeChange.Of(modes[a], modes[b]);
            }
        }

        Changes = [.. _changes.Cast<ModeChange?>().OfType<ModeChange>()];
        Switches = [.. converter.Switches.Select((s, i) => SwitchStress.Worst(s, [.. modes.Select(m => m.Switches[i])]))];
        SwitchesAtChanges = Changes.Count == 0 ? [] : [.. converter.Switches.Select((s, i) =>
            SwitchStress.Worst(s, [.. Changes.SelectMany(c => new[] { c.OpenSwitches[i], c.ClosedSwitches[i] })]))];
        Capacitors = [.. converter.Capacitors.Select((c, i) => CapacitorStress.Worst(c, [.. modes.Select(m => m.Capacitors[i])]))];
    }

    /// <summary>The analysis of the converter.</summary>
    public ConverterAnalysis Analysis { get; }

    /// <summary>The stress in each mode that has a result, in the order of <see cref="Converter.Modes"/>.</summary>
    public IReadOnlyList<ModeStress> Modes { get; }

    /// <summary>The modes of which nothing is said, as they have no result.</summary>
    public IReadOnlyList<Mode> ModesWithoutResult { get; }

    /// <summary>The changes of every ordered pair of different modes, by old mode, then by new one.</summary>
    public IReadOnlyList<ModeChange> Changes { get; }

    /// <summary>The worst of each switch over all modes, changes left out; index as in <see cref="Converter.Switches"/>.</summary>
    public IReadOnlyList<SwitchStress> Switches { get; }

    /// <summary>The worst of each switch over all changes, open or closed; index as in <see cref="Converter.Switches"/>. Empty where there are no changes.</summary>
    public IReadOnlyList<SwitchStress> SwitchesAtChanges { get; }

    /// <summary>The worst of each capacitor over all modes; index as in <see cref="Converter.Capacitors"/>.</summary>
    public IReadOnlyList<CapacitorStress> Capacitors { get; }

    /// <summary>Finds the stress of a converter. The changes take a time of modes² · phases · switches and more where loops conflict.</summary>
    /// <param name="analysis">The analysis of the converter.</param>
    /// <param name="input">The input voltages at which it runs.</param>
    /// <param name="assumption">What floating nodes are taken to do.</param>
    /// <param name="inputOfModes">The input voltages of single modes, by name, where they differ from <paramref name="input"/>.</param>
    /// <exception cref="ArgumentException">A name in <paramref name="inputOfModes"/> is not one of the converter's modes.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The assumption does not exist.</exception>
    public static ConverterStress Of(
        ConverterAnalysis analysis,
        InputVoltageRange input,
        FloatingAssumption assumption = FloatingAssumption.HeldOrLeaking,
        IReadOnlyDictionary<string, InputVoltageRange>? inputOfModes = null)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(input);
        foreach (string name in inputOfModes?.Keys ?? [])
        {
            analysis.Modes.PositionOf(name);
        }

        return new ConverterStress(
            analysis,
            [.. analysis.Results.Select(m => ModeStress.Of(m, inputOfModes?.GetValueOrDefault(m.Mode.Name) ?? input, assumption))]);
    }

    /// <summary>The stress in the mode of the given name.</summary>
    /// <exception cref="ArgumentException">The converter has no such mode, or it has no result.</exception>
    public ModeStress this[string mode] => Modes[IndexOf(mode)];

    /// <summary>The change between two modes.</summary>
    /// <param name="from">The name of the old mode.</param>
    /// <param name="to">The name of the new mode, another one.</param>
    /// <exception cref="ArgumentException">The converter has no such mode, it has no result, or both are one.</exception>
    public ModeChange Change(string from, string to) => _changes[IndexOf(from), IndexOf(to)]
        ?? throw new ArgumentException($"Expected two different modes, but got '{from}' twice.", nameof(to));

    /// <summary>The order through all modes that keeps the largest stress at a change least.</summary>
    /// <param name="criterion">What is kept small.</param>
    /// <param name="isCycle">Whether the last mode leads back to the first.</param>
    /// <exception cref="InvalidOperationException">No mode has a result, or more than <see cref="ModeOrder.MostModes"/> have.</exception>
    public ModeOrder FindOrder(ModeOrderCriterion criterion = ModeOrderCriterion.StressAndSurge, bool isCycle = false) =>
        Modes.Count is > 0 and <= ModeOrder.MostModes
            ? ModeOrder.Of([.. Modes.Select(m => m.Mode)], (a, b) => _changes[a, b]!, criterion, isCycle)
            : throw new InvalidOperationException($"Expected 1 to {ModeOrder.MostModes} modes with a result, but '{Analysis.Converter.Name}' has {Modes.Count}.");

    /// <summary>The converter, and its modes with and without a result.</summary>
    public override string ToString() =>
        $"{Analysis.Converter.Name}: stress in {UnitText.Count(Modes.Count, "mode", "modes")} and at {UnitText.Count(Changes.Count, "change", "changes")}{UnitText.Names("; no result in ", [.. ModesWithoutResult.Select(m => m.Name)])}";

    private int IndexOf(string mode)
    {
        Analysis.Modes.PositionOf(mode);
        int index = Modes.ToList().FindIndex(m => m.Mode.Name == mode);
        return index >= 0
            ? index
            : throw new ArgumentException($"Mode '{mode}' of '{Analysis.Converter.Name}' has no result.", nameof(mode));
    }
}
