using System.Text.Json;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>What the analysis document says of a converter with several outputs; nothing of one with a single one.</summary>
internal static class OutputsJson
{
    public const string Key = "outputs";

    /// <summary>Ratios, charges and both limits of a mode.</summary>
    public static void Write(Utf8JsonWriter writer, OutputMatrices outputs)
    {
        writer.WriteStartObject(Key);
        writer.WritePropertyName("names");
        JsonText.WriteValue(writer, outputs.Outputs.Select(o => o.Name));
        writer.WritePropertyName("ratios");
        JsonText.WriteValue(writer, outputs.Outputs.Select(o => o.Ratio));
        writer.WriteStartObject("chargeFlow");
        foreach (OutputAnalysis output in outputs.Outputs.Skip(1))
        {
            if (output.ChargeFlow is { } flow)
            {
                ModeJson.WriteChargeFlow(writer, output.Name, outputs.Converter, flow);
            }
            else
            {
                writer.WriteNull(output.Name);
            }
        }

        writer.WriteEndObject();
        WriteLimit(writer, "slowSwitchingLimit", "ohmsAtOneHertz", outputs.SlowSwitchingLimit);
        WriteLimit(writer, "chargeSharing", "ohmsAtOneHertz", outputs.ChargeSharing);
        WriteLimit(writer, "fastSwitchingLimit", "ohms", outputs.FastSwitchingLimit);
        writer.WriteEndObject();
    }

    /// <summary>The exact figures at a frequency.</summary>
    public static void Write(Utf8JsonWriter writer, MultiPortPoint point)
    {
        writer.WriteStartObject(Key);
        JsonText.WriteNumbers(writer, "ratios", point.Ratios);
        JsonText.WriteMatrix(writer, "ohms", point.Ohms);
        JsonText.WriteNumbers(writer, "currentRatios", point.CurrentRatios);
        writer.WriteEndObject();
    }

    private static void WriteLimit(Utf8JsonWriter writer, string key, string unit, OutputMatrix<double?> limit)
    {
        writer.WriteStartObject(key);
        JsonText.WriteMatrix(writer, unit, limit);
        writer.WriteEndObject();
    }
}
