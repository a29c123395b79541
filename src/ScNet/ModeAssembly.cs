namespace ScNet;

/// <summary>The modes of a declaration: the closed phases of every switch.</summary>
internal sealed class ModeAssembly(NetlistDeclaration declaration, PhaseAssembly phases, DiagnosticList findings)
{
    /// <summary>The most entries (modes · phases · switches) the table of closed switches may have.</summary>
    public const long MaximumTableSize = 100_000_000;

    private readonly List<DeclaredSwitch> _switches = declaration.Switches;
    private readonly List<DeclaredInductor> _inductors = declaration.Inductors;

    public Mode[] Read()
    {
        long modeCount = Math.Max(1, declaration.Modes.Count);
        if (modeCount * phases.Phases.Length * _switches.Count > MaximumTableSize)
        {
            findings.Error(DiagnosticCodes.ValueOutOfRange, $"{modeCount} modes of {phases.Phases.Length} phases and {_switches.Count} switches are more than this library holds: the product of the three may be {MaximumTableSize}. Split the converter.", declaration.Position);
            return [];
        }

        return declaration.Modes.Count == 0 ? [ReadDefault()] : ReadModes();
    }

    private Mode ReadDefault()
    {
        var closed = new PhaseSet[_switches.Count];
        for (int s = 0; s < closed.Length; s++)
        {
            closed[s] = phases.Resolve(_switches[s].On?.Value ?? [], _switches[s].Name.Value);
        }

        var untilZero = new PhaseSet[_inductors.Count];
        for (int l = 0; l < untilZero.Length; l++)
        {
            untilZero[l] = phases.Resolve(_inductors[l].UntilZero?.Value ?? [], _inductors[l].Name.Value, isInductor: true);
        }

        return Checked(new Mode(Mode.DefaultName, 0, closed, untilZero), declaration.Position);
    }

    private Mode[] ReadModes()
    {
        Dictionary<string, int> index = new(_switches.Count, StringComparer.Ordinal);
        for (int s = 0; s < _switches.Count; s++)
        {
            DeclaredSwitch @switch = _switches[s];
            index.TryAdd(@switch.Name.Value, s);
            if (@switch.On is { } on)
            {
                findings.Error(DiagnosticCodes.OnAndModes, $"Switch {Quoted.Name(@switch.Name.Value)} says when it is closed, but the converter has modes that say so too. Leave one of the two out.", on.Position, [@switch.Name.Value]);
            }
        }

        for (int l = 0; l < _inductors.Count; l++)
        {
            DeclaredInductor inductor = _inductors[l];
            index.TryAdd(inductor.Name.Value, _switches.Count + l);
            if (inductor.UntilZero is { } ended)
            {
                findings.Error(DiagnosticCodes.OnAndModes, $"Inductor {Quoted.Name(inductor.Name.Value)} says which phases its current ends, but the converter has modes that say so. Leave one of the two out.", ended.Position, [inductor.Name.Value]);
            }
        }

        var modes = new Mode[declaration.Modes.Count];
        for (int m = 0; m < modes.Length; m++)
        {
            modes[m] = ReadMode(declaration.Modes[m], m, index);
        }

        return modes;
    }

    private Mode ReadMode(DeclaredMode mode, int position, Dictionary<string, int> index)
    {
        var closed = new PhaseSet[_switches.Count];
        var untilZero = new PhaseSet[_inductors.Count];
        HashSet<string> named = new(mode.Closings.Count, StringComparer.Ordinal);
        foreach (DeclaredClosing closing in mode.Closings)
        {
            string name = closing.Element.Value;
            if (!named.Add(name))
            {
                findings.Error(DiagnosticCodes.DuplicateName, $"Mode {Quoted.Name(mode.Name.Value)} names {Quoted.Name(name)} twice. Leave one out.", closing.Element.Position, [name]);
            }
            else if (index.TryGetValue(name, out int s))
            {
                bool isInductor = s >= closed.Length;
                (isInductor ? untilZero : closed)[isInductor ? s - closed.Length : s] = phases.Resolve(closing.Phases, name, isInductor);
            }
            else if (!declaration.Gaps.HasFlag(DeclarationGaps.Switches))
            {
                findings.Error(DiagnosticCodes.UnknownSwitch, $"Mode {Quoted.Name(mode.Name.Value)} closes switch {Quoted.Name(name)}, which the converter does not have. Correct the name, or add the switch.", closing.Element.Position, [name]);
            }
        }

        return Checked(new Mode(mode.Name.Value, position, closed, untilZero), mode.Name.Position);
    }

    private Mode Checked(Mode mode, SourcePosition? position)
    {
        foreach (IGrouping<int, (int Phase, int Inductor)> phase in mode.UntilZeroPhases
            .SelectMany((set, l) => set.Select(p => (Phase: p, Inductor: l))).GroupBy(e => e.Phase).Where(g => g.Count() > 1))
        {
            string[] names = [.. phase.Select(e => _inductors[e.Inductor].Name.Value)];
            findings.Error(DiagnosticCodes.WrongValue, $"Inductors {Quoted.List(names)} both end phase {phase.Key}. One of them can.", position, names, phase.Key);
        }

        return mode;
    }
}
