namespace ScNet.Analysis;

/// <summary>
/// The output impedance at high frequency, where capacitor voltages stand still and resistances carry
/// constant currents: R = Σ coefficient · R over switches and series resistances, with
/// coefficient = Σ (a)² / D over the phases.
/// </summary>
/// <remarks>Source: docs/theory/exact-steady-state.md, "The two limits"; Seeman and Sanders 2008 (from memory).</remarks>
public sealed class FastSwitchingLimit
{
    internal FastSwitchingLimit(NamedList<Quantity> switchCoefficients, NamedList<Quantity> capacitorCoefficients, double ohms)
    {
        SwitchCoefficients = switchCoefficients;
        CapacitorCoefficients = capacitorCoefficients;
        Ohms = ohms;
    }

    /// <summary>The coefficient of each switch's on-resistance, without a unit; by name or by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<Quantity> SwitchCoefficients { get; }

    /// <summary>The coefficient of each capacitor's series resistance, without a unit; by name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<Quantity> CapacitorCoefficients { get; }

    /// <summary>The limit in ohms (Ω), with the duties of the converter.</summary>
    public double Ohms { get; }

    /// <summary>The limit and the coefficients.</summary>
    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{Ohms:G6} Ω from coefficients [{string.Join(", ", SwitchCoefficients)}] of switches and [{string.Join(", ", CapacitorCoefficients)}] of capacitors");
}
