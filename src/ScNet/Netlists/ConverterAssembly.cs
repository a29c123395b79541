using Fractions;
using ScNet.Graphs;

namespace ScNet.Netlists;

/// <summary>Checks a declaration as a whole and makes the converter of it, or tells every mistake.</summary>
internal sealed class ConverterAssembly
{
    private static readonly Fraction s_dutyTolerance = new(1, 1_000_000_000);

    private readonly NetlistDeclaration _declaration;
    private readonly List<Diagnostic> _errors = [];
    private readonly List<Diagnostic> _warnings = [];
    private readonly List<string> _nodes = [];
    private readonly Dictionary<string, int> _nodeIndex = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _phaseNumber = new(StringComparer.Ordinal);

    private ConverterAssembly(NetlistDeclaration declaration) => _declaration = declaration;

    /// <summary>The converter, or null where there are mistakes.</summary>
    public Converter? Converter { get; private set; }

    /// <summary>Every mistake, or the warnings where there is none.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics => _errors.Count > 0 ? _errors : _warnings;

    public static ConverterAssembly Of(NetlistDeclaration declaration)
    {
        ConverterAssembly assembly = new(declaration);
        assembly.Assemble();
        return assembly;
    }

    private void Assemble()
    {
        CheckPorts();
        Phase[] phases = ReadPhases();
        CheckNames();
        CheckValues();
        Mode[] modes = ReadModes(phases.Length);
        if (_errors.Count > 0)
        {
            return;
        }

        SwitchedNetwork network = Number(phases, modes);
        FindFloatingTerminals(network);
        Converter = new Converter(
            _declaration.Name,
            _declaration.Input!.Value.Value,
            _declaration.Output!.Value.Value,
            _declaration.Load,
            phases,
            [.. _declaration.Capacitors.Select(c => new Capacitor(c.Name.Value, c.Positive, c.Bottom, c.Farads.Value, c.EsrOhms.Value))],
            [.. _declaration.Switches.Select(s => new Switch(s.Name.Value, s.First, s.Second, s.Ohms.Value))],
            modes,
            [.. _nodes],
            network,
            _warnings);
    }

    private void CheckPorts()
    {
        Declared<string>? input = _declaration.Input;
        Declared<string>? output = _declaration.Output;
        if (input is null)
        {
            Error(DiagnosticCodes.MissingKey, "No input node is named. Name the node that the input source holds.", _declaration.Position);
        }

        if (output is null)
        {
            Error(DiagnosticCodes.MissingKey, "No output node is named. Name the node that the load hangs on.", _declaration.Position);
        }

        foreach ((string port, Declared<string>? node) in new[] { ("input", input), ("output", output) })
        {
            if (node is not { } declared)
            {
                continue;
            }

            if (declared.Value == Converter.ReferenceNode)
            {
                Error(DiagnosticCodes.PortClash, $"The {port} is the reference node '{declared.Value}'. Choose another node.", declared.Position);
            }
            else if (!_declaration.Capacitors.Any(c => c.Positive == declared.Value || c.Bottom == declared.Value)
                && !_declaration.Switches.Any(s => s.First == declared.Value || s.Second == declared.Value))
            {
                Error(DiagnosticCodes.PortUnconnected, $"No element touches the {port} node '{declared.Value}'. Connect one, or correct the node's name.", declared.Position);
            }
        }

        if (input is { } from && output is { } to && from.Value == to.Value)
        {
            Error(DiagnosticCodes.PortClash, $"Input and output are the same node '{to.Value}'. Choose two nodes.", to.Position);
        }
    }

    private Phase[] ReadPhases()
    {
        Declared<Fraction[]>? duties = _declaration.Duties;
        Declared<Declared<string>[]>? names = _declaration.PhaseNames;
        SourcePosition? position = duties?.Position ?? _declaration.PhaseCount?.Position ?? names?.Position;
        int count = duties?.Value.Length ?? _declaration.PhaseCount?.Value ?? names?.Value.Length ?? 2;
        if (_declaration.PhaseCount is { } declaredCount && declaredCount.Value != count)
        {
            Error(DiagnosticCodes.WrongValue, $"{declaredCount.Value} phases are declared, but {count} duties given. Leave one of the two out.", declaredCount.Position);
        }

        if (count < 2)
        {
            Error(DiagnosticCodes.TooFewPhases, $"Expected at least two phases, but got {count}.", position);
        }

        if (duties is { } given)
        {
            CheckDuties(given);
        }

        if (names is { } declaredNames && declaredNames.Value.Length != count)
        {
            Error(DiagnosticCodes.WrongValue, $"Expected {count} phase names, one per phase, but got {declaredNames.Value.Length}.", declaredNames.Position);
            names = null;
        }

        var phases = new Phase[count];
        for (int j = 0; j < count; j++)
        {
            Declared<string>? name = names?.Value[j];
            phases[j] = new Phase(j + 1, name?.Value ?? $"{j + 1}", duties?.Value[j] ?? new Fraction(1, count));
            if (name is { } declared && (declared.Value.Length == 0 || !_phaseNumber.TryAdd(declared.Value, j + 1)))
            {
                Error(DiagnosticCodes.DuplicateName, $"Phase {j + 1} needs a name of its own, but got '{declared.Value}'.", declared.Position, phase: j + 1);
            }
        }

        return phases;
    }

