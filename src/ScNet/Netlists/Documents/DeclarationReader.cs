using Tomlyn.Syntax;

namespace ScNet.Netlists.Documents;

/// <summary>Fills a declaration from the tree of a document.</summary>
internal sealed class DeclarationReader
{
    private readonly DocumentErrors _errors;
    private readonly ValueReader _values;
    private readonly KeyCheck _keys;
    private readonly bool _complete;

    private DeclarationReader(DocumentErrors errors, bool complete)
    {
        _errors = errors;
        _values = new ValueReader(errors);
        _keys = new KeyCheck(errors);
        _complete = complete;
    }

    /// <summary>Reads a document.</summary>
    /// <param name="root">The tree of the document.</param>
    /// <param name="errors">Takes the mistakes.</param>
    /// <param name="complete">False where parts of the document were left out because of syntax errors: then nothing counts as missing.</param>
    public static NetlistDeclaration Read(DocumentTable root, DocumentErrors errors, bool complete) =>
        new DeclarationReader(errors, complete).Read(root);

    private NetlistDeclaration Read(DocumentTable root)
    {
        SourcePosition start = new(_errors.File, 1, 1);
        HashSet<string>? meant = _keys.Check(root, NetlistKeys.Root, "the document");
        NetlistDeclaration declaration = new()
        {
            Name = ReadText(root, NetlistKeys.Name, "Give the converter a name: name = \"Half\".", meant)?.Value ?? "netlist",
            Position = start,
            Input = ReadText(root, NetlistKeys.Input, "Name the node that the input source holds: input = \"vin\".", meant),
            Output = ReadText(root, NetlistKeys.Output, "Name the node that the load hangs on: output = \"vout\".", meant),
        };
        if (declaration.Input is null || declaration.Output is null)
        {
            declaration.Gaps |= DeclarationGaps.Ports;
        }

        if (!_complete || meant is not null || root.Entries.Exists(e => Array.IndexOf(NetlistKeys.Root, e.Key) < 0))
        {
            declaration.Gaps |= DeclarationGaps.All;
        }

        ReadLoad(root, declaration);
        ReadTables(root, declaration, meant);
        return declaration;
    }

    private Declared<string>? ReadText(DocumentTable root, string key, string advice, HashSet<string>? meant)
    {
        if (root.Find(key) is { } entry)
        {
            return _values.Text(entry, $"'{key}'");
        }

        if (_complete && meant?.Contains(key) != true)
        {
            _errors.Add(DiagnosticCodes.MissingKey, $"The document has no key '{key}'. {advice}", new SourcePosition(_errors.File, 1, 1));
        }

        return null;
    }

    private void ReadLoad(DocumentTable root, NetlistDeclaration declaration)
    {
        if (root.Find(NetlistKeys.Load) is not { } entry)
        {
            return;
        }

        switch (entry.Value)
        {
            case StringValueSyntax { Value: "stiff" }:
                declaration.Load = LoadKind.Stiff;
                break;
            case StringValueSyntax { Value: "current" }:
                declaration.Load = LoadKind.Current;
                break;
            default:
                _values.WrongType("\"stiff\" or \"current\"", entry, "'load'");
                break;
        }
    }

    private void ReadTables(DocumentTable root, NetlistDeclaration declaration, HashSet<string>? meant)
    {
        PhaseReader phases = new(_values, declaration);
        ElementReader elements = new(_values, _keys, phases, declaration);
        bool hasModes = root.Find(NetlistKeys.Modes) is not null || !_complete || meant?.Contains(NetlistKeys.Modes) == true;
        if (Open(root, NetlistKeys.Phases, DeclarationGaps.Phases, declaration) is { } phaseTable)
        {
            _keys.Check(phaseTable, NetlistKeys.Phase, "[phases]");
            phases.ReadTable(phaseTable);
        }

        if (Open(root, NetlistKeys.Capacitors, DeclarationGaps.Elements, declaration) is { } capacitors)
        {
            elements.ReadCapacitors(capacitors);
        }

        if (Open(root, NetlistKeys.Switches, DeclarationGaps.Elements | DeclarationGaps.Switches, declaration) is { } switches)
        {
            elements.ReadSwitches(switches, hasModes);
        }

        if (Open(root, NetlistKeys.Modes, DeclarationGaps.None, declaration) is { } modes)
        {
            ReadModes(root.Find(NetlistKeys.Modes)!, modes, phases, declaration);
        }
    }

    private DocumentTable? Open(DocumentTable root, string key, DeclarationGaps gaps, NetlistDeclaration declaration)
    {
        if (root.Find(key) is not { } entry)
        {
            return null;
        }

        if (entry.Table is { Form: not TableForm.Array } table)
        {
            return table;
        }

        _values.WrongType($"a table [{key}]", entry, $"'{key}'");
        declaration.Gaps |= gaps;
        return null;
    }

    private void ReadModes(DocumentEntry entry, DocumentTable table, PhaseReader phases, NetlistDeclaration declaration)
    {
        if (table.Entries.Count == 0)
        {
            _errors.Add(DiagnosticCodes.MissingKey, $"The table 'modes' has no mode. Add one such as [modes.\"1/2\"], or leave the table out.", entry.Position);
        }

        foreach (DocumentEntry mode in table.Entries)
        {
            if (mode.Key.Length == 0)
            {
                _errors.Add(DiagnosticCodes.WrongValue, $"Expected a non-empty name of a mode, but got an empty one.", mode.Position);
            }
            else if (mode.Table is not { Form: not TableForm.Array } body)
            {
                _values.WrongType("a table with the closed phases of each switch", mode, $"mode {Quoted.Name(mode.Key)}");
            }
            else
            {
                var closings = new List<DeclaredClosing>(body.Entries.Count);
                foreach (DocumentEntry closing in body.Entries)
                {
                    closings.Add(new DeclaredClosing(new Declared<string>(closing.Key, closing.Position), phases.ReadOn(closing, closing.Key)));
                }

                declaration.Modes.Add(new DeclaredMode(new Declared<string>(mode.Key, mode.Position), closings));
            }
        }
    }
}
