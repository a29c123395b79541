using System.Text.Json;
using ScNet.SteadyState;

namespace ScNet.Cli.Rendering;

/// <summary>Operating points for programs: the conditions, and one object per netlist and mode.</summary>
internal static class OperationJson
{
    public static void Write(TextWriter output, OperatingConditions conditions, IEnumerable<FileOperation> operations) =>
        JsonText.Write(output, writer =>
        {
            writer.WriteStartObject("conditions");
            writer.WriteNumber("inputVoltageVolts", conditions.Point.InputVoltageVolts);
            writer.WriteNumber("loadCurrentAmperes", conditions.Point.LoadCurrentAmperes);
            writer.WriteNumber("hertz", conditions.Point.FrequencyHz);
            writer.WriteNumber("deadTimeSeconds", conditions.DeadTimeSeconds ?? 0);
            writer.WriteEndObject();
            writer.WriteStartArray("rows");
            foreach (FileOperation operation in operations)
            {
                WriteFile(writer, operation);
            }

            writer.WriteEndArray();
        });

    private static void WriteFile(Utf8JsonWriter writer, FileOperation operation)
    {
        NetlistFile file = operation.Analysis.File;
        if (!file.Reading.Succeeded)
        {
            WriteHead(writer, file.Path, null, null, isSound: false, file.Reading.Diagnostics);
            writer.WriteEndObject();
        }

        foreach (OperationRow row in operation.Rows)
        {
            WriteHead(
                writer,
                file.Path,
                row.Outcome.Converter.Name,
                row.Outcome.Mode.Name,
                row.Steady is not null,
                row.Outcome.Diagnostics.Union(row.Outcome.Converter.Warnings));
            if (row.Steady is { } steady)
            {
                WriteFigures(writer, row, steady);
            }

            writer.WriteEndObject();
        }
    }

    private static void WriteHead(
        Utf8JsonWriter writer, string path, string? converter, string? mode, bool isSound, IEnumerable<Diagnostic> diagnostics)
    {
        writer.WriteStartObject();
        writer.WriteString("file", path);
        writer.WriteString("converter", converter);
        writer.WriteString("mode", mode);
        writer.WriteString("status", isSound ? "ok" : "error");
        JsonText.WriteDiagnostics(writer, diagnostics);
    }

    private static void WriteFigures(Utf8JsonWriter writer, OperationRow row, PeriodicSteadyState steady)
    {
        JsonText.WriteNumber(writer, "outputVoltageVolts", steady.AverageOutputVoltageVolts);
        JsonText.WriteNumber(writer, "idealOutputVoltageVolts", row.IdealVolts);
        JsonText.WriteNumber(writer, "outputRippleVolts", steady.OutputRippleVolts);
        JsonText.WriteNumber(writer, "outputImpedanceOhms", steady.OutputImpedanceOhms);
        JsonText.WriteNumber(writer, "inputCurrentAmperes", steady.AverageInputCurrentAmperes);
        JsonText.WriteNumber(writer, "inputPowerWatts", steady.InputPowerWatts);
        JsonText.WriteNumber(writer, "outputPowerWatts", steady.OutputPowerWatts);
        JsonText.WriteNumber(writer, "dissipationWatts", steady.DissipationWatts);
        JsonText.WriteNumber(writer, "efficiency", steady.ResistiveEfficiency);
        writer.WriteBoolean("isOverloaded", row.IsOverloaded);
        writer.WriteStartObject("switches");
        foreach ((SwitchOperation s, PhaseSet closed) in steady.Switches.Zip(steady.Mode.ClosedPhases))
        {
            WriteCurrents(writer, s.Switch.Name, s.RmsCurrentAmperes, s.PeakCurrentAmperes, s.DissipationWatts);
            JsonText.WriteNumber(writer, "leastBlockingVolts", s.BlockingWhereDeterminedVolts is { IsDetermined: true, Minimum: var minimum } ? minimum : null);
            JsonText.WriteNumber(writer, "greatestBlockingVolts", s.BlockingWhereDeterminedVolts is { IsDetermined: true, Maximum: var maximum } ? maximum : null);
            writer.WriteBoolean("floatsWhileOpen", !s.BlockingVolts.IsDetermined && closed.Count < steady.Converter.Phases.Count);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
        writer.WriteStartObject("capacitors");
        foreach (CapacitorOperation c in steady.Capacitors)
        {
            WriteCurrents(writer, c.Capacitor.Name, c.RmsCurrentAmperes, c.PeakCurrentAmperes, c.DissipationWatts);
            JsonText.WriteNumber(writer, "averageVolts", c.AverageVoltageVolts);
            JsonText.WriteNumber(writer, "rippleVolts", c.RippleVolts);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    }

    private static void WriteCurrents(Utf8JsonWriter writer, string name, double rms, double peak, double dissipation)
    {
        writer.WriteStartObject(name);
        JsonText.WriteNumber(writer, "rmsAmperes", rms);
        JsonText.WriteNumber(writer, "peakAmperes", peak);
        JsonText.WriteNumber(writer, "dissipationWatts", dissipation);
    }
}
