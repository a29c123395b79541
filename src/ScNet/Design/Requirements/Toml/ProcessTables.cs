using ScNet.Devices;
using Tomlyn.Syntax;

namespace ScNet.Design.Requirements.Toml;

/// <summary>Reads a process: its kinds of devices, its control and its corners.</summary>
internal sealed class ProcessTables(RequirementTable table)
{
    private readonly string? _source = table.Text(RequirementKeys.Source);

    /// <summary>The process; null where something is wrong with it, all of which was reported.</summary>
    public Process? Read()
    {
        string? name = table.Text(RequirementKeys.Name, "Give the process a name: name = \"invented\".");
        List<RequirementTable> switchTables = Kinds(RequirementKeys.Switches, TableShape.Switch, "switch kind");
        List<RequirementTable> capacitorTables = Kinds(RequirementKeys.Capacitors, TableShape.Capacitor, "capacitor kind");
        SwitchDevice[] switches = [.. switchTables.Select(SwitchOf).OfType<SwitchDevice>()];
        CapacitorDevice[] capacitors = [.. capacitorTables.Select(CapacitorOf).OfType<CapacitorDevice>()];
        List<RequirementTable> inductorTables = table.NamedTables(RequirementKeys.Inductors, TableShape.Inductor, "inductor");
        InductorDevice[] inductors = [.. inductorTables.Select(InductorOf).OfType<InductorDevice>()];
        Corner[] corners = [.. table.NamedTables(RequirementKeys.Corners, TableShape.Corner, "corner").Select(c => CornerOf(c, switches)).OfType<Corner>()];
        RequirementTable? control = table.Table(RequirementKeys.Control, TableShape.Control);
        int switchesInSeries = table.Whole(RequirementKeys.SwitchesInSeries, Process.DefaultSwitchesInSeries);
        int capacitorsInSeries = table.Whole(RequirementKeys.CapacitorsInSeries, Process.DefaultCapacitorsInSeries);
        bool isWhole = table.IsSound && switches.Length == switchTables.Count && capacitors.Length == capacitorTables.Count && inductors.Length == inductorTables.Count;
        return !isWhole || name is null ? null : new Process
        {
            Name = name,
            Switches = switches,
            Capacitors = capacitors,
            Inductors = inductors,
            MaximumSwitchesInSeries = switchesInSeries,
            MaximumCapacitorsInSeries = capacitorsInSeries,
            GateRailEfficiency = table[ProcessNumbers.GateRail],
            WiringOhms = table[ProcessNumbers.Wiring],
            DeadTimeSeconds = table[ProcessNumbers.DeadTime],
            Control = new ControlOverhead { FixedWatts = control?[ControlNumbers.Fixed] ?? 0, CoulombsPerCycle = control?[ControlNumbers.Cycle] ?? 0 },
            Corners = corners,
        };
    }

    private List<RequirementTable> Kinds(string key, TableShape shape, string kind)
    {
        List<RequirementTable> kinds = table.NamedTables(key, shape, kind);
        if (kinds.Count == 0 && table.Entry(key) is null or { IsTable: true, Entries.Count: 0 })
        {
            table.Missing(key, $"Add a table for each {kind}, such as [{RequirementKeys.Process}.{key}.a].");
        }

        return kinds;
    }

    private string? SourceOf(RequirementTable kind) => table.Has(RequirementKeys.Source) || kind.Has(RequirementKeys.Source)
        ? kind.Text(RequirementKeys.Source) ?? _source
        : kind.Text(RequirementKeys.Source, "Say where the values come from, such as source = \"invented\", here or once in [process].");

    private SwitchDevice? SwitchOf(RequirementTable kind)
    {
        string? source = SourceOf(kind);
        DevicePolarity? polarity = PolarityOf(kind);
        if (kind.IsSound && kind[SwitchNumbers.Threshold] >= kind[SwitchNumbers.Drive])
        {
            kind.Report(
                DiagnosticCodes.OutsideRange,
                FormattableString.Invariant($"Expected a threshold below the gate-drive voltage of switch kind {Quoted.Name(kind.Key)}, {kind[SwitchNumbers.Drive]} V, but got {kind[SwitchNumbers.Threshold]} V. Correct one of them."),
                kind.PositionOf(SwitchNumbers.Threshold.Key));
        }

        if (kind.IsSound && kind[SwitchNumbers.Drive] > kind[SwitchNumbers.GateRated])
        {
            kind.Report(
                DiagnosticCodes.OutsideRange,
                FormattableString.Invariant($"Expected a gate-drive voltage of switch kind {Quoted.Name(kind.Key)} within what its gate withstands, {kind[SwitchNumbers.GateRated]} V, but got {kind[SwitchNumbers.Drive]} V. Correct one of them."),
                kind.PositionOf(SwitchNumbers.Drive.Key));
        }

        return !kind.IsSound || source is null || polarity is null ? null : new SwitchDevice
        {
            Name = kind.Key,
            Source = source,
            Polarity = polarity.Value,
            RatedVolts = kind[SwitchNumbers.Rated],
            GateDriveVolts = kind[SwitchNumbers.Drive],
            GateRatedVolts = kind[SwitchNumbers.GateRated],
            ThresholdVolts = kind[SwitchNumbers.Threshold],
            OnResistanceOhmMicrometres = kind[SwitchNumbers.Resistance],
            GateChargeCoulombsPerMicrometre = kind[SwitchNumbers.GateCharge],
            JunctionChargeCoulombsPerMicrometre = kind[SwitchNumbers.JunctionCharge],
            LeakageAmperesPerMicrometre = kind[SwitchNumbers.Leakage],
            BodyDiodeVolts = kind[SwitchNumbers.Diode],
            RecoveryCoulombsPerMicrometre = kind[SwitchNumbers.Recovery],
            AreaSquareMetresPerMicrometre = kind[SwitchNumbers.Area],
            StackAreaFactor = kind[SwitchNumbers.StackArea],
            GuardMetres = kind[SwitchNumbers.GuardSpacing],
        };
    }

