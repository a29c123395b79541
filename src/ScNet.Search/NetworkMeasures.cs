using Fractions;

namespace ScNet.Search;

/// <summary>
/// What a searched network asks for, each the less the better; of two networks with the same ratio one beats the other
/// when it asks for less of something and for more of nothing.
/// </summary>
/// <param name="CapacitorChargeVoltage">Σ |charge · voltage| over capacitors, a charge being half of what is taken and given in all phases, per charge and voltage of the output: the energy that capacitors must pass on.</param>
/// <param name="SwitchChargeVoltage">Σ |charge · blocking voltage| over switches, per charge and voltage of the output.</param>
/// <param name="SwitchCount">The number of switches.</param>
/// <param name="HighestCapacitorVoltage">The highest capacitor voltage, as a share of the input's.</param>
/// <param name="HighestSwitchVoltage">The highest blocking voltage, as a share of the input's.</param>
/// <param name="PlateSwing">
/// How far the plates move between phases: the mean square of their swing in shares of the input's voltage, weighted by
/// capacitances that split a total best. Bottom plates lose that times their capacitance, frequency and input voltage squared.
/// </param>
/// <param name="CapacitorCharge">Half of Σ |charge| over capacitors and phases per charge of the output: the slow limit at a total capacitance C is its square over C and frequency in two phases, and at most that in more.</param>
/// <param name="SwitchCharge">Σ |charge| over switches and phases per charge of the output: the fast limit at a total conductance G, in phases of equal length, is the number of phases times its square over G.</param>
public sealed record NetworkMeasures(
    Fraction CapacitorChargeVoltage,
    Fraction SwitchChargeVoltage,
    int SwitchCount,
    Fraction HighestCapacitorVoltage,
    Fraction HighestSwitchVoltage,
    Fraction PlateSwing,
    Fraction CapacitorCharge,
    Fraction SwitchCharge)
{
    /// <summary>One of the measures.</summary>
    /// <param name="measure">Which one.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such measure.</exception>
    public Fraction Value(NetworkMeasure measure) => measure switch
    {
        NetworkMeasure.CapacitorChargeVoltage => CapacitorChargeVoltage,
        NetworkMeasure.SwitchChargeVoltage => SwitchChargeVoltage,
        NetworkMeasure.SwitchCount => new Fraction(SwitchCount),
        NetworkMeasure.HighestCapacitorVoltage => HighestCapacitorVoltage,
        NetworkMeasure.HighestSwitchVoltage => HighestSwitchVoltage,
        NetworkMeasure.PlateSwing => PlateSwing,
        NetworkMeasure.CapacitorCharge => CapacitorCharge,
        NetworkMeasure.SwitchCharge => SwitchCharge,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Expected one of the measures."),
    };
}
