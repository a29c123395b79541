namespace ScNet.Analysis;

/// <summary>
/// The voltage across every switch in every phase at the ideal point, first terminal minus second, per
/// volt of input; zero in a phase in which the switch is closed. A switch with both signs must block
/// both ways.
/// </summary>
public sealed class BlockingVoltages
{
    private readonly Quantity[] _peaks;

    internal BlockingVoltages(PhaseTable switches)
    {
        Switches = switches;
        _peaks = new Quantity[switches.Count];
        for (int s = 0; s < _peaks.Length; s++)
        {
            _peaks[s] = switches[s].Peak();
        }
    }

    /// <summary>The voltage of each switch; index as in <see cref="Converter.Switches"/>, then by phase. Undetermined in a phase in which a side floats.</summary>
    public PhaseTable Switches { get; }

    /// <summary>The entry of the largest magnitude of each switch, the positive one on a tie; undetermined if it is in any phase.</summary>
    public IReadOnlyList<Quantity> Peaks => _peaks;

    /// <summary>The peaks.</summary>
    public override string ToString() => $"peaks [{string.Join(", ", Peaks)}]";
}
