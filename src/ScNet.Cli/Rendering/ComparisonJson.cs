using System.Text.Json;
using ScNet.Design;
using ScNet.Stress;

namespace ScNet.Cli.Rendering;

/// <summary>The comparison for programs: the conditions, and one object per netlist and mode.</summary>
internal static class ComparisonJson
{
    public static void Write(TextWriter output, ComparisonConditions conditions, IEnumerable<ComparisonRow> rows) =>
        JsonText.Write(output, writer =>
        {
            WriteConditions(writer, conditions);
            writer.WriteStartArray("rows");
            foreach (ComparisonRow row in rows)
            {
                WriteRow(writer, row);
            }

            writer.WriteEndArray();
        });

    private static void WriteConditions(Utf8JsonWriter writer, ComparisonConditions conditions)
    {
        writer.WriteStartObject("conditions");
        writer.WriteNumber("inputVoltageVolts", conditions.InputVoltageVolts);
        writer.WriteNumber("deviceRatingVolts", conditions.DeviceRatingVolts);
        writer.WriteNumber("totalCapacitanceFarads", conditions.TotalCapacitanceFarads);
        writer.WriteNumber("totalConductanceSiemens", conditions.TotalConductanceSiemens);
        writer.WriteNumber("hertz", conditions.FrequencyHz);
        writer.WriteEndObject();
    }

    private static void WriteRow(Utf8JsonWriter writer, ComparisonRow row) => WriteRow(
        writer,
        row.File.Path,
        row.Mode?.Converter.Name,
        row.Mode?.Outcome.Mode.Name,
        row.Mode is { } mode ? mode.Outcome.Diagnostics.Union(mode.Converter.Warnings) : row.File.Reading.Diagnostics,
        row.Mode?.Comparison,
        row.Mode?.Silicon);

    private static void WriteRow(
        Utf8JsonWriter writer,
        string path,
        string? converter,
        string? mode,
        IEnumerable<Diagnostic> diagnostics,
        ModeComparison? comparison,
        SiliconComparison? silicon)
    {
        writer.WriteStartObject();
        writer.WriteString("file", path);
        writer.WriteString("converter", converter);
        writer.WriteString("mode", mode);
        writer.WriteString("status", comparison is null ? "error" : "ok");
        JsonText.WriteDiagnostics(writer, diagnostics);
        if (comparison is not null)
        {
            WriteFigures(writer, comparison);
        }

        if (silicon is not null)
        {
            WriteSilicon(writer, silicon);
        }

        writer.WriteEndObject();
    }

    private static void WriteFigures(Utf8JsonWriter writer, ModeComparison comparison)
    {
        JsonText.WriteQuantity(writer, "ratio", comparison.Ratio);
        JsonText.WriteNumber(writer, "outputVoltageVolts", comparison.OutputVoltageVolts);
        WriteLimit(writer, "slowSwitchingLimit", comparison.SlowSwitchingLimit);
        WriteLimit(writer, "fastSwitchingLimit", comparison.FastSwitchingLimit);
        WriteChargeVoltage(writer, "capacitorChargeVoltage", comparison.CapacitorChargeVoltage);
        WriteChargeVoltage(writer, "switchChargeVoltage", comparison.SwitchChargeVoltage);
        WriteStress(writer, "switchStress", comparison.SwitchStress);
        WriteStress(writer, "capacitorStress", comparison.CapacitorStress);
        WriteNames(writer, "capacitorsLeftOut", comparison.LeftOut);
        WriteCounts(writer, comparison.Analysis.Converter);
        WriteSwing(writer, comparison);
    }

    private static void WriteLimit(Utf8JsonWriter writer, string key, ComparedLimit limit)
    {
        writer.WriteStartObject(key);
        JsonText.WriteNumber(writer, "ownProportionsOhms", limit.OwnProportionsOhms);
        JsonText.WriteNumber(writer, "bestSplitOhms", limit.BestSplitOhms);
        writer.WriteBoolean("dependsOnComponentValues", limit.DependsOnComponentValues);
        WriteNames(writer, "undetermined", limit.Undetermined);
        writer.WriteEndObject();
    }

    private static void WriteChargeVoltage(Utf8JsonWriter writer, string key, ChargeVoltage measure)
    {
        writer.WriteStartObject(key);
        JsonText.WriteQuantity(writer, "value", measure.Value);
        WriteNames(writer, "undetermined", measure.Undetermined);
        writer.WriteEndObject();
    }

    private static void WriteStress(Utf8JsonWriter writer, string key, VoltageStress stress)
    {
        writer.WriteStartObject(key);
        JsonText.WriteNumber(writer, "highestVolts", stress.PeakVolts);
        WriteNames(writer, "highest", stress.PeakElements);
        JsonText.WriteNumber(writer, "largestExcessVolts", stress.MaximumExcessVolts);
        WriteNames(writer, "exceeding", stress.Exceeding);
        WriteNames(writer, "undetermined", stress.Undetermined);
        writer.WriteEndObject();
    }

    private static void WriteCounts(Utf8JsonWriter writer, Converter converter)
    {
        writer.WriteStartObject("counts");
        writer.WriteNumber("capacitors", converter.Capacitors.Count);
        writer.WriteNumber("switches", converter.Switches.Count);
        writer.WriteNumber("phases", converter.Phases.Count);
        writer.WriteEndObject();
    }

    private static void WriteSwing(Utf8JsonWriter writer, ModeComparison comparison)
    {
        BottomPlateSwing swing = comparison.BottomPlateSwing;
        writer.WriteStartObject("bottomPlateSwing");
        JsonText.WriteNumber(writer, "worstVolts", comparison.MaximumBottomPlateSwingVolts);
        WriteNames(writer, "worst", swing.MaximumCapacitors);
        JsonText.WriteNumber(writer, "weight", swing.LossWeight);
        WriteNames(writer, "undetermined", swing.Undetermined);
        writer.WriteEndObject();
    }

    private static void WriteSilicon(Utf8JsonWriter writer, SiliconComparison silicon)
    {
        writer.WriteStartObject("equalSilicon");
        JsonText.WriteNumber(writer, "slowSwitchingLimitOhms", silicon.SlowSwitchingLimit.BestSplitOhms);
        JsonText.WriteNumber(writer, "fastSwitchingLimitOhms", silicon.FastSwitchingLimit.BestSplitOhms);
        writer.WriteNumber("largestStack", silicon.MaximumStackCount);
        writer.WriteNumber("capacitorDevices", silicon.CapacitorDeviceCount);
        writer.WriteNumber("switchDevices", silicon.SwitchDeviceCount);
        WriteNames(writer, "undetermined", silicon.Undetermined);
        writer.WriteStartObject("stacks");
        foreach ((string name, int count) in silicon.Capacitors.Select(c => (c.Capacitor.Name, c.Stack.Count))
            .Concat(silicon.Ratings.Switches.Select(s => (s.Switch.Name, s.Stack.Count))))
        {
            writer.WriteNumber(name, count);
        }

        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void WriteNames(Utf8JsonWriter writer, string key, IReadOnlyList<string> names)
    {
        writer.WriteStartArray(key);
        foreach (string name in names)
        {
            writer.WriteStringValue(name);
        }

        writer.WriteEndArray();
    }
}