    private void CheckDuties(Declared<Fraction[]> duties)
    {
        Fraction sum = Fraction.Zero;
        for (int j = 0; j < duties.Value.Length; j++)
        {
            sum += duties.Value[j];
            if (duties.Value[j] <= Fraction.Zero)
            {
                Error(DiagnosticCodes.ValueOutOfRange, $"Expected a positive duty of phase {j + 1}, but got {duties.Value[j].ToDouble()}.", duties.Position, phase: j + 1);
            }
        }

        if ((sum - Fraction.One).Abs() > s_dutyTolerance)
        {
            Error(DiagnosticCodes.DutySum, $"Expected duties that sum to 1 within 1e-9, but these sum to {sum.ToDouble()}.", duties.Position);
        }
    }

    private void CheckNames()
    {
        Dictionary<string, SourcePosition?> seen = new(StringComparer.Ordinal);
        IEnumerable<Declared<string>> elements = _declaration.Capacitors.Select(c => c.Name).Concat(_declaration.Switches.Select(s => s.Name));
        foreach (Declared<string> name in elements)
        {
            if (!seen.TryAdd(name.Value, name.Position))
            {
                string first = seen[name.Value] is { } place ? $" (first at line {place.Line})" : string.Empty;
                Error(DiagnosticCodes.DuplicateName, $"Two elements are named '{name.Value}'{first}. Rename one.", name.Position, [name.Value]);
            }
        }

        HashSet<string> modes = new(StringComparer.Ordinal);
        foreach (DeclaredMode mode in _declaration.Modes.Where(m => !modes.Add(m.Name.Value)))
        {
            Error(DiagnosticCodes.DuplicateName, $"Two modes are named '{mode.Name.Value}'. Rename one.", mode.Name.Position);
        }
    }

    private void CheckValues()
    {
        foreach (DeclaredCapacitor capacitor in _declaration.Capacitors)
        {
            string name = capacitor.Name.Value;
            CheckValue(name, "capacitance", "farads", capacitor.Farads, allowZero: false);
            CheckValue(name, "series resistance", "ohms", capacitor.EsrOhms, allowZero: true);
            if (capacitor.Positive == capacitor.Bottom)
            {
                Error(DiagnosticCodes.SameNode, $"Both plates of capacitor '{name}' are on node '{capacitor.Positive}'. Move one of them.", capacitor.Name.Position, [name]);
            }
        }

        foreach (DeclaredSwitch @switch in _declaration.Switches)
        {
            string name = @switch.Name.Value;
            CheckValue(name, "on-resistance", "ohms", @switch.Ohms, allowZero: false);
            if (@switch.First == @switch.Second)
            {
                Warning(DiagnosticCodes.SameNode, $"Both terminals of switch '{name}' are on node '{@switch.First}', so it does nothing. Move one of them, or leave it out.", @switch.Name.Position, [name]);
            }
        }
    }

    private void CheckValue(string element, string what, string unit, Declared<double> value, bool allowZero)
    {
        if (!Guard.IsInRange(value.Value, allowZero))
        {
            string expected = allowZero ? "finite and at least zero" : "finite and positive";
            Error(DiagnosticCodes.ValueOutOfRange, $"The {what} of '{element}' is {value.Value} {unit}. Give a value that is {expected}.", value.Position, [element]);
        }
    }

    private Mode[] ReadModes(int phaseCount)
    {
        List<DeclaredSwitch> switches = _declaration.Switches;
        if (_declaration.Modes.Count == 0)
        {
            PhaseSet[] closed = [.. switches.Select(s => Resolve(s.On?.Value ?? [], s.Name.Value, phaseCount))];
            return [new Mode(Mode.DefaultName, 0, closed)];
        }

        foreach (DeclaredSwitch @switch in switches)
        {
            if (@switch.On is { } on)
            {
                Error(DiagnosticCodes.OnAndModes, $"Switch '{@switch.Name.Value}' says when it is closed, but the converter has modes that say so too. Leave one of the two out.", on.Position, [@switch.Name.Value]);
            }
        }

        Dictionary<string, int> index = new(StringComparer.Ordinal);
        for (int s = 0; s < switches.Count; s++)
        {
            index.TryAdd(switches[s].Name.Value, s);
        }

        return [.. _declaration.Modes.Select((mode, m) => ReadMode(mode, m, index, phaseCount))];
    }

