using Fractions;
using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>Fills a declaration from the tree of a document.</summary>
internal sealed class NetlistDocument
{
    private static readonly Declared<double> s_one = new(1);
    private static readonly Declared<double> s_zero = new(0);

    private readonly TomlEntry _root;
    private readonly TomlValues _values;
    private readonly DiagnosticList _findings;
    private readonly bool _isComplete;
    private readonly HashSet<string> _meant;
    private readonly NetlistDeclaration _declaration;

    private NetlistDocument(TomlEntry root, DiagnosticList findings, bool isComplete)
    {
        _root = root;
        _values = new TomlValues(findings);
        _findings = findings;
        _isComplete = isComplete;
        _meant = CheckKeys(root, NetlistKeys.Root, "the document");
        _declaration = new NetlistDeclaration
        {
            Name = Text(NetlistKeys.Name, "Give the converter a name: name = \"Half\".")?.Value ?? "netlist",
            Position = root.Position,
            Input = Text(NetlistKeys.Input, "Name the node that the input source holds: input = \"vin\"."),
            Output = Text(NetlistKeys.Output, "Name the node that the load is connected to: output = \"vout\"."),
        };
    }

    /// <summary>Reads a document.</summary>
    /// <param name="root">The tree of the document.</param>
    /// <param name="findings">Takes the mistakes.</param>
    /// <param name="isComplete">False where parts of the document were left out because of syntax errors: then nothing counts as missing.</param>
    public static NetlistDeclaration Read(TomlEntry root, DiagnosticList findings, bool isComplete) =>
        new NetlistDocument(root, findings, isComplete).Read();

    private NetlistDeclaration Read()
    {
        if (_declaration.Input is null || _declaration.Output is null)
        {
            _declaration.Gaps |= DeclarationGaps.Ports;
        }

        if (!_isComplete || _root.Entries.Any(e => Array.IndexOf(NetlistKeys.Root, e.Key) < 0))
        {
            _declaration.Gaps |= DeclarationGaps.All;
        }

        if (_root.Find(NetlistKeys.Load) is { } load)
        {
            ReadLoad(load);
        }

        ReadPhases(Table(NetlistKeys.Phases, DeclarationGaps.Phases));
        foreach (TomlEntry capacitor in Elements(NetlistKeys.Capacitors, "capacitor", DeclarationGaps.Elements))
        {
            (string positive, string bottom) = Between(capacitor, "capacitor", NetlistKeys.Capacitor);
            _declaration.Capacitors.Add(new DeclaredCapacitor(
                new Declared<string>(capacitor.Key, capacitor.Position),
                positive,
                bottom,
                _values.Quantity(capacitor, NetlistKeys.Farads, "capacitance", "farads") ?? s_one,
                _values.Quantity(capacitor, NetlistKeys.EsrOhms, "series resistance", "ohms") ?? s_zero));
        }

        foreach (TomlEntry @switch in Elements(NetlistKeys.Switches, "switch", DeclarationGaps.Elements | DeclarationGaps.Switches))
        {
            (string first, string second) = Between(@switch, "switch", NetlistKeys.Switch);
            _declaration.Switches.Add(new DeclaredSwitch(
                new Declared<string>(@switch.Key, @switch.Position),
                first,
                second,
                _values.Quantity(@switch, NetlistKeys.Ohms, "on-resistance", "ohms") ?? s_one,
                On(@switch)));
        }

        if (Table(NetlistKeys.Modes, DeclarationGaps.None) is { } modes)
        {
            ReadModes(modes);
        }

        return _declaration;
    }

    private Declared<string>? Text(string key, string advice)
    {
        if (_root.Find(key) is { } entry)
        {
            return _values.Text(entry, entry.Value, $"'{key}'");
        }

        if (_isComplete && !_meant.Contains(key))
        {
            _findings.Error(DiagnosticCodes.MissingKey, $"The document has no key '{key}'. {advice}", _root.Position);
        }

        return null;
    }

    private void ReadLoad(TomlEntry entry)
    {
        string load = entry.Value is StringValueSyntax text ? TomlValues.TextOf(text, _findings) : string.Empty;
        _declaration.Load = load == "current" ? LoadKind.Current : LoadKind.Stiff;
        if (load is not ("current" or "stiff"))
        {
            _values.Wrong("\"stiff\" or \"current\"", entry, entry.Value, "'load'");
        }
    }

