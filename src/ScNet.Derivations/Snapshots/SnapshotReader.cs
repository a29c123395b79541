using System.Text.Json;
using ScNet.Netlists.Toml;

namespace ScNet.Derivations.Snapshots;

/// <summary>Reads the values of an analysis document. Keys that it does not know are skipped.</summary>
internal sealed class SnapshotReader
{
    /// <summary>The version of the format that is read; a document that names none is of the first.</summary>
    internal const int FormatVersion = 1;

    // a document of the largest netlist has some 50 MiB; of more than this, reading it would take gigabytes
    private const int MaximumBytes = 256 * 1024 * 1024;

    private readonly List<SnapshotMode> _modes = [];
    private readonly HashSet<string> _names = new(StringComparer.Ordinal);
    private List<SnapshotEntry> _entries = [];

    /// <summary>The converter's name and its modes.</summary>
    /// <exception cref="ScNetException">The text is no analysis document of one converter.</exception>
    public static (string Converter, IReadOnlyList<SnapshotMode> Modes) Read(string json, string? file)
    {
        if (HalfCharacter.IndexIn(json) is >= 0 and int half)
        {
            throw Failed(DiagnosticCodes.Syntax, HalfCharacter.Message(json[half]), JsonPlaces.After(json.AsSpan(0, half), file));
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(json);
            return Read(document.RootElement, json, file);
        }
        catch (JsonException error)
        {
            throw Failed(DiagnosticCodes.Syntax, WordsOf(error), JsonPlaces.Of(json, error.LineNumber ?? 0, error.BytePositionInLine ?? 0, file));
        }
    }

    private static (string Converter, IReadOnlyList<SnapshotMode> Modes) Read(JsonElement root, string json, string? file)
    {
        try
        {
            JsonMembers.RefuseRepeats(root);
            SnapshotReader reader = new();
            string converter = reader.ReadDocument(root);
            return (converter, [.. reader._modes]);
        }
        catch (SnapshotFaultException fault)
        {
            throw Failed(fault.Code, fault.Message, JsonPlaces.Of(json, root, fault.Place, file));
        }
    }

    // on one line, and without the place, which is told otherwise
    private static string WordsOf(JsonException error)
    {
        int end = error.Message.LastIndexOf(" LineNumber:", StringComparison.Ordinal);
        return Printable.Of(end < 0 ? error.Message : error.Message[..end]);
    }

    /// <summary>The text of a file in UTF-8.</summary>
    /// <exception cref="ScNetException">The file is larger than any analysis document.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static string ReadText(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using MemoryStream bytes = new();
        byte[] buffer = new byte[1 << 16];
        for (int read = stream.Read(buffer); read > 0; read = stream.Read(buffer))
        {
            bytes.Write(buffer, 0, read);
            if (bytes.Length > MaximumBytes)
            {
                throw Failed(DiagnosticCodes.FileTooLarge, FormattableString.Invariant($"Expected at most {MaximumBytes} bytes, but the file has more. Save the analysis of fewer modes."), new SourcePosition(path, 0, 0));
            }
        }

