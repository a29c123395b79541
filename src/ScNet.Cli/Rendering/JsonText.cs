using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace ScNet.Cli.Rendering;

/// <summary>What the JSON outputs of the tool share.</summary>
internal static class JsonText
{
    private static readonly JsonWriterOptions s_options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes one object, indented by two spaces.</summary>
    public static void Write(TextWriter output, Action<Utf8JsonWriter> content)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, s_options))
        {
            writer.WriteStartObject();
            content(writer);
            writer.WriteEndObject();
        }

        output.WriteLine(Encoding.UTF8.GetString(buffer.WrittenSpan));
    }

    /// <summary>The findings as an array under the key "diagnostics".</summary>
    public static void WriteDiagnostics(Utf8JsonWriter writer, IEnumerable<Diagnostic> diagnostics)
    {
        writer.WriteStartArray("diagnostics");
        foreach (Diagnostic diagnostic in diagnostics)
        {
            writer.WriteStartObject();
            writer.WriteString("severity", diagnostic.Severity == DiagnosticSeverity.Error ? "error" : "warning");
            writer.WriteString("code", diagnostic.Code);
            writer.WriteString("message", diagnostic.Message);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    /// <summary>A number, or null where there is none or it is not finite.</summary>
    public static void WriteNumber(Utf8JsonWriter writer, string key, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            writer.WriteNumber(key, number);
        }
        else
        {
            writer.WriteNull(key);
        }
    }

    /// <summary>An exact value as a string with its fraction, another as a number, an undetermined one as null.</summary>
    public static void WriteQuantity(Utf8JsonWriter writer, string key, Quantity value)
    {
        if (value.IsExact)
        {
            writer.WriteString(key, value.ToString());
        }
        else
        {
            WriteNumber(writer, key, value.IsDetermined ? value.ToDouble() : null);
        }
    }
}