    private Mode ReadMode(DeclaredMode mode, int position, Dictionary<string, int> index, int phaseCount)
    {
        var closed = new PhaseSet[_declaration.Switches.Count];
        HashSet<string> named = new(StringComparer.Ordinal);
        foreach (DeclaredClosing closing in mode.Closings)
        {
            string name = closing.Switch.Value;
            if (!index.TryGetValue(name, out int s))
            {
                Error(DiagnosticCodes.UnknownSwitch, $"Mode '{mode.Name.Value}' closes switch '{name}', which the converter does not have. Correct the name, or add the switch.", closing.Switch.Position, [name]);
            }
            else if (!named.Add(name))
            {
                Error(DiagnosticCodes.DuplicateName, $"Mode '{mode.Name.Value}' names switch '{name}' twice. Leave one out.", closing.Switch.Position, [name]);
            }
            else
            {
                closed[s] = Resolve(closing.Phases, name, phaseCount);
            }
        }

        return new Mode(mode.Name.Value, position, closed);
    }

    private PhaseSet Resolve(DeclaredPhase[] phases, string element, int phaseCount)
    {
        Span<int> numbers = phases.Length <= 64 ? stackalloc int[phases.Length] : new int[phases.Length];
        int count = 0;
        foreach (DeclaredPhase phase in phases)
        {
            int number = phase.Number;
            if (phase.Name is { } name && !_phaseNumber.TryGetValue(name, out number))
            {
                string known = _phaseNumber.Count > 0 ? $"names {string.Join(", ", _phaseNumber.Keys)}" : "phases without names";
                Error(DiagnosticCodes.UnknownPhase, $"Switch '{element}' is closed in phase '{name}', but the converter has {known}. Correct the name, or use numbers from 1 to {phaseCount}.", phase.Position, [element]);
            }
            else if (number < 1 || number > phaseCount)
            {
                Error(DiagnosticCodes.UnknownPhase, $"Switch '{element}' is closed in phase {number}, but the phases are numbered from 1 to {phaseCount}.", phase.Position, [element]);
            }
            else
            {
                numbers[count++] = number;
            }
        }

        return PhaseSet.Of(numbers[..count]);
    }

    private SwitchedNetwork Number(Phase[] phases, Mode[] modes)
    {
        NodeOf(Converter.ReferenceNode);
        int input = NodeOf(_declaration.Input!.Value.Value);
        int output = NodeOf(_declaration.Output!.Value.Value);
        int[] capacitorFirst = [.. _declaration.Capacitors.Select(c => NodeOf(c.Positive))];
        int[] capacitorSecond = [.. _declaration.Capacitors.Select(c => NodeOf(c.Bottom))];
        int[] switchFirst = [.. _declaration.Switches.Select(s => NodeOf(s.First))];
        int[] switchSecond = [.. _declaration.Switches.Select(s => NodeOf(s.Second))];
        return new SwitchedNetwork(
            _nodes.Count,
            input,
            output,
            _declaration.Load,
            (capacitorFirst, capacitorSecond),
            (switchFirst, switchSecond),
            [.. phases.Select(p => p.Duty)],
            [.. modes.Select(m => Flags(m, phases.Length))]);
    }

    private static bool[] Flags(Mode mode, int phaseCount)
    {
        int switchCount = mode.ClosedPhases.Count;
        var closed = new bool[phaseCount * switchCount];
        for (int s = 0; s < switchCount; s++)
        {
            foreach (int number in mode.ClosedPhases[s])
            {
                closed[((number - 1) * switchCount) + s] = true;
            }
        }

        return closed;
    }

    private int NodeOf(string name)
    {
        if (!_nodeIndex.TryGetValue(name, out int node))
        {
            node = _nodes.Count;
            _nodeIndex.Add(name, node);
            _nodes.Add(name);
        }

        return node;
    }

    private void FindFloatingTerminals(SwitchedNetwork network)
    {
        var touches = new int[network.NodeCount];
        foreach (int[] ends in new[] { network.BranchFirst, network.BranchSecond, network.SwitchFirst, network.SwitchSecond })
        {
            foreach (int node in ends)
            {
                touches[node]++;
            }
        }

        IEnumerable<(Declared<string> Name, string First, string Second)> elements =
            _declaration.Capacitors.Select(c => (c.Name, c.Positive, c.Bottom))
                .Concat(_declaration.Switches.Select(s => (s.Name, s.First, s.Second)));
        foreach ((Declared<string> name, string first, string second) in elements)
        {
            foreach (string node in new[] { first, second })
            {
                int index = _nodeIndex[node];
                if (touches[index] == 1 && index != SwitchedNetwork.Reference && index != network.Input && index != network.Output)
                {
                    Warning(DiagnosticCodes.FloatingTerminal, $"Only '{name.Value}' touches node '{node}', so no charge can flow there. Connect the node, or correct its name.", name.Position, [name.Value]);
                }
            }
        }
    }

    private void Error(string code, string message, SourcePosition? position, string[]? elements = null, int? phase = null) =>
        _errors.Add(new Diagnostic(DiagnosticSeverity.Error, code, message, elements, phase, position));

    private void Warning(string code, string message, SourcePosition? position, string[]? elements = null) =>
        _warnings.Add(new Diagnostic(DiagnosticSeverity.Warning, code, message, elements, position: position));
}
