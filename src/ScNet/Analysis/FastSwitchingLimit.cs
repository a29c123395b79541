namespace ScNet.Analysis;

/// <summary>
/// The output impedance at high frequency, where capacitor voltages stand still and resistances carry
/// constant currents: R = Σ coefficient · R over switches, series resistances and windings, with
/// coefficient = Σ (a)² / D over the phases.
/// </summary>
/// <remarks>Source: docs/theory/exact-steady-state.md, "The two limits"; Seeman and Sanders 2008 (from memory).</remarks>
public sealed class FastSwitchingLimit
{
    internal FastSwitchingLimit(NamedList<Quantity> switchCoefficients, NamedList<Quantity> capacitorCoefficients, NamedList<Quantity> inductorCoefficients, double ohms)
    {
        SwitchCoefficients = switchCoefficients;
        CapacitorCoefficients = capacitorCoefficients;
        InductorCoefficients = inductorCoefficients;
        Ohms = ohms;
    }

    /// <summary>The coefficient of each switch's on-resistance, without a unit; by name or by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<Quantity> SwitchCoefficients { get; }

    /// <summary>The coefficient of each capacitor's series resistance, without a unit; by name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<Quantity> CapacitorCoefficients { get; }

    /// <summary>The coefficient of each inductor's winding resistance, without a unit; by name or by position as in <see cref="Converter.Inductors"/>.</summary>
    public NamedList<Quantity> InductorCoefficients { get; }

    /// <summary>The limit in ohms (Ω), with the duties of the converter; infinite where averages can carry no load.</summary>
    public double Ohms { get; }

    /// <summary>The limit and the coefficients.</summary>
    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{Ohms:G6} Ω from coefficients [{string.Join(", ", SwitchCoefficients)}] of switches and [{string.Join(", ", CapacitorCoefficients)}] of capacitors");
}
