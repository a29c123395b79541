using System.Text;
using ScNet.Design.Requirements.Toml;
using ScNet.Devices;
using ScNet.Netlists.Toml;

namespace ScNet.Design.Requirements;

/// <summary>Writes requirement documents: the TOML that <see cref="RequirementReader"/> reads back as an equal requirement.</summary>
/// <remarks>
/// One requirement gives the same text always, byte for byte: UTF-8, "\n" line ends, numbers with a point in every culture.
/// What has its default value is left out.
/// </remarks>
public static class RequirementWriter
{
    /// <summary>The document of a requirement. Time and space are linear in its parts.</summary>
    /// <param name="requirement">The requirement.</param>
    /// <exception cref="ArgumentException">A name has half of a surrogate pair.</exception>
    public static string ToToml(Requirement requirement)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        StringBuilder text = new();
        Entry(text, TomlDocument.VersionKey, TomlLiteral.Number(RequirementReader.FormatVersion));
        Entry(text, RequirementKeys.Name, TomlLiteral.Text(requirement.Name));
        Entry(text, RequirementKeys.Input, Range(requirement.InputVolts));
        if (requirement.Discharge.Count > 0)
        {
            Entry(text, RequirementKeys.Discharge, Pairs(requirement.Discharge.Select(p => (p.StateOfCharge, p.Volts))));
        }

        Number(text, RootNumbers.Cell, requirement.CellCoulombs);
        Number(text, RootNumbers.SourceOhms, requirement.SourceOhms);
        Entry(text, requirement.OutputIsRange ? RequirementKeys.OutputRange : RequirementKeys.Output, List(requirement.OutputVolts));
        Number(text, RootNumbers.Ripple, requirement.RippleVolts);
        Number(text, RootNumbers.OutputFarads, requirement.OutputFarads);
        Entry(text, RequirementKeys.Frequency, Range(requirement.FrequencyHz));
        Number(text, RootNumbers.Area, requirement.AreaSquareMetres);
        Number(text, RootNumbers.CapacitorArea, requirement.CapacitorAreaSquareMetres);
        Number(text, RootNumbers.SwitchArea, requirement.SwitchAreaSquareMetres);
        if (requirement.LoadRangeAmperes.IsDetermined)
        {
            Entry(text, RequirementKeys.LoadRange, Range(requirement.LoadRangeAmperes));
        }

        foreach (LoadShare load in requirement.Loads)
        {
            Line(text, $"\n[[{RequirementKeys.Loads}]]");
            Entry(text, RequirementKeys.Name, TomlLiteral.Text(load.Name));
            Number(text, LoadNumbers.Amperes, load.Amperes);
            Number(text, LoadNumbers.Share, load.Share);
            Number(text, LoadNumbers.Output, load.OutputVolts);
        }

        Write(text, requirement.Process);
        foreach (CandidateRequest candidate in requirement.Candidates)
        {
            Write(text, candidate);
        }

