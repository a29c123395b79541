namespace ScNet;

/// <summary>The modes of a declaration: the closed phases of every switch.</summary>
internal sealed class ModeAssembly(NetlistDeclaration declaration, PhaseAssembly phases, DiagnosticList findings)
{
    /// <summary>The most entries (modes · phases · switches) the table of closed switches may have.</summary>
    public const long MaximumTableSize = 100_000_000;

    private readonly List<DeclaredSwitch> _switches = declaration.Switches;

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

        return new Mode(Mode.DefaultName, 0, closed);
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
        HashSet<string> named = new(mode.Closings.Count, StringComparer.Ordinal);
        foreach (DeclaredClosing closing in mode.Closings)
        {
            string name = closing.Switch.Value;
            if (!named.Add(name))
            {
                findings.Error(DiagnosticCodes.DuplicateName, $"Mode {Quoted.Name(mode.Name.Value)} names switch {Quoted.Name(name)} twice. Leave one out.", closing.Switch.Position, [name]);
            }
            else if (index.TryGetValue(name, out int s))
            {
                closed[s] = phases.Resolve(closing.Phases, name);
            }
            else if (!declaration.Gaps.HasFlag(DeclarationGaps.Switches))
            {
                findings.Error(DiagnosticCodes.UnknownSwitch, $"Mode {Quoted.Name(mode.Name.Value)} closes switch {Quoted.Name(name)}, which the converter does not have. Correct the name, or add the switch.", closing.Switch.Position, [name]);
            }
        }

        return new Mode(mode.Name.Value, position, closed);
    }
}
