namespace ScNet.Analysis;

/// <summary>What a <see cref="ModeAnalysis"/> says of one switch. A view: it copies nothing.</summary>
public sealed class SwitchAnalysis
{
    private readonly ModeAnalysis _mode;
    private readonly int _position;

    internal SwitchAnalysis(ModeAnalysis mode, int position)
    {
        _mode = mode;
        _position = position;
    }

    /// <summary>The switch.</summary>
    public Switch Switch => _mode.Converter.Switches[_position];

    /// <summary>The phases in which it is closed.</summary>
    public PhaseSet ClosedPhases => _mode.Mode.ClosedPhases[_position];

    /// <summary>Charge that flows from the first terminal to the second in each phase, per unit of output charge.</summary>
    public PhaseValues Charge => _mode.ChargeFlow.Switches[_position];

    /// <summary>
    /// The voltage across it in each phase, first terminal minus second, per volt of input: zero where it is
    /// closed, undetermined in a phase in which a side floats.
    /// </summary>
    public PhaseValues Blocking => _mode.BlockingVoltages.Switches[_position];

    /// <summary>The blocking voltage of the largest magnitude, the positive one on a tie; undetermined if it is in any phase.</summary>
    public Quantity PeakBlocking => _mode.BlockingVoltages.Peaks[_position];

    /// <summary>The coefficient of its on-resistance in the <see cref="FastSwitchingLimit"/>, without a unit.</summary>
    public Quantity FastCoefficient => _mode.FastSwitchingLimit.SwitchCoefficients[_position];

    /// <summary>The name, the blocking voltages and the charges.</summary>
    public override string ToString() => $"{Switch.Name}: blocking {Blocking}, charge {Charge}";
}
