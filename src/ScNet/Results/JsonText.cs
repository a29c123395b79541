using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace ScNet.Results;

/// <summary>The one way in which the library writes JSON.</summary>
/// <remarks>
/// Indented by two spaces, "\n" line ends, names as they are, but what does not show in them as its code. Exact values are strings with a reduced fraction,
/// values that component values decide are numbers, undetermined and infinite ones null.
/// </remarks>
internal static class JsonText
{
    private static readonly JsonWriterOptions s_options = new()
    {
        Indented = true,
        IndentSize = 2,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The text that an action writes.</summary>
    public static string Of(Action<Utf8JsonWriter> write) => Encoding.UTF8.GetString(Utf8Of(write).Span);

    /// <summary>The same in UTF-8.</summary>
    public static ReadOnlyMemory<byte> Utf8Of(Action<Utf8JsonWriter> write)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, s_options))
        {
            write(writer);
        }

        return Escaped(buffer.WrittenMemory);
    }

    public static void Write(Utf8JsonWriter writer, string key, Quantity value)
    {
        writer.WritePropertyName(key);
        Write(writer, value);
    }

    public static void Write(Utf8JsonWriter writer, Quantity value)
    {
        switch (value.Kind)
        {
            case QuantityKind.Exact:
                writer.WriteStringValue(value.ToString());
                break;
            case QuantityKind.Numeric:
                writer.WriteNumberValue(value.ToDouble());
                break;
            default:
                writer.WriteNullValue();
                break;
        }
    }

    /// <summary>The values of the phases on one line, which a person reads more easily than one line each.</summary>
    public static void WritePhases(Utf8JsonWriter writer, string key, PhaseValues values)
    {
        writer.WritePropertyName(key);
        writer.WriteRawValue($"[{string.Join(", ", values.Select(Text))}]");
    }

    /// <summary>A matrix on one line, row by row; null for entries that are missing or exceed the range of a double.</summary>
    public static void WriteMatrix(Utf8JsonWriter writer, string key, Analysis.OutputMatrix<double?> matrix)
    {
        writer.WritePropertyName(key);
        writer.WriteRawValue($"[{string.Join(", ", Enumerable.Range(0, matrix.Count).Select(r => Line(Enumerable.Range(0, matrix.Count).Select(c => matrix[r, c]))))}]");
    }

    /// <summary>Numbers on one line; null for those that are missing or exceed the range of a double.</summary>
    public static void WriteNumbers(Utf8JsonWriter writer, string key, IEnumerable<double?> numbers)
    {
        writer.WritePropertyName(key);
        writer.WriteRawValue(Line(numbers));
    }

    /// <summary>A number; null where it exceeds the range of a double, which JSON cannot write.</summary>
    public static void WriteNumber(Utf8JsonWriter writer, string key, double value)
    {
        writer.WritePropertyName(key);
        WriteValue(writer, value);
    }

    /// <summary>Any value that a figure may have.</summary>
    public static void WriteValue(Utf8JsonWriter writer, object? value)
    {
        switch (value)
        {
            case Quantity quantity:
                Write(writer, quantity);
                break;
            case double number when double.IsFinite(number):
                writer.WriteNumberValue(number);
                break;
            case int or long:
                writer.WriteNumberValue(Convert.ToInt64(value, CultureInfo.InvariantCulture));
                break;
            case bool flag:
                writer.WriteBooleanValue(flag);
                break;
            case string text:
                writer.WriteStringValue(text);
                break;
            case Diagnostic diagnostic:
                DiagnosticJson.Write(writer, diagnostic, diagnostic.Position);
                break;
            case IEnumerable<KeyValuePair<string, object?>> members:
                writer.WriteStartObject();
                foreach ((string key, object? member) in members)
                {
                    writer.WritePropertyName(key);
                    WriteValue(writer, member);
                }

                writer.WriteEndObject();
                break;
            case System.Collections.IEnumerable items:
                writer.WriteStartArray();
                foreach (object? item in items)
                {
                    WriteValue(writer, item);
                }

                writer.WriteEndArray();
                break;
            default:
                writer.WriteNullValue();
                break;
        }
    }

    // the encoder leaves marks of direction and other characters that do not show as they are; they stand in strings only
    private static ReadOnlyMemory<byte> Escaped(ReadOnlyMemory<byte> json)
    {
        if (Ascii.IsValid(json.Span))
        {
            return json;
        }

        ArrayBufferWriter<byte> escaped = new(json.Length);
        Span<char> halves = stackalloc char[2];
        for (ReadOnlySpan<byte> rest = json.Span; !rest.IsEmpty;)
        {
            _ = Rune.DecodeFromUtf8(rest, out Rune rune, out int length);
            if (rune.IsAscii || Printable.Shows(rune))
            {
                escaped.Write(rest[..length]);
            }
            else
            {
                foreach (char half in halves[..rune.EncodeToUtf16(halves)])
                {
                    escaped.Write(Encoding.ASCII.GetBytes(FormattableString.Invariant($"\\u{(int)half:X4}")));
                }
            }

            rest = rest[length..];
        }

        return escaped.WrittenMemory;
    }

    private static string Line(IEnumerable<double?> numbers) =>
        $"[{string.Join(", ", numbers.Select(n => n is { } number && double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) : "null"))}]";

    private static string Text(Quantity value) => value.Kind switch
    {
        QuantityKind.Exact => $"\"{value}\"",
        QuantityKind.Numeric => value.ToDouble().ToString("R", CultureInfo.InvariantCulture),
        _ => "null",
    };
}
