using Fractions;
using Tomlyn.Syntax;

namespace ScNet.Netlists.Toml;

/// <summary>Fills a declaration from the tree of a document.</summary>
internal sealed class NetlistDocument
{
    private readonly TomlEntry _root;
    private readonly TomlValues _values;
    private readonly PhaseEntries _phases;
    private readonly DiagnosticList _findings;
    private readonly bool _isComplete;
    private readonly HashSet<string> _meant;
    private readonly NetlistDeclaration _declaration;

    private NetlistDocument(TomlEntry root, DiagnosticList findings, bool isComplete)
    {
        _root = root;
        _values = new TomlValues(findings);
        _phases = new PhaseEntries(_values, findings);
        _findings = findings;
        _isComplete = isComplete;
        _meant = TomlKeys.Check(root, NetlistKeys.Root, "the document", NetlistKeys.Format, findings);
        _declaration = new NetlistDeclaration
        {
            Name = Text(NetlistKeys.Name, "Give the converter a name: name = \"Half\".")?.Value ?? "netlist",
            Position = root.Position,
            Input = Text(NetlistKeys.Input, "Name the node that the input source holds: input = \"vin\"."),
            Output = Text(NetlistKeys.Output, "Name the node that the load is connected to: output = \"vout\"."),
        };
        AddGaps(DeclarationGaps.Ports, _declaration.Input is null || _declaration.Output is null);
        AddGaps(DeclarationGaps.All, !isComplete || !TomlKeys.AreKnown(root, NetlistKeys.Root));
    }

    /// <summary>Reads a document.</summary>
    /// <param name="root">The tree of the document.</param>
    /// <param name="findings">Takes the mistakes.</param>
    /// <param name="isComplete">False where parts of the document were left out because of syntax errors: then nothing counts as missing.</param>
    public static NetlistDeclaration Read(TomlEntry root, DiagnosticList findings, bool isComplete) =>
        new NetlistDocument(root, findings, isComplete).Read();

