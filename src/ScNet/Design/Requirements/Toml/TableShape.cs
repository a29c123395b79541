using ScNet.Netlists.Toml;

namespace ScNet.Design.Requirements.Toml;

/// <summary>The keys of a kind of table: numbers, whole numbers from 1, and those that are read one by one.</summary>
internal sealed class TableShape
{
    public static readonly TableShape Root = new(
        [TomlDocument.VersionKey, RequirementKeys.Name, RequirementKeys.Input, RequirementKeys.Discharge, RequirementKeys.Output, RequirementKeys.OutputRange, RequirementKeys.Frequency, RequirementKeys.LoadRange],
        [RootNumbers.Cell, RootNumbers.SourceOhms, RootNumbers.Ripple, RootNumbers.OutputFarads, RootNumbers.Area, RootNumbers.CapacitorArea, RootNumbers.SwitchArea],
        [RequirementKeys.Loads, RequirementKeys.Process, RequirementKeys.Candidates]);

    public static readonly TableShape Load = new([RequirementKeys.Name], [LoadNumbers.Amperes, LoadNumbers.Share, LoadNumbers.Output]);

    public static readonly TableShape Candidate = new([RequirementKeys.File, RequirementKeys.Family, RequirementKeys.Families, RequirementKeys.Sizes, RequirementKeys.Ratios, RequirementKeys.Gears], []);

    public static readonly TableShape Process = new(
        [RequirementKeys.Name, RequirementKeys.Source, RequirementKeys.SwitchesInSeries, RequirementKeys.CapacitorsInSeries],
        [ProcessNumbers.GateRail, ProcessNumbers.Wiring, ProcessNumbers.DeadTime],
        [RequirementKeys.Switches, RequirementKeys.Capacitors, RequirementKeys.Inductors, RequirementKeys.Control, RequirementKeys.Corners]);

    public static readonly TableShape Switch = new(
        [RequirementKeys.Source, RequirementKeys.Polarity],
        [
            SwitchNumbers.Rated, SwitchNumbers.Drive, SwitchNumbers.GateRated, SwitchNumbers.Threshold, SwitchNumbers.Resistance, SwitchNumbers.GateCharge,
            SwitchNumbers.JunctionCharge, SwitchNumbers.Leakage, SwitchNumbers.Diode, SwitchNumbers.Recovery, SwitchNumbers.Area, SwitchNumbers.StackArea, SwitchNumbers.GuardSpacing,
        ]);

    public static readonly TableShape Capacitor = new(
        [RequirementKeys.Source],
        [
            CapacitorNumbers.Rated, CapacitorNumbers.Density, CapacitorNumbers.BottomPlate, CapacitorNumbers.TopPlate, CapacitorNumbers.Esr, CapacitorNumbers.Leakage,
            CapacitorNumbers.StackArea, CapacitorNumbers.GuardSpacing,
        ],
        [RequirementKeys.DensityAtVolts]);

    public static readonly TableShape Inductor = new(
        [RequirementKeys.Source],
        [
            InductorNumbers.Henries, InductorNumbers.Ohms, InductorNumbers.Area, InductorNumbers.Current, InductorNumbers.Core, InductorNumbers.CoreFrequency,
            InductorNumbers.CoreRipple,
        ]);

    public static readonly TableShape Control = new([], [ControlNumbers.Fixed, ControlNumbers.Cycle]);

    public static readonly TableShape Corner = new([], [CornerNumbers.Resistance, CornerNumbers.Capacitance, CornerNumbers.Threshold]);

    internal TableShape(string[] first, NumberKey[] numbers, params string[] last)
    {
        Numbers = numbers;
        Keys = [.. first, .. numbers.Select(n => n.Key), .. last];
    }

    public NumberKey[] Numbers { get; }

    /// <summary>All keys, in the order in which a document is written.</summary>
    public string[] Keys { get; }
}