        bytes.Position = 0;
        using StreamReader reader = new(bytes);
        return reader.ReadToEnd();
    }

    private static ScNetException Failed(string code, string message, SourcePosition position) => new(
        "Expected the analysis document of one converter:",
        [new Diagnostic(DiagnosticSeverity.Error, code, message, position: position)]);

    private static SnapshotFaultException Wrong(string message, JsonElement place) => new(DiagnosticCodes.WrongValue, message, place);

    private string ReadDocument(JsonElement root)
    {
        if (JsonMembers.Find(root, "format") is { } format && JsonMembers.Number(format) != FormatVersion)
        {
            throw new SnapshotFaultException(
                DiagnosticCodes.ValueOutOfRange,
                FormattableString.Invariant($"Expected version {FormatVersion} of the format, but got {Quoted.Plain(format.GetRawText())}. Read it with the version of ScNet that wrote it, or save the analysis anew."),
                format);
        }

        string converter = JsonMembers.Text(JsonMembers.Of(root, "converter"))
            ?? throw Wrong("The document is of a file that could not be read: it has no converter.", root);
        foreach (JsonElement mode in JsonMembers.Items(JsonMembers.Of(root, "modes")))
        {
            string name = JsonMembers.Text(JsonMembers.Of(mode, "mode")) ?? string.Empty;
            if (!_names.Add(name))
            {
                throw Wrong($"The mode {Quoted.Name(name)} is there twice.", mode);
            }

            _entries = [];
            // what is too large for its impedance has an error, and all else
            bool hasResult = JsonMembers.Text(JsonMembers.Of(mode, "status")) == "ok" || JsonMembers.Of(mode, "ratio").ValueKind != JsonValueKind.Null;
            string? determinedBy = null;
            if (hasResult)
            {
                JsonElement flow = JsonMembers.Of(mode, "chargeFlow");
                determinedBy = JsonMembers.Text(JsonMembers.Of(flow, "determinedBy")) ?? throw Wrong("Expected what decides the flow, but found null.", flow);
                ReadMode(mode, flow);
            }

            _modes.Add(new SnapshotMode(name, determinedBy, _entries));
        }

        return converter;
    }

    private void ReadMode(JsonElement mode, JsonElement flow)
    {
        Add(SnapshotQuantity.Ratio, null, JsonMembers.Of(mode, "ratio"));
        AddPhases(SnapshotQuantity.InputCharge, null, JsonMembers.Of(flow, "input"));
        AddPhases(SnapshotQuantity.OutputCharge, null, JsonMembers.Of(flow, "output"));
        ForEach(JsonMembers.Of(flow, "capacitors"), (name, value) => AddPhases(SnapshotQuantity.CapacitorCharge, name, value));
        ForEach(JsonMembers.Of(flow, "switches"), (name, value) => AddPhases(SnapshotQuantity.SwitchCharge, name, value));
        JsonElement slow = JsonMembers.Of(mode, "slowSwitchingLimit"), fast = JsonMembers.Of(mode, "fastSwitchingLimit");
        ForEach(JsonMembers.Of(slow, "coefficients"), (name, value) => Add(SnapshotQuantity.SlowCoefficient, name, value));
        Add(SnapshotQuantity.SlowSwitchingLimit, null, JsonMembers.Of(slow, "ohmsAtOneHertz"));
        ForEach(JsonMembers.Of(fast, "coefficients"), (name, value) => Add(SnapshotQuantity.FastCoefficient, name, value));
        Add(SnapshotQuantity.FastSwitchingLimit, null, JsonMembers.Of(fast, "ohms"));
        ForEach(JsonMembers.Of(mode, "capacitorVoltages"), (name, value) => Add(SnapshotQuantity.CapacitorVoltage, name, value));
        ForEach(JsonMembers.Of(mode, "blockingVoltages"), (name, value) =>
        {
            AddPhases(SnapshotQuantity.BlockingVoltage, name, JsonMembers.Of(value, "perPhase"));
            Add(SnapshotQuantity.PeakBlockingVoltage, name, JsonMembers.Of(value, "peak"));
        });
        if (JsonMembers.Find(mode, "outputImpedance") is { ValueKind: JsonValueKind.Array } points)
        {
            foreach (JsonElement point in points.EnumerateArray())
            {
                SnapshotKey key = new(SnapshotQuantity.OutputImpedance, Hertz: JsonMembers.Number(JsonMembers.Of(point, "hertz")));
                _entries.Add(new SnapshotEntry(key, Value(JsonMembers.Of(point, "ohms"))));
            }
        }
    }

    private void AddPhases(SnapshotQuantity what, string? element, JsonElement values)
    {
        int phase = 0;
        foreach (JsonElement value in JsonMembers.Items(values))
        {
            _entries.Add(new SnapshotEntry(new SnapshotKey(what, element, ++phase), Value(value)));
        }
    }

    private void Add(SnapshotQuantity what, string? element, JsonElement value) =>
        _entries.Add(new SnapshotEntry(new SnapshotKey(what, element), Value(value)));

    private static void ForEach(JsonElement members, Action<string, JsonElement> action)
    {
        foreach ((string name, JsonElement value) in JsonMembers.Members(members))
        {
            action(name, value);
        }
    }

    private static Quantity Value(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => StatedValue.TryRead(JsonMembers.Text(value)!, out Quantity exact)
            ? exact
            : throw Wrong($"Expected a fraction such as \"1/3\", but found \"{Quoted.Plain(value.GetString()!)}\".", value),
        JsonValueKind.Number => Quantity.Numeric(JsonMembers.Number(value)),
        JsonValueKind.Null => Quantity.Undetermined,
        _ => throw JsonMembers.Wrong("a fraction as text, a number or null", value),
    };
}