    private void ReadPhases(TomlEntry? table)
    {
        if (table is null)
        {
            return;
        }

        CheckKeys(table, NetlistKeys.Phase, "[phases]");
        if (table.Find(NetlistKeys.Count) is { Value: IntegerValueSyntax whole })
        {
            _declaration.PhaseCount = new(whole.Value, TomlValues.PositionOf(whole, _findings));
        }
        else if (table.Find(NetlistKeys.Count) is { } count)
        {
            _values.Wrong("a whole number", count, count.Value, "the number of phases");
        }

        if (table.Find(NetlistKeys.Duty) is { } duty)
        {
            _declaration.Duties = _values.Items<Fraction>(
                duty, "an array with one number per phase", "the duties", (value, j) => _values.Exact(duty, value, $"the duty of phase {j}"));
        }

        if (table.Find(NetlistKeys.Names) is { } names)
        {
            _declaration.PhaseNames = _values.Items<string>(
                names, "an array with one string per phase", "the names of the phases", (value, j) => _values.Text(names, value, $"the name of phase {j}"));
        }

        int read = (_declaration.PhaseCount is null ? 0 : 1) + (_declaration.Duties is null ? 0 : 1) + (_declaration.PhaseNames is null ? 0 : 1);
        if (read < table.Entries.Count)
        {
            _declaration.Gaps |= DeclarationGaps.Phases;
        }
    }

    // the elements of a table that are tables themselves; the others are reported
    private IEnumerable<TomlEntry> Elements(string section, string kind, DeclarationGaps gaps)
    {
        foreach (TomlEntry entry in Table(section, gaps)?.Entries ?? [])
        {
            if (IsNamed(entry, kind) && IsTable(entry, "a table such as { between = [\"a\", \"b\"] }", kind))
            {
                yield return entry;
            }
            else
            {
                _declaration.Gaps |= gaps;
            }
        }
    }

    private (string First, string Second) Between(TomlEntry element, string kind, string[] known)
    {
        string[] elements = [element.Key];
        if (!element.Entries.All(e => Array.IndexOf(known, e.Key) >= 0)
            && CheckKeys(element, known, $"{kind} {Quoted.Name(element.Key)}", elements).Contains(NetlistKeys.Between))
        {
            // the misspelt key was reported
        }
        else if (element.Find(NetlistKeys.Between) is not { } between)
        {
            _findings.Error(DiagnosticCodes.MissingKey, $"The {kind} {Quoted.Name(element.Key)} has no key 'between'. Name its two nodes: between = [\"a\", \"b\"].", element.Position, elements);
        }
        else if (between.Value is ArraySyntax { Items: { ChildrenCount: 2 } nodes })
        {
            if (Node(between, nodes.GetChild(0)?.Value, kind, elements) is { } first && Node(between, nodes.GetChild(1)?.Value, kind, elements) is { } second)
            {
                return (first, second);
            }
        }
        else if (between.Value is ArraySyntax array)
        {
            _findings.Error(DiagnosticCodes.WrongValue, $"Expected two nodes for 'between' of {kind} {Quoted.Name(element.Key)}, but got {array.Items.ChildrenCount}.", TomlValues.PositionOf(array, _findings), elements);
        }
        else
        {
            _values.Wrong("an array of two nodes", between, between.Value, $"'between' of {kind} {Quoted.Name(element.Key)}", elements);
        }

        _declaration.Gaps |= DeclarationGaps.Elements;
        return (string.Empty, string.Empty);
    }

    // a sound name, the rule in a large document, is read without composing the words for a message
    private string? Node(TomlEntry between, ValueSyntax? value, string kind, string[] elements) => value is StringValueSyntax { Value.Length: > 0 } text
        ? TomlValues.TextOf(text, _findings)
        : _values.Text(between, value, $"a node of {kind} {Quoted.Name(elements[0])}", elements)?.Value;

