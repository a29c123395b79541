namespace ScNet.Analysis;

/// <summary>What a <see cref="ModeAnalysis"/> says of one inductor. A view: it copies nothing.</summary>
public sealed class InductorAnalysis
{
    private readonly ModeAnalysis _mode;
    private readonly int _position;

    internal InductorAnalysis(ModeAnalysis mode, int position)
    {
        _mode = mode;
        _position = position;
    }

    /// <summary>The inductor.</summary>
    public Inductor Inductor => _mode.Converter.Inductors[_position];

    /// <summary>
    /// The average current from the first terminal to the second, per unit of average load current; undetermined where
    /// averages can carry no load.
    /// </summary>
    public Quantity Current
    {
        get
        {
            Quantity sum = Quantity.Zero;
            foreach (Quantity charge in Charge)
            {
                sum = QuantityArithmetic.Add(sum, charge);
            }

            return sum;
        }
    }

    /// <summary>
    /// The voltage in each phase, first terminal minus second, per volt of input, without load and resistance; zero
    /// where the inductor rests without current, undetermined where its ends float against each other.
    /// </summary>
    public PhaseValues Voltage => _mode.InductorVoltages[_position];

    /// <summary>The charge from the first terminal to the second in each phase, per unit of output charge: current times duty, without ripple.</summary>
    public PhaseValues Charge => _mode.ChargeFlow.Inductors[_position];

    /// <summary>The coefficient of its winding resistance in the <see cref="FastSwitchingLimit"/>, without a unit.</summary>
    public Quantity FastCoefficient => _mode.FastSwitchingLimit.InductorCoefficients[_position];

    /// <summary>The name, the current and the voltages.</summary>
    public override string ToString() => $"{Inductor.Name}: current {Current}, voltage {Voltage}";
}
