using System.Text.Json;

namespace ScNet.Results;

/// <summary>A finding as a JSON object.</summary>
internal static class DiagnosticJson
{
    public static void Write(Utf8JsonWriter writer, Diagnostic diagnostic, SourcePosition? position)
    {
        writer.WriteStartObject();
        writer.WriteString("severity", diagnostic.Severity == DiagnosticSeverity.Error ? "error" : "warning");
        writer.WriteString("code", diagnostic.Code);
        writer.WriteString("message", diagnostic.Message);
        writer.WriteStartArray("elements");
        foreach (string element in diagnostic.Elements)
        {
            writer.WriteStringValue(element);
        }

        writer.WriteEndArray();
        WriteNumber(writer, "phase", diagnostic.Phase ?? 0);
        if (position is { } place)
        {
            writer.WriteString("file", place.File);
            WriteNumber(writer, "line", place.Line);
            WriteNumber(writer, "column", place.Column);
        }

        writer.WriteEndObject();
    }

    // Phases, lines and columns count from 1: zero means that none applies.
    private static void WriteNumber(Utf8JsonWriter writer, string key, int number)
    {
        if (number > 0)
        {
            writer.WriteNumber(key, number);
        }
        else
        {
            writer.WriteNull(key);
        }
    }
}
