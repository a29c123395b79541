using System.Text.Json;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>One mode of the analysis document: one method per key, in the order of the document.</summary>
internal static class ModeJson
{
    private static readonly string[] s_resultKeys =
        ["ratio", "chargeFlow", "slowSwitchingLimit", "fastSwitchingLimit", "capacitorVoltages", "blockingVoltages"];

    private static readonly string[] s_inductorKeys = ["chargeSharing", "balance", "inductorCurrents", "inductorVoltages"];

    /// <summary>Writes a mode without output impedances.</summary>
    public static void Write(Utf8JsonWriter writer, ModeOutcome mode)
    {
        writer.WriteStartObject();
        // a warning about the netlist holds for every mode, so that a program finds all warnings in one place
        WriteResults(writer, mode, mode.HasResult, mode.Diagnostics.Union(mode.Converter.Warnings));
        writer.WriteEndObject();
    }

    /// <summary>Writes a mode with its output impedances; null where it has none.</summary>
    public static void Write(Utf8JsonWriter writer, ResultRow<FrequencyResults[]> row)
    {
        writer.WriteStartObject();
        WriteResults(writer, row.Outcome!, row.Result is not null, row.Diagnostics);
        if (row.Result is { } results)
        {
            WriteOutputImpedance(writer, row.Outcome!.Converter, results);
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
        bool hasOutputs = mode.Converter.FurtherOutputs.Count > 0;
        WriteDiagnostics(writer, hasOutputs && mode.Analysis is { } loaded ? diagnostics.Union(loaded.Outputs.Diagnostics) : diagnostics);
        if (mode.Analysis is { } analysis)
        {
            writer.WritePropertyName("ratio");
            JsonText.Write(writer, analysis.Ratio);
            WriteLoaded(writer, analysis);
            WriteCapacitorVoltages(writer, mode.Converter, analysis.IdealPoint);
            WriteBlockingVoltages(writer, mode.Converter, analysis.BlockingVoltages);
            if (mode.Converter.Inductors.Count > 0)
            {
                WriteInductors(writer, analysis);
            }

            if (hasOutputs)
            {
                OutputsJson.Write(writer, analysis.Outputs);
            }
        }
        else
        {
            foreach (string key in mode.Converter.Inductors.Count > 0 ? [.. s_resultKeys, .. s_inductorKeys] : s_resultKeys)
            {
                writer.WriteNull(key);
            }

            if (hasOutputs)
            {
                writer.WriteNull(OutputsJson.Key);
            }
        }
    }

    // Flow and limits; null where averages can carry no load.
    private static void WriteLoaded(Utf8JsonWriter writer, ModeAnalysis analysis)
    {
        Converter converter = analysis.Converter;
        if (!analysis.CarriesLoad)
        {
            writer.WriteNull("chargeFlow");
            writer.WriteNull("slowSwitchingLimit");
            writer.WriteNull("chargeSharing");
            writer.WriteNull("fastSwitchingLimit");
            return;
        }

        WriteChargeFlow(writer, "chargeFlow", converter, analysis.ChargeFlow);
        WriteSlow(writer, "slowSwitchingLimit", converter, analysis.SlowSwitchingLimit.Coefficients, analysis.SlowSwitchingLimit.OhmsAtOneHertz);
        if (analysis.ChargeSharing is { } sharing)
        {
            WriteSlow(writer, "chargeSharing", converter, sharing.Coefficients, sharing.OhmsAtOneHertz);
        }

        WriteFastSwitchingLimit(writer, converter, analysis.FastSwitchingLimit);
    }

    private static void WriteInductors(Utf8JsonWriter writer, ModeAnalysis analysis)
    {
        writer.WriteString("balance", analysis.Balance switch
        {
            VoltageBalance.Averages => "averages",
            VoltageBalance.Ripple => "ripple",
            VoltageBalance.Losses => "losses",
            _ => "control",
        });
        writer.WriteStartObject("inductorCurrents");
        foreach (InductorAnalysis inductor in analysis.Inductors)
        {
            JsonText.Write(writer, inductor.Inductor.Name, inductor.Current);
        }

        writer.WriteEndObject();
        writer.WriteStartObject("inductorVoltages");
        foreach (InductorAnalysis inductor in analysis.Inductors)
        {
            writer.WriteStartObject(inductor.Inductor.Name);
            JsonText.WritePhases(writer, "perPhase", inductor.Voltage);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
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

    /// <summary>The charges of one output.</summary>
    public static void WriteChargeFlow(Utf8JsonWriter writer, string key, Converter converter, ChargeFlow flow)
    {
        writer.WriteStartObject(key);
        writer.WriteString("determinedBy", flow.DeterminedBy == FlowDetermination.Topology ? "topology" : "componentValues");
        JsonText.WritePhases(writer, "input", flow.Input);
        JsonText.WritePhases(writer, "output", flow.Output);
        WriteTable(writer, "capacitors", converter.Capacitors.Select(c => c.Name), flow.Capacitors);
        WriteTable(writer, "switches", converter.Switches.Select(s => s.Name), flow.Switches);
        if (converter.Inductors.Count > 0)
        {
            WriteTable(writer, "inductors", converter.Inductors.Select(l => l.Name), flow.Inductors);
        }

        writer.WriteEndObject();
    }

    private static void WriteSlow(Utf8JsonWriter writer, string key, Converter converter, NamedList<Quantity> coefficients, double ohmsAtOneHertz)
    {
        writer.WriteStartObject(key);
        writer.WriteStartObject("coefficients");
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            JsonText.Write(writer, converter.Capacitors[c].Name, coefficients[c]);
        }

        writer.WriteEndObject();
        JsonText.WriteNumber(writer, "ohmsAtOneHertz", ohmsAtOneHertz);
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

        for (int l = 0; l < converter.Inductors.Count; l++)
        {
            if (converter.Inductors[l].Ohms > 0)
            {
                JsonText.Write(writer, converter.Inductors[l].Name, limit.InductorCoefficients[l]);
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

    private static void WriteOutputImpedance(Utf8JsonWriter writer, Converter converter, FrequencyResults[] results)
    {
        writer.WriteStartArray("outputImpedance");
        foreach ((ImpedancePoint point, MultiPortPoint? outputs) in results)
        {
            writer.WriteStartObject();
            writer.WriteNumber("hertz", point.FrequencyHz);
            JsonText.WriteNumber(writer, "ohms", point.Ohms);
            JsonText.WriteNumber(writer, "rootSumSquareOhms", point.RootSumSquareOhms);
            JsonText.WriteNumber(writer, "ratio", point.TwoPort.Ratio);
            JsonText.WriteNumber(writer, "currentRatio", point.TwoPort.CurrentRatio);
            JsonText.WriteNumber(writer, "inputSiemens", point.TwoPort.InputSiemens);
            if (converter.Inductors.Count > 0)
            {
                WriteBalance(writer, converter, point.TwoPort);
            }

            if (outputs is not null)
            {
                OutputsJson.Write(writer, outputs);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteBalance(Utf8JsonWriter writer, Converter converter, TwoPortPoint point)
    {
        writer.WriteStartObject("capacitorVoltages");
        for (int c = 0; c < converter.Capacitors.Count; c++)
        {
            JsonText.WriteNumber(writer, converter.Capacitors[c].Name, point.CapacitorVoltages[c] ?? double.NaN);
        }

        writer.WriteEndObject();
        JsonText.WriteNumber(writer, "decayPerPeriod", point.DecayPerPeriod);
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
