using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace ScNet.Fuzzing;

/// <summary>All that an object of the libraries says in public, as text: two objects that say the same are equal for their users.</summary>
/// <remarks>Where something was read from is left out, so that a text can be written and read again.</remarks>
internal static class ObjectText
{
    private const int MaximumDepth = 12;

    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> s_properties = new();

    /// <summary>The text of an object.</summary>
    public static string Of(object? value)
    {
        StringBuilder text = new();
        Append(text, value, 0);
        return text.ToString();
    }

    private static void Append(StringBuilder text, object? value, int depth)
    {
        switch (value)
        {
            case null:
                text.Append("null");
                break;
            case string word:
                text.Append('"').Append(word).Append('"');
                break;
            case SourcePosition:
                break;
            case double number:
                text.Append(number.ToString("R", CultureInfo.InvariantCulture));
                break;
            case IEnumerable items:
                text.Append('[');
                foreach (object? item in items)
                {
                    Append(text, item, depth + 1);
                    text.Append(", ");
                }

                text.Append(']');
                break;
            case IFormattable plain when !IsOurs(value.GetType()):
                text.Append(plain.ToString(null, CultureInfo.InvariantCulture));
                break;
            default:
                AppendProperties(text, value, depth);
                break;
        }
    }

    private static void AppendProperties(StringBuilder text, object value, int depth)
    {
        Type type = value.GetType();
        if (!IsOurs(type) || type.IsEnum || depth == MaximumDepth)
        {
            text.Append(value);
            return;
        }

        text.Append(type.Name).Append('(');
        foreach (PropertyInfo property in s_properties.GetOrAdd(type, Properties))
        {
            text.Append(property.Name).Append(": ");
            Append(text, property.GetValue(value), depth + 1);
            text.Append("; ");
        }

        text.Append(")\n");
    }

    private static PropertyInfo[] Properties(Type type) =>
        [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0 && p.GetMethod is { IsPublic: true })];

    private static bool IsOurs(Type type) => type.Namespace?.StartsWith(nameof(ScNet), StringComparison.Ordinal) == true;
}
