namespace ScNet.Analysis;

/// <summary>What a <see cref="ModeAnalysis"/> says of one capacitor. A view: it copies nothing.</summary>
public sealed class CapacitorAnalysis
{
    private readonly ModeAnalysis _mode;
    private readonly int _position;

    internal CapacitorAnalysis(ModeAnalysis mode, int position)
    {
        _mode = mode;
        _position = position;
    }

    /// <summary>The capacitor.</summary>
    public Capacitor Capacitor => _mode.Converter.Capacitors[_position];

    /// <summary>Charge that enters the positive plate in each phase, per unit of output charge.</summary>
    public PhaseValues Charge => _mode.ChargeFlow.Capacitors[_position];

    /// <summary>The voltage without load, positive plate minus bottom plate, per volt of input; undetermined where nothing fixes it.</summary>
    public Quantity Voltage => _mode.IdealPoint.CapacitorVoltages[_position];

    /// <summary>Its coefficient in the <see cref="SlowSwitchingLimit"/>, without a unit: R is the sum of coefficient / (C · f).</summary>
    public Quantity SlowCoefficient => _mode.SlowSwitchingLimit.Coefficients[_position];

    /// <summary>The coefficient of its series resistance in the <see cref="FastSwitchingLimit"/>, without a unit.</summary>
    public Quantity FastCoefficient => _mode.FastSwitchingLimit.CapacitorCoefficients[_position];

    /// <summary>The name, the voltage and the charges.</summary>
    public override string ToString() => $"{Capacitor.Name}: voltage {Voltage}, charge {Charge}";
}
