using System.Text.Json;
using ScNet.Reconfiguration;

namespace ScNet.Cli.Rendering;

/// <summary>Reachable ratios for programs: one object per ratio with its three best patterns.</summary>
internal static class ReachJson
{
    public static void Write(TextWriter output, string path, Converter converter, ReachableRatios reachable, bool hasPatterns) =>
        JsonText.Write(output, writer =>
        {
            writer.WriteString("file", path);
            writer.WriteString("converter", converter.Name);
            writer.WriteNumber("switches", converter.Switches.Count);
            writer.WriteNumber("patterns", reachable.PatternCount);
            writer.WriteStartArray("ratios");
            foreach (ReachableRatio ratio in reachable.Ratios)
            {
                writer.WriteStartObject();
                writer.WriteString("ratio", Quantity.Exact(ratio.Ratio).ToString());
                writer.WriteNumber("patterns", ratio.PatternCount);
                WritePattern(writer, "leastSlowSwitchingLimit", ratio.BestBySlowLimit, hasPatterns);
                WritePattern(writer, "leastFastSwitchingLimit", ratio.BestByFastLimit, hasPatterns);
                WritePattern(writer, "leastBlocking", ratio.BestByStress, hasPatterns);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
        });

    private static void WritePattern(Utf8JsonWriter writer, string key, GatePattern pattern, bool hasPatterns)
    {
        writer.WriteStartObject(key);
        JsonText.WriteNumber(writer, "slowOhmsAtOneHertz", pattern.SlowOhmsAtOneHertz);
        JsonText.WriteNumber(writer, "fastOhms", pattern.FastOhms);
        JsonText.WriteQuantity(writer, "highestBlockingPerVoltOfInput", pattern.PeakBlocking);
        writer.WriteNumber("switchesUndetermined", pattern.UndeterminedSwitchCount);
        if (hasPatterns)
        {
            writer.WriteStartObject("on");
            for (int s = 0; s < pattern.ClosedPhases.Count; s++)
            {
                writer.WriteStartArray(pattern.Analysis.Converter.Switches[s].Name);
                foreach (int phase in pattern.ClosedPhases[s])
                {
                    writer.WriteNumberValue(phase);
                }

                writer.WriteEndArray();
            }

            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    }
}
