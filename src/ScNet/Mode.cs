namespace ScNet;

/// <summary>One way to run a converter: for each switch the phases in which it is closed, for each inductor the phases that its current ends.</summary>
public sealed class Mode
{
    /// <summary>The name of the only mode of a converter that is not reconfigured.</summary>
    public const string DefaultName = "default";

    internal Mode(string name, int index, PhaseSet[] closedPhases, PhaseSet[] untilZero)
    {
        Name = name;
        Index = index;
        ClosedPhases = [.. closedPhases];
        UntilZeroPhases = [.. untilZero];
    }

    /// <summary>The name, unique among the modes of the converter.</summary>
    public string Name { get; }

    /// <summary>The position in <see cref="Converter.Modes"/>, from 0.</summary>
    public int Index { get; }

    /// <summary>The phases in which each switch is closed; index as in <see cref="Converter.Switches"/>.</summary>
    public IReadOnlyList<PhaseSet> ClosedPhases { get; }

    /// <summary>
    /// The phases that last only until the current of an inductor is zero, after which every switch is open until the
    /// next phase; index as in <see cref="Converter.Inductors"/>.
    /// </summary>
    public IReadOnlyList<PhaseSet> UntilZeroPhases { get; }

    /// <summary>Whether switch s is closed in phase j (from 0), at index j · switches + s.</summary>
    internal bool[] ClosedFlags(int phaseCount)
    {
        int switchCount = ClosedPhases.Count;
        var closed = new bool[phaseCount * switchCount];
        for (int s = 0; s < switchCount; s++)
        {
            PhaseSet phases = ClosedPhases[s];
            for (int i = 0; i < phases.Count; i++)
            {
                closed[((phases[i] - 1) * switchCount) + s] = true;
            }
        }

        return closed;
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
