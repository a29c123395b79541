using ScNet.Design.Regulation;

namespace ScNet.Design.Maps;

/// <summary>One point of a map.</summary>
public sealed class MapPoint
{
    private readonly OperatingMap _map;
    private readonly int _index;

    internal MapPoint(OperatingMap map, int index) => (_map, _index) = (map, index);

    /// <summary>Input voltage in volts (V).</summary>
    public double InputVolts => _map.InputVolts[_index / (_map.OutputVolts.Count * _map.LoadAmperes.Count)];

    /// <summary>Output voltage in volts (V).</summary>
    public double OutputVolts => _map.OutputVolts[_index / _map.LoadAmperes.Count % _map.OutputVolts.Count];

    /// <summary>Load current in amperes (A).</summary>
    public double LoadAmperes => _map.LoadAmperes[_index % _map.LoadAmperes.Count];

    /// <summary>Whether some mode holds the output.</summary>
    public bool IsHeld => _map.BestModeAt(_index) is not null;

    /// <summary>The mode with the lowest input power of those that hold the output, the first of equals; null where none does.</summary>
    public RegulatedMode? BestMode => _map.BestModeAt(_index) is { } mode ? _map.Modes[mode] : null;

    /// <summary>The position of the best mode in <see cref="OperatingMap.Modes"/>; null where none holds the output.</summary>
    public int? BestModeIndex => _map.BestModeAt(_index);

    /// <summary>What the best mode does, every loss included; of no meaning where none holds the output.</summary>
    public RegulatedPoint Best => _map.BestAt(_index);

    /// <summary>Efficiency of the best mode; null where none holds the output.</summary>
    public double? Efficiency => IsHeld ? Best.Efficiency : null;

    /// <summary>The modes that hold the output, in order.</summary>
    public IReadOnlyList<RegulatedMode> UsableModes => [.. _map.Modes.Where((_, m) =>
        OutcomeOf(m) is RegulationOutcome.Held or RegulationOutcome.HeldBySkipping or RegulationOutcome.HeldByDropping)];

    /// <summary>What a linear regulator would reach: output over input voltage; null where the input is lower.</summary>
    public double? LinearEfficiency => InputVolts >= OutputVolts ? OutputVolts / InputVolts : null;

    /// <summary>
    /// What the ratios of the modes would reach without any loss but what the lowest sufficient one leaves over; 1 where the duty of a mode
    /// regulates; null where no ratio suffices.
    /// </summary>
    public double? IdealEfficiency => _map.Ratios.IdealEfficiency(InputVolts, OutputVolts);

    /// <summary>The element of the best mode that is loaded most for its rating; null where none holds the output or its devices are not known.</summary>
    public RatedStress? Stress => BestModeIndex is { } mode && _map.Stresses[mode] is { } perVolt ? perVolt.At(InputVolts) : null;

    /// <summary>Whether a mode holds the output, and if not, why.</summary>
    /// <param name="mode">The position of the mode in <see cref="OperatingMap.Modes"/>.</param>
    public RegulationOutcome OutcomeOf(int mode)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)mode, (uint)_map.Modes.Count, nameof(mode));
        return _map.OutcomeAt(_index, mode);
    }

    /// <summary>Why a mode does not hold the output, in words with figures; empty where it does.</summary>
    /// <param name="mode">The position of the mode in <see cref="OperatingMap.Modes"/>.</param>
    public string ReasonOf(int mode) => _map.Modes[mode].ReasonAt(InputVolts, OutputVolts, LoadAmperes);

    /// <summary>Voltages, load and the best mode.</summary>
    public override string ToString() =>
        $"{UnitText.Of(InputVolts, "V")} to {UnitText.Of(OutputVolts, "V")} at {UnitText.Of(LoadAmperes, "A")}: {(BestMode is { } mode ? $"{mode}, {Best}" : "not held")}";
}