    private NetlistDeclaration Read()
    {
        ReadLoad();
        ReadPhases();
        foreach (ElementEntry c in Elements(ElementShape.Capacitor))
        {
            _declaration.Capacitors.Add(new DeclaredCapacitor(
                c.Name, c.First, c.Second, _values.Quantity(c.Entry, QuantityKey.Farads), _values.Quantity(c.Entry, QuantityKey.EsrOhms))
            {
                BottomFarads = _values.Quantity(c.Entry, QuantityKey.BottomFarads),
                TopFarads = _values.Quantity(c.Entry, QuantityKey.TopFarads),
                Body = Body(c.Entry),
                Controlled = Controlled(c.Entry),
            });
        }

        foreach (ElementEntry s in Elements(ElementShape.Switch, DeclarationGaps.Switches))
        {
            _declaration.Switches.Add(new DeclaredSwitch(
                s.Name, s.First, s.Second, _values.Quantity(s.Entry, QuantityKey.Ohms), On(s.Entry))
            {
                DiodeVolts = s.Entry.Find(QuantityKey.DiodeVolts.Key) is null ? null : _values.Quantity(s.Entry, QuantityKey.DiodeVolts),
            });
        }

        foreach (ElementEntry l in Elements(ElementShape.Inductor, DeclarationGaps.Switches))
        {
            _declaration.Inductors.Add(new DeclaredInductor(
                l.Name, l.First, l.Second, _values.Quantity(l.Entry, QuantityKey.Henries), _values.Quantity(l.Entry, QuantityKey.WindingOhms), UntilZero(l.Entry)));
        }

        foreach (ElementEntry p in Elements(ElementShape.Parasitic))
        {
            if (p.Entry.Find(QuantityKey.Farads.Key) is null && TomlKeys.AreKnown(p.Entry, ElementShape.Parasitic.Keys))
            {
                _findings.Error(DiagnosticCodes.MissingKey, $"The parasitic capacitance {Quoted.Name(p.Entry.Key)} has no key 'farads'. Give its capacitance: farads = 1e-12.", p.Entry.Position, [p.Entry.Key]);
            }

            _declaration.Parasitics.Add(new DeclaredParasitic(p.Name, p.First, p.Second, _values.Quantity(p.Entry, QuantityKey.Farads)));
        }

        foreach (ElementEntry o in Elements(ElementShape.FurtherOutput))
        {
            _declaration.FurtherOutputs.Add(new DeclaredOutput(o.Name, o.First, o.Second));
        }

        if (Table(NetlistKeys.Modes, DeclarationGaps.None) is { } modes)
        {
            _declaration.Modes.AddRange(_phases.Modes(modes));
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

    private void ReadLoad()
    {
        if (_root.Find(NetlistKeys.Load) is not { } entry)
        {
            return;
        }

        string load = entry.Value is StringValueSyntax text ? TomlValues.TextOf(text, _findings) : string.Empty;
        _declaration.Load = load == "current" ? LoadKind.Current : LoadKind.Stiff;
        if (load is not ("current" or "stiff"))
        {
            _values.Wrong("\"stiff\" or \"current\"", entry, entry.Value, "'load'");
        }
    }

    private void ReadPhases()
    {
        if (Table(NetlistKeys.Phases, DeclarationGaps.Phases) is not { } table)
        {
            return;
        }

        TomlKeys.Check(table, NetlistKeys.Phase, "[phases]", NetlistKeys.Format, _findings);
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
        AddGaps(DeclarationGaps.Phases, read < table.Entries.Count);
    }

    private List<ElementEntry> Elements(ElementShape shape, DeclarationGaps gaps = DeclarationGaps.None)
    {
        if (Table(shape.Table, DeclarationGaps.Elements | gaps) is not { } table)
        {
            return [];
        }

        ElementEntries entries = new(_values, _findings);
        List<ElementEntry> elements = entries.Read(table, shape);
        AddGaps(DeclarationGaps.Elements, entries.HasGaps);
        AddGaps(gaps, elements.Count < table.Entries.Count);
        return elements;
    }

    private Declared<string> Body(TomlEntry capacitor) => capacitor.Find(NetlistKeys.Body) is { } body
        && _values.Text(body, body.Value, $"the body of capacitor {Quoted.Name(capacitor.Key)}", [capacitor.Key]) is { } node
        ? node
        : new Declared<string>(Converter.ReferenceNode);

    private Declared<Fraction>? Controlled(TomlEntry capacitor) => capacitor.Find(NetlistKeys.Controlled) is { } share
        ? _values.Exact(share, share.Value, $"the controlled share of capacitor {Quoted.Name(capacitor.Key)}")
        : null;

    private Declared<DeclaredPhase[]>? UntilZero(TomlEntry inductor) => inductor.Find(NetlistKeys.UntilZero) is { } ended
        ? new Declared<DeclaredPhase[]>(_phases.Closed(ended, inductor.Key, ElementShape.Inductor.Kind), ended.Position)
        : null;

    private Declared<DeclaredPhase[]>? On(TomlEntry @switch)
    {
        if (@switch.Find(NetlistKeys.On) is { } on)
        {
            return new Declared<DeclaredPhase[]>(_phases.Closed(on, @switch.Key), on.Position);
        }

        string[] keys = ElementShape.Switch.Keys;
        bool mayHaveModes = _root.Find(NetlistKeys.Modes) is not null || !_isComplete || _meant.Contains(NetlistKeys.Modes);
        bool isMisspelt = @switch.Entries.Any(e => Array.IndexOf(keys, e.Key) < 0 && NetlistKeys.Nearest(e.Key, keys) == NetlistKeys.On);
        if (!mayHaveModes && !isMisspelt)
        {
            _findings.Error(DiagnosticCodes.MissingKey, $"The switch {Quoted.Name(@switch.Key)} has no key 'on', and the document has no [modes]. Say when it is closed: on = [1].", @switch.Position, [@switch.Key]);
        }

        return null;
    }

    // a table of the document; null where it is not there, or is no table, which is reported
    private TomlEntry? Table(string key, DeclarationGaps gaps)
    {
        if (_root.Find(key) is not { IsTable: false } entry)
        {
            return _root.Find(key);
        }

        _values.Wrong($"a table [{key}]", entry, entry.Value, $"'{key}'");
        AddGaps(gaps, true);
        return null;
    }

    private void AddGaps(DeclarationGaps gaps, bool areThere) => _declaration.Gaps |= areThere ? gaps : DeclarationGaps.None;
}