    private Declared<DeclaredPhase[]>? On(TomlEntry @switch)
    {
        if (@switch.Find(NetlistKeys.On) is { } on)
        {
            return new Declared<DeclaredPhase[]>(ClosedPhases(on, @switch.Key), on.Position);
        }

        bool mayHaveModes = _root.Find(NetlistKeys.Modes) is not null || !_isComplete || _meant.Contains(NetlistKeys.Modes);
        bool isMisspelt = @switch.Entries.Any(e => Array.IndexOf(NetlistKeys.Switch, e.Key) < 0 && NetlistKeys.Nearest(e.Key, NetlistKeys.Switch) == NetlistKeys.On);
        if (!mayHaveModes && !isMisspelt)
        {
            _findings.Error(DiagnosticCodes.MissingKey, $"The switch {Quoted.Name(@switch.Key)} has no key 'on', and the document has no [modes]. Say when it is closed: on = [1].", @switch.Position, [@switch.Key]);
        }

        return null;
    }

    // a phase or an array of phases, each by number or name; what is neither is reported and left out
    private DeclaredPhase[] ClosedPhases(TomlEntry entry, string switchName)
    {
        if (entry.Value is not ArraySyntax array)
        {
            return Phase(entry, entry.Value, switchName, "a phase or an array of phases") is { } only ? [only] : [];
        }

        var phases = new List<DeclaredPhase>(array.Items.ChildrenCount);
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (Phase(entry, item.Value, switchName, "a phase") is { } phase)
            {
                phases.Add(phase);
            }
        }

        return [.. phases];
    }

    private DeclaredPhase? Phase(TomlEntry entry, ValueSyntax? value, string switchName, string expected)
    {
        switch (value)
        {
            case IntegerValueSyntax whole:
                return new DeclaredPhase(whole.Value, null, TomlValues.PositionOf(value, _findings));
            case StringValueSyntax { Value.Length: > 0 } name:
                return new DeclaredPhase(0, TomlValues.TextOf(name, _findings), TomlValues.PositionOf(value, _findings));
            default:
                _values.Wrong($"{expected} (a number from 1, or a name)", entry, value, $"when switch {Quoted.Name(switchName)} is closed", [switchName]);
                return null;
        }
    }

    private void ReadModes(TomlEntry table)
    {
        if (table.Entries.Count == 0)
        {
            _findings.Error(DiagnosticCodes.MissingKey, $"The table 'modes' has no mode. Add one such as [modes.\"1/2\"], or leave the table out.", table.Position);
        }

        foreach (TomlEntry mode in table.Entries)
        {
            if (IsNamed(mode, "mode") && IsTable(mode, "a table with the closed phases of each switch", "mode"))
            {
                _declaration.Modes.Add(new DeclaredMode(
                    new Declared<string>(mode.Key, mode.Position),
                    [.. mode.Entries.Select(c => new DeclaredClosing(new Declared<string>(c.Key, c.Position), ClosedPhases(c, c.Key)))]));
            }
        }
    }

    private TomlEntry? Table(string key, DeclarationGaps gaps)
    {
        if (_root.Find(key) is not { } entry)
        {
            return null;
        }

        if (!entry.IsTable)
        {
            _values.Wrong($"a table [{key}]", entry, entry.Value, $"'{key}'");
            _declaration.Gaps |= gaps;
            return null;
        }

        return entry;
    }

    private bool IsNamed(TomlEntry entry, string kind)
    {
        if (entry.Key.Length == 0)
        {
            _findings.Error(DiagnosticCodes.WrongValue, $"Expected a non-empty name of a {kind}, but got an empty one.", entry.Position);
        }

        return entry.Key.Length > 0;
    }

    private bool IsTable(TomlEntry entry, string expected, string kind)
    {
        if (!entry.IsTable)
        {
            _values.Wrong(expected, entry, entry.Value, $"{kind} {Quoted.Name(entry.Key)}", kind == "mode" ? null : [entry.Key]);
        }

        return entry.IsTable;
    }

    // the known keys that unknown ones stand for, so that these are not reported as missing
    private HashSet<string> CheckKeys(TomlEntry table, string[] known, string where, string[]? elements = null)
    {
        HashSet<string> meant = [];
        foreach (TomlEntry entry in table.Entries.Where(e => Array.IndexOf(known, e.Key) < 0))
        {
            string? nearest = NetlistKeys.Nearest(entry.Key, known);
            string advice = nearest is null ? $"The keys are {string.Join(", ", known)}." : $"Did you mean '{nearest}'?";
            _findings.Error(DiagnosticCodes.UnknownKey, $"There is no key {Quoted.Name(entry.Key)} in {where}. {advice}", entry.Position, elements);
            if (nearest is not null)
            {
                meant.Add(nearest);
            }
        }

        return meant;
    }
}
