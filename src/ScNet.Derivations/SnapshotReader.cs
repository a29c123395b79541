using System.Globalization;
using System.Text.Json;

namespace ScNet.Derivations;

/// <summary>Reads the values of an analysis document. Keys that it does not know are skipped.</summary>
internal sealed class SnapshotReader
{
    private const string Volts = "V/V";
    private const string Ohms = "Ω";

    private readonly List<SnapshotMode> _modes = [];
    private readonly List<SnapshotEntry> _entries = [];
    private string _mode = string.Empty;

    public static AnalysisSnapshot Read(string json, string? file)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
            SnapshotReader reader = new();
            string converter = reader.ReadDocument(document.RootElement);
            return new AnalysisSnapshot(json.TrimEnd(), converter, reader._modes, reader._entries);
        }
        catch (JsonException error)
        {
            throw Failed(DiagnosticCodes.Syntax, error.Message, new SourcePosition(
                file, (int)(error.LineNumber ?? -1) + 1, (int)(error.BytePositionInLine ?? -1) + 1));
        }
        catch (Exception error) when (error is InvalidOperationException or KeyNotFoundException or ArgumentException or FormatException)
        {
            throw Failed(DiagnosticCodes.WrongValue, error.Message, new SourcePosition(file, 0, 0));
        }
    }

    private static ScNetException Failed(string code, string message, SourcePosition position) => new(
        "Expected the analysis document of one converter:",
        [new Diagnostic(DiagnosticSeverity.Error, code, message, position: position)]);

    private string ReadDocument(JsonElement root)
    {
        string converter = Member(root, "converter").GetString()
            ?? throw new FormatException("The document is of a file that could not be read: it has no converter.");
        foreach (JsonElement mode in Member(root, "modes").EnumerateArray())
        {
            _mode = Member(mode, "mode").GetString() ?? string.Empty;
            if (_modes.Exists(m => m.Name == _mode))
            {
                throw new FormatException($"The mode '{_mode}' is there twice.");
            }

            bool hasResult = Member(mode, "status").GetString() == "ok";
            _modes.Add(new SnapshotMode(
                _mode, hasResult, hasResult ? Member(Member(mode, "chargeFlow"), "determinedBy").GetString() : null));
            if (hasResult)
            {
                ReadMode(mode);
            }
        }

        return converter;
    }

    private void ReadMode(JsonElement mode)
    {
        Add(null, "ratio", Member(mode, "ratio"), Volts);
        JsonElement flow = Member(mode, "chargeFlow");
        AddPhases(null, "input charge", Member(flow, "input"), string.Empty);
        AddPhases(null, "output charge", Member(flow, "output"), string.Empty);
        foreach (string kind in new[] { "capacitors", "switches" })
        {
            ForEach(Member(flow, kind), (name, value) => AddPhases(name, $"charge of {name}", value, string.Empty));
        }

        JsonElement slow = Member(mode, "slowSwitchingLimit"), fast = Member(mode, "fastSwitchingLimit");
        ForEach(Member(slow, "coefficients"), (name, value) => Add(name, $"slow coefficient of {name}", value, string.Empty));
        Add(null, "slow-switching limit at 1 Hz", Member(slow, "ohmsAtOneHertz"), Ohms);
        ForEach(Member(fast, "coefficients"), (name, value) => Add(name, $"fast coefficient of {name}", value, string.Empty));
        Add(null, "fast-switching limit", Member(fast, "ohms"), Ohms);
        ForEach(Member(mode, "capacitorVoltages"), (name, value) => Add(name, $"voltage of {name}", value, Volts));
        ForEach(Member(mode, "blockingVoltages"), (name, value) =>
        {
            AddPhases(name, $"blocking voltage of {name}", Member(value, "perPhase"), Volts);
            Add(name, $"peak blocking voltage of {name}", Member(value, "peak"), Volts);
        });
        if (mode.TryGetProperty("outputImpedance", out JsonElement points) && points.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement point in points.EnumerateArray())
            {
                string hertz = Member(point, "hertz").GetDouble().ToString("R", CultureInfo.InvariantCulture);
                Add(null, $"output impedance at {hertz} Hz", Member(point, "ohms"), Ohms);
            }
        }
    }

    private void AddPhases(string? element, string description, JsonElement values, string unit)
    {
        int phase = 0;
        foreach (JsonElement value in values.EnumerateArray())
        {
            Add(element, $"{description} in phase {++phase}", value, unit);
        }
    }

    private void Add(string? element, string description, JsonElement value, string unit) =>
        _entries.Add(new SnapshotEntry(_mode, element, description, Value(value), unit));

    private static void ForEach(JsonElement members, Action<string, JsonElement> action)
    {
        foreach (JsonProperty member in members.EnumerateObject())
        {
            action(member.Name, member.Value);
        }
    }

    private static JsonElement Member(JsonElement parent, string key) => parent.ValueKind != JsonValueKind.Object
        ? throw new FormatException($"Expected an object with the key \"{key}\", but found {parent.ValueKind.ToString().ToLowerInvariant()}.")
        : parent.TryGetProperty(key, out JsonElement member) ? member : throw new KeyNotFoundException($"The key \"{key}\" is missing.");

    private static Quantity Value(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => StatedValue.TryRead(value.GetString()!, out Quantity exact)
            ? exact
            : throw new FormatException($"Expected a fraction such as \"1/3\", but found \"{value.GetString()}\"."),
        JsonValueKind.Number => Quantity.Numeric(value.GetDouble()),
        JsonValueKind.Null => Quantity.Undetermined,
        _ => throw new FormatException($"Expected a fraction as text, a number or null, but found {value.ValueKind.ToString().ToLowerInvariant()}."),
    };
}