        return text.ToString();
    }

    private static void Write(StringBuilder text, Process process)
    {
        string[] sources = [.. process.Switches.Select(s => s.Source), .. process.Capacitors.Select(c => c.Source), .. process.Inductors.Select(l => l.Source)];
        string common = sources.GroupBy(s => s).MaxBy(g => g.Count())!.Key;
        Line(text, $"\n[{RequirementKeys.Process}]");
        Entry(text, RequirementKeys.Name, TomlLiteral.Text(process.Name));
        Entry(text, RequirementKeys.Source, TomlLiteral.Text(common));
        Whole(text, RequirementKeys.SwitchesInSeries, process.MaximumSwitchesInSeries, Process.DefaultSwitchesInSeries);
        Whole(text, RequirementKeys.CapacitorsInSeries, process.MaximumCapacitorsInSeries, Process.DefaultCapacitorsInSeries);
        Number(text, ProcessNumbers.GateRail, process.GateRailEfficiency);
        Number(text, ProcessNumbers.Wiring, process.WiringOhms);
        Number(text, ProcessNumbers.DeadTime, process.DeadTimeSeconds);
        foreach (SwitchDevice device in process.Switches)
        {
            Header(text, RequirementKeys.Switches, device.Name);
            Source(text, device.Source, common);
            if (device.Polarity == DevicePolarity.PType)
            {
                Entry(text, RequirementKeys.Polarity, TomlLiteral.Text("p"));
            }

            Number(text, SwitchNumbers.Rated, device.RatedVolts);
            Number(text, SwitchNumbers.Drive, device.GateDriveVolts);
            Number(text, SwitchNumbers.GateRated, device.GateRatedVolts);
            Number(text, SwitchNumbers.Threshold, device.ThresholdVolts);
            Number(text, SwitchNumbers.Resistance, device.OnResistanceOhmMicrometres);
            Number(text, SwitchNumbers.GateCharge, device.GateChargeCoulombsPerMicrometre);
            Number(text, SwitchNumbers.JunctionCharge, device.JunctionChargeCoulombsPerMicrometre);
            Number(text, SwitchNumbers.Leakage, device.LeakageAmperesPerMicrometre);
            Number(text, SwitchNumbers.Diode, device.BodyDiodeVolts);
            Number(text, SwitchNumbers.Recovery, device.RecoveryCoulombsPerMicrometre);
            Number(text, SwitchNumbers.Area, device.AreaSquareMetresPerMicrometre);
            Number(text, SwitchNumbers.StackArea, device.StackAreaFactor);
            Number(text, SwitchNumbers.GuardSpacing, device.GuardMetres);
        }

        foreach (CapacitorDevice device in process.Capacitors)
        {
            Header(text, RequirementKeys.Capacitors, device.Name);
            Source(text, device.Source, common);
            Number(text, CapacitorNumbers.Rated, device.RatedVolts);
            Number(text, CapacitorNumbers.Density, device.FaradsPerSquareMetre);
            if (device.DensityAgainstBias.Count > 0)
            {
                Entry(text, RequirementKeys.DensityAtVolts, Pairs(device.DensityAgainstBias.Select(p => (p.Volts, p.FaradsPerSquareMetre))));
            }

            Number(text, CapacitorNumbers.BottomPlate, device.BottomPlateFraction);
            Number(text, CapacitorNumbers.TopPlate, device.TopPlateFraction);
            Number(text, CapacitorNumbers.Esr, device.EsrOhmSquareMetres);
            Number(text, CapacitorNumbers.Leakage, device.LeakageAmperesPerSquareMetre);
            Number(text, CapacitorNumbers.StackArea, device.StackAreaFactor);
            Number(text, CapacitorNumbers.GuardSpacing, device.GuardMetres);
        }

        foreach (InductorDevice device in process.Inductors)
        {
            Header(text, RequirementKeys.Inductors, device.Name);
            Source(text, device.Source, common);
            Number(text, InductorNumbers.Henries, device.Henries);
            Number(text, InductorNumbers.Ohms, device.Ohms);
            Number(text, InductorNumbers.Area, device.AreaSquareMetres);
            Number(text, InductorNumbers.Current, device.MaximumAmperes);
            Number(text, InductorNumbers.Core, device.CoreWatts);
            Number(text, InductorNumbers.CoreFrequency, device.CoreFrequencyExponent);
            Number(text, InductorNumbers.CoreRipple, device.CoreRippleExponent);
        }

        if (process.Control.FixedWatts != 0 || process.Control.CoulombsPerCycle != 0)
        {
            Line(text, $"\n[{RequirementKeys.Process}.{RequirementKeys.Control}]");
            Number(text, ControlNumbers.Fixed, process.Control.FixedWatts);
            Number(text, ControlNumbers.Cycle, process.Control.CoulombsPerCycle);
        }

        foreach (Corner corner in process.Corners)
        {
            Header(text, RequirementKeys.Corners, corner.Name);
            Number(text, CornerNumbers.Resistance, corner.ResistanceFactor);
            Number(text, CornerNumbers.Capacitance, corner.CapacitanceFactor);
            Number(text, CornerNumbers.Threshold, corner.ThresholdFactor);
        }
    }

    private static void Write(StringBuilder text, CandidateRequest candidate)
    {
        Line(text, $"\n[[{RequirementKeys.Candidates}]]");
        if (candidate.File is { } file)
        {
            Entry(text, RequirementKeys.File, TomlLiteral.Text(file));
            return;
        }

        if (candidate.Families is [var only])
        {
            Entry(text, RequirementKeys.Family, TomlLiteral.Text(only));
        }
        else
        {
            Entry(text, RequirementKeys.Families, $"[{string.Join(", ", candidate.Families.Select(TomlLiteral.Text))}]");
        }

        if (candidate.Sizes is { IsDetermined: true, Minimum: { } minimum, Maximum: { } maximum })
        {
            Entry(text, RequirementKeys.Sizes, minimum == maximum ? TomlLiteral.Number(minimum) : $"[{TomlLiteral.Number(minimum)}, {TomlLiteral.Number(maximum)}]");
        }

        if (candidate.Ratios.Count > 0)
        {
            Entry(text, RequirementKeys.Ratios, $"[{string.Join(", ", candidate.Ratios.Select(r => r.Reduce()).Select(r => FormattableString.Invariant($"\"{r.Numerator}/{r.Denominator}\"")))}]");
        }

        if (candidate.AreGears)
        {
            Entry(text, RequirementKeys.Gears, "true");
        }
    }

    private static string Range(Interval<double> range) =>
        range.IsPoint ? TomlLiteral.Number(range.Minimum!.Value) : List([range.Minimum!.Value, range.Maximum!.Value]);

    private static string List(IEnumerable<double> values) => $"[{string.Join(", ", values.Select(TomlLiteral.Number))}]";

    private static string Pairs(IEnumerable<(double First, double Second)> pairs) => $"[{string.Join(", ", pairs.Select(p => List([p.First, p.Second])))}]";

    private static void Source(StringBuilder text, string source, string common)
    {
        if (source != common)
        {
            Entry(text, RequirementKeys.Source, TomlLiteral.Text(source));
        }
    }

    private static void Whole(StringBuilder text, string key, int value, int defaultValue)
    {
        if (value != defaultValue)
        {
            Entry(text, key, TomlLiteral.Number(value));
        }
    }

    // nothing where it is the default
    private static void Number(StringBuilder text, NumberKey key, double? value)
    {
        if (value is { } number && number != key.Default)
        {
            Entry(text, key.Key, TomlLiteral.Number(number));
        }
    }

    private static void Header(StringBuilder text, string table, string name) =>
        Line(text, $"\n[{RequirementKeys.Process}.{table}.{TomlLiteral.Key(name)}]");

    private static void Entry(StringBuilder text, string key, string value) => Line(text, $"{key} = {value}");

    // not AppendLine, whose line end is the machine's
    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
