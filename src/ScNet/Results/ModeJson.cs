using System.Text.Json;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>One mode of the analysis document: one method per key, in the order of the document.</summary>
internal static class ModeJson
{
    private static readonly string[] s_resultKeys =
        ["ratio", "chargeFlow", "slowSwitchingLimit", "fastSwitchingLimit", "capacitorVoltages", "blockingVoltages"];

    /// <summary>Writes a mode without output impedances.</summary>
    public static void Write(Utf8JsonWriter writer, ModeOutcome mode)
    {
        writer.WriteStartObject();
        // a warning about the netlist holds for every mode, so that a program finds all warnings in one place
        WriteResults(writer, mode, mode.HasResult, mode.Diagnostics.Union(mode.Converter.Warnings));
        writer.WriteEndObject();
    }

    /// <summary>Writes a mode with its output impedances at frequencies in hertz; null where it has none.</summary>
    public static void Write(Utf8JsonWriter writer, ResultRow<OutputImpedance> row, double[] frequenciesHz)
    {
        writer.WriteStartObject();
        WriteResults(writer, row.Outcome!, row.Result is not null, row.Diagnostics);
        if (row.Result is { } impedance)
        {
            WriteOutputImpedance(writer, impedance, frequenciesHz);
        }
        else
        {
            writer.WriteNull("outputImpedance");
        }

        writer.WriteEndObject();
    }

    private static void WriteResults(Utf8JsonWriter writer, ModeOutcome mode, bool isComplete, IEnumerable<Diagnostic> diagnostics)
    {
        writer.WriteString("mode", mode.Mode.Name);
        writer.WriteString("status", isComplete ? "ok" : "error");
        WriteDiagnostics(writer, diagnostics);
        if (mode.Analysis is { } analysis)
        {
            writer.WritePropertyName("ratio");
            JsonText.Write(writer, analysis.Ratio);
            WriteChargeFlow(writer, mode.Converter, analysis.ChargeFlow);
            WriteSlowSwitchingLimit(writer, mode.Converter, analysis.SlowSwitchingLimit);
            WriteFastSwitchingLimit(writer, mode.Converter, analysis.FastSwitchingLimit);
            WriteCapacitorVoltages(writer, mode.Converter, analysis.IdealPoint);
            WriteBlockingVoltages(writer, mode.Converter, analysis.BlockingVoltages);
        }
        else
        {
            foreach (string key in s_resultKeys)
            {
                writer.WriteNull(key);
            }
        }
    }

    private static void WriteDiagnostics(Utf8JsonWriter writer, IEnumerable<Diagnostic> diagnostics)
    {
        writer.WriteStartArray("diagnostics");
        foreach (Diagnostic diagnostic in diagnostics)
        {
            DiagnosticJson.Write(writer, diagnostic, diagnostic.Position);
        }

        writer.WriteEndArray();
    }

    private static void WriteChargeFlow(Utf8JsonWriter writer, Converter converter, ChargeFlow flow)
    {
        writer.WriteStartObject("chargeFlow");
        writer.WriteString("determinedBy", flow.DeterminedBy == FlowDetermination.Topology ? "topology" : "componentValues");
        JsonText.WritePhases(writer, "input", flow.Input);
        JsonText.WritePhases(writer, "output", flow.Output);
        WriteTable(writer, "capacitors", converter.Capacitors.Select(c => c.Name), flow.Capacitors);
        WriteTable(writer, "switches", converter.Switches.Select(s => s.Name), flow.Switches);
        writer.WriteEndObject();
    }

    private static void WriteSlowSwitchingLimit(Utf8JsonWriter writer, Converter converter, SlowSwitchingLimit limit)
    {
        writer.WriteStartObject("slowSwitchingLimit");
        writer.WriteStartObject("coefficients");
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            JsonText.Write(writer, converter.Capacitors[c].Name, limit.Coefficients[c]);
        }

        writer.WriteEndObject();
        JsonText.WriteNumber(writer, "ohmsAtOneHertz", limit.OhmsAtOneHertz);
        writer.WriteEndObject();
    }

    private static void WriteFastSwitchingLimit(Utf8JsonWriter writer, Converter converter, FastSwitchingLimit limit)
    {
        writer.WriteStartObject("fastSwitchingLimit");
        writer.WriteStartObject("coefficients");
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            JsonText.Write(writer, converter.Switches[s].Name, limit.SwitchCoefficients[s]);
        }

        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            if (converter.Capacitors[c].EsrOhms > 0)
            {
                JsonText.Write(writer, converter.Capacitors[c].Name, limit.CapacitorCoefficients[c]);
            }
        }

        writer.WriteEndObject();
        JsonText.WriteNumber(writer, "ohms", limit.Ohms);
        writer.WriteEndObject();
    }

    private static void WriteCapacitorVoltages(Utf8JsonWriter writer, Converter converter, IdealPoint ideal)
    {
        writer.WriteStartObject("capacitorVoltages");
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            JsonText.Write(writer, converter.Capacitors[c].Name, ideal.CapacitorVoltages[c]);
        }

        writer.WriteEndObject();
    }

    private static void WriteBlockingVoltages(Utf8JsonWriter writer, Converter converter, BlockingVoltages blocking)
    {
        writer.WriteStartObject("blockingVoltages");
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            writer.WriteStartObject(converter.Switches[s].Name);
            JsonText.WritePhases(writer, "perPhase", blocking.Switches[s]);
            JsonText.Write(writer, "peak", blocking.Peaks[s]);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    }

    private static void WriteOutputImpedance(Utf8JsonWriter writer, OutputImpedance impedance, double[] frequenciesHz)
    {
        writer.WriteStartArray("outputImpedance");
        foreach (double frequencyHz in frequenciesHz)
        {
            ImpedancePoint point = impedance.At(frequencyHz);
            writer.WriteStartObject();
            writer.WriteNumber("hertz", frequencyHz);
            JsonText.WriteNumber(writer, "ohms", point.Ohms);
            JsonText.WriteNumber(writer, "rootSumSquareOhms", point.RootSumSquareOhms);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteTable(Utf8JsonWriter writer, string key, IEnumerable<string> names, PhaseTable table)
    {
        writer.WriteStartObject(key);
        foreach ((string name, PhaseValues values) in names.Zip(table))
        {
            JsonText.WritePhases(writer, name, values);
        }

        writer.WriteEndObject();
    }
}