    private static DevicePolarity? PolarityOf(RequirementTable kind)
    {
        if (kind.Entry(RequirementKeys.Polarity) is not { } entry)
        {
            return DevicePolarity.NType;
        }

        switch ((entry.Value as StringValueSyntax)?.Value)
        {
            case "n":
                return DevicePolarity.NType;
            case "p":
                return DevicePolarity.PType;
            default:
                kind.Wrong("\"n\" or \"p\"", entry, entry.Value, RequirementKeys.Polarity);
                return null;
        }
    }

    private CapacitorDevice? CapacitorOf(RequirementTable kind)
    {
        string? source = SourceOf(kind);
        DensityPoint[] density = DensityOf(kind);
        return !kind.IsSound || source is null ? null : new CapacitorDevice
        {
            Name = kind.Key,
            Source = source,
            RatedVolts = kind[CapacitorNumbers.Rated],
            FaradsPerSquareMetre = kind[CapacitorNumbers.Density],
            DensityAgainstBias = density,
            BottomPlateFraction = kind[CapacitorNumbers.BottomPlate],
            TopPlateFraction = kind[CapacitorNumbers.TopPlate],
            EsrOhmSquareMetres = kind[CapacitorNumbers.Esr],
            LeakageAmperesPerSquareMetre = kind[CapacitorNumbers.Leakage],
            StackAreaFactor = kind[CapacitorNumbers.StackArea],
            GuardMetres = kind[CapacitorNumbers.GuardSpacing],
        };
    }

    private static DensityPoint[] DensityOf(RequirementTable kind)
    {
        const string Expected = "an array of pairs of volts and farads per square metre, such as [[0.0, 4e-3], [1.8, 8e-3]],";
        if (kind.Pairs(RequirementKeys.DensityAtVolts, Expected) is not { } pairs)
        {
            return [];
        }

        if (pairs.Count < 2)
        {
            kind.Report(DiagnosticCodes.WrongValue, $"Expected densities at two voltages at least for capacitor kind {Quoted.Name(kind.Key)}, but got {(pairs.Count == 0 ? "none" : "one")}. Leave the key out where the density does not depend on the voltage.", kind.PositionOf(RequirementKeys.DensityAtVolts));
        }

        for (int i = 0; i < pairs.Count; i++)
        {
            if (!Guard.IsInRange(pairs[i].Second, allowZero: false))
            {
                kind.Report(DiagnosticCodes.ValueOutOfRange, FormattableString.Invariant($"Expected a positive density of capacitor kind {Quoted.Name(kind.Key)}, but got {pairs[i].Second} farads per square metre."), pairs[i].Position);
            }

            if (i > 0 && pairs[i].First <= pairs[i - 1].First)
            {
                kind.Report(DiagnosticCodes.WrongValue, FormattableString.Invariant($"Expected voltages of capacitor kind {Quoted.Name(kind.Key)} that rise from pair to pair, but {pairs[i].First} V comes after {pairs[i - 1].First} V."), pairs[i].Position);
            }
        }

        return [.. pairs.Select(p => new DensityPoint(p.First, p.Second))];
    }

    private InductorDevice? InductorOf(RequirementTable kind)
    {
        string? source = SourceOf(kind);
        return !kind.IsSound || source is null ? null : new InductorDevice
        {
            Name = kind.Key,
            Source = source,
            Henries = kind[InductorNumbers.Henries],
            Ohms = kind[InductorNumbers.Ohms],
            AreaSquareMetres = kind[InductorNumbers.Area],
            MaximumAmperes = kind.Find(InductorNumbers.Current),
            CoreWatts = kind[InductorNumbers.Core],
            CoreFrequencyExponent = kind[InductorNumbers.CoreFrequency],
            CoreRippleExponent = kind[InductorNumbers.CoreRipple],
        };
    }

    private static Corner? CornerOf(RequirementTable kind, SwitchDevice[] switches)
    {
        if (!kind.IsSound)
        {
            return null;
        }

        Corner corner = new(kind.Key, kind[CornerNumbers.Resistance], kind[CornerNumbers.Capacitance], kind[CornerNumbers.Threshold]);
        if (switches.FirstOrDefault(s => !s.TurnsOnAt(corner)) is not { } off)
        {
            return corner;
        }

        kind.Report(
            DiagnosticCodes.OutsideRange,
            FormattableString.Invariant($"Expected a threshold below the gate-drive voltage at corner {Quoted.Name(kind.Key)}, but switch kind {Quoted.Name(off.Name)} has {off.ThresholdVolts * corner.ThresholdFactor} V and {off.GateDriveVolts} V. Lower the factor, or drive the gate higher."),
            kind.PositionOf(CornerNumbers.Threshold.Key));
        return null;
    }
}
