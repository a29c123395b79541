using System.Globalization;
using System.Text.Json;

namespace ScNet.Results;

/// <summary>Quantities in JSON: a string for an exact value, a number for a numeric one, null for an undetermined one.</summary>
internal static class QuantityJson
{
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

    public static void Write(Utf8JsonWriter writer, string key, Quantity value)
    {
        writer.WritePropertyName(key);
        Write(writer, value);
    }

    /// <summary>The values of the phases on one line, which a person reads more easily than one line each.</summary>
    public static void WritePhases(Utf8JsonWriter writer, string key, PhaseValues values)
    {
        writer.WritePropertyName(key);
        writer.WriteRawValue($"[{string.Join(", ", values.Select(Text))}]");
    }

    /// <summary>A number; null where it exceeds the range of a double, which JSON cannot write.</summary>
    public static void WriteNumber(Utf8JsonWriter writer, string key, double value)
    {
        if (double.IsFinite(value))
        {
            writer.WriteNumber(key, value);
        }
        else
        {
            writer.WriteNull(key);
        }
    }

    private static string Text(Quantity value) => value.Kind switch
    {
        QuantityKind.Exact => $"\"{value}\"",
        QuantityKind.Numeric => value.ToDouble().ToString("R", CultureInfo.InvariantCulture),
        _ => "null",
    };
}
