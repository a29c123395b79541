using System.Text.Json;

namespace ScNet.Derivations.Snapshots;

/// <summary>Reads the values of an analysis document. Keys that it does not know are skipped.</summary>
internal sealed class SnapshotReader
{
    private readonly List<SnapshotMode> _modes = [];
    private List<SnapshotEntry> _entries = [];

    /// <summary>The converter's name and its modes.</summary>
    /// <exception cref="ScNetException">The text is no analysis document of one converter.</exception>
    public static (string Converter, IReadOnlyList<SnapshotMode> Modes) Read(string json, string? file)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
            SnapshotReader reader = new();
            string converter = reader.ReadDocument(document.RootElement);
            return (converter, [.. reader._modes]);
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
            string name = Member(mode, "mode").GetString() ?? string.Empty;
            if (_modes.Exists(m => m.Name == name))
            {
                throw new FormatException($"The mode '{name}' is there twice.");
            }

            _entries = [];
            // what is too large for its impedance has an error, and all else
            bool hasResult = Member(mode, "status").GetString() == "ok" || Member(mode, "ratio").ValueKind != JsonValueKind.Null;
            string? determinedBy = hasResult ? Member(Member(mode, "chargeFlow"), "determinedBy").GetString() ?? throw new FormatException("Expected what decides the flow, but found null.") : null;
            if (hasResult)
            {
                ReadMode(mode);
            }

            _modes.Add(new SnapshotMode(name, determinedBy, _entries));
        }

        return converter;
    }

    private void ReadMode(JsonElement mode)
    {
        Add(SnapshotQuantity.Ratio, null, Member(mode, "ratio"));
        JsonElement flow = Member(mode, "chargeFlow");
        AddPhases(SnapshotQuantity.InputCharge, null, Member(flow, "input"));
        AddPhases(SnapshotQuantity.OutputCharge, null, Member(flow, "output"));
        ForEach(Member(flow, "capacitors"), (name, value) => AddPhases(SnapshotQuantity.CapacitorCharge, name, value));
        ForEach(Member(flow, "switches"), (name, value) => AddPhases(SnapshotQuantity.SwitchCharge, name, value));
        JsonElement slow = Member(mode, "slowSwitchingLimit"), fast = Member(mode, "fastSwitchingLimit");
        ForEach(Member(slow, "coefficients"), (name, value) => Add(SnapshotQuantity.SlowCoefficient, name, value));
        Add(SnapshotQuantity.SlowSwitchingLimit, null, Member(slow, "ohmsAtOneHertz"));
        ForEach(Member(fast, "coefficients"), (name, value) => Add(SnapshotQuantity.FastCoefficient, name, value));
        Add(SnapshotQuantity.FastSwitchingLimit, null, Member(fast, "ohms"));
        ForEach(Member(mode, "capacitorVoltages"), (name, value) => Add(SnapshotQuantity.CapacitorVoltage, name, value));
        ForEach(Member(mode, "blockingVoltages"), (name, value) =>
        {
            AddPhases(SnapshotQuantity.BlockingVoltage, name, Member(value, "perPhase"));
            Add(SnapshotQuantity.PeakBlockingVoltage, name, Member(value, "peak"));
        });
        if (mode.TryGetProperty("outputImpedance", out JsonElement points) && points.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement point in points.EnumerateArray())
            {
                SnapshotKey key = new(SnapshotQuantity.OutputImpedance, Hertz: Member(point, "hertz").GetDouble());
                _entries.Add(new SnapshotEntry(key, Value(Member(point, "ohms"))));
            }
        }
    }

    private void AddPhases(SnapshotQuantity what, string? element, JsonElement values)
    {
        int phase = 0;
        foreach (JsonElement value in values.EnumerateArray())
        {
            _entries.Add(new SnapshotEntry(new SnapshotKey(what, element, ++phase), Value(value)));
        }
    }

    private void Add(SnapshotQuantity what, string? element, JsonElement value) =>
        _entries.Add(new SnapshotEntry(new SnapshotKey(what, element), Value(value)));

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
