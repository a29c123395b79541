namespace ScNet.Analysis;

/// <summary>
/// The voltage across every switch in every phase at the ideal point, first terminal minus second, per
/// volt of input; zero in a phase in which the switch is closed. A switch with both signs must block
/// both ways.
/// </summary>
public sealed class BlockingVoltages
{
    internal BlockingVoltages(PhaseTable switches, NameIndex names)
    {
        Switches = switches;
        var peaks = new Quantity[switches.Count];
        for (int s = 0; s < peaks.Length; s++)
        {
            peaks[s] = switches[s].Peak();
        }

        Peaks = new NamedList<Quantity>(peaks, names);
    }

    /// <summary>The voltage of each switch; by name or by position as in <see cref="Converter.Switches"/>, then by phase. Undetermined in a phase in which a side floats.</summary>
    public PhaseTable Switches { get; }

    /// <summary>The entry of the largest magnitude of each switch, the positive one on a tie; undetermined if it is in any phase; by name or by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<Quantity> Peaks { get; }

    /// <summary>The peaks.</summary>
    public override string ToString() => $"peaks [{string.Join(", ", Peaks)}]";
}
