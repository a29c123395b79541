using System.Text.Json;

namespace ScNet.Derivations.Snapshots;

/// <summary>The parts of values of a document; a value of another type than expected is a <see cref="SnapshotFaultException"/>.</summary>
internal static class JsonMembers
{
    /// <summary>The value of a key, or null where the object has none.</summary>
    public static JsonElement? Find(JsonElement parent, string key) => parent.ValueKind == JsonValueKind.Object
        ? parent.TryGetProperty(key, out JsonElement member) ? member : null
        : throw Wrong($"an object with the key \"{key}\"", parent);

    /// <summary>The value of a key.</summary>
    public static JsonElement Of(JsonElement parent, string key) => Find(parent, key)
        ?? throw new SnapshotFaultException(DiagnosticCodes.WrongValue, $"The key \"{key}\" is missing.", parent);

    /// <summary>The text of a value, null where it is null.</summary>
    public static string? Text(JsonElement value)
    {
        if (value.ValueKind is not (JsonValueKind.String or JsonValueKind.Null))
        {
            throw Wrong("text", value);
        }

        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            throw HalfCharacter(value);
        }
    }

    /// <summary>The number of a value.</summary>
    public static double Number(JsonElement value) => value.ValueKind != JsonValueKind.Number ? throw Wrong("a number", value)
        : value.TryGetDouble(out double number) && double.IsFinite(number) ? number
        : throw new SnapshotFaultException(DiagnosticCodes.WrongValue, "Expected a number that a double can hold.", value);

    /// <summary>The items of an array.</summary>
    public static JsonElement.ArrayEnumerator Items(JsonElement value) =>
        value.ValueKind == JsonValueKind.Array ? value.EnumerateArray() : throw Wrong("an array", value);

    /// <summary>The names and values of an object.</summary>
    public static IEnumerable<(string Name, JsonElement Value)> Members(JsonElement value) =>
        value.ValueKind == JsonValueKind.Object ? value.EnumerateObject().Select(m => (NameOf(m), m.Value)) : throw Wrong("an object", value);

    /// <summary>Refuses a document in which an object has a key twice. Time is linear in the document.</summary>
    public static void RefuseRepeats(JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement item in value.EnumerateArray())
            {
                RefuseRepeats(item);
            }
        }
        else if (value.ValueKind == JsonValueKind.Object)
        {
            HashSet<string> names = new(StringComparer.Ordinal);
            foreach ((string name, JsonElement member) in Members(value))
            {
                if (!names.Add(name))
                {
                    throw new SnapshotFaultException(DiagnosticCodes.Syntax, $"The key {Quoted.Name(name)} is there twice.", member);
                }

                RefuseRepeats(member);
            }
        }
    }

    /// <summary>What says that a value is of another type than expected.</summary>
    public static SnapshotFaultException Wrong(string expected, JsonElement value) =>
        new(DiagnosticCodes.WrongValue, $"Expected {expected}, but found {Kind(value)}.", value);

    private static string Kind(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "an array",
        JsonValueKind.String => "text",
        JsonValueKind.Number => "a number",
        JsonValueKind.Null => "null",
        _ => "true or false",
    };

    private static string NameOf(JsonProperty member)
    {
        try
        {
            return member.Name;
        }
        catch (InvalidOperationException)
        {
            throw HalfCharacter(member.Value);
        }
    }

    private static SnapshotFaultException HalfCharacter(JsonElement value) =>
        new(DiagnosticCodes.Syntax, "Half of a character, such as \\uD800 alone, is no text. Remove it.", value);
}
