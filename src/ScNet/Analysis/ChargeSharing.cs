namespace ScNet.Analysis;

/// <summary>
/// The output impedance that is left at low frequency when held currents, a current load's and those of inductors, carry
/// their share at a steady rate and only the rest moves in impulses: R = Σ coefficient / (C · f) over the capacitors, with
/// coefficient = Σ (a − g)² / 2 over the phases, g being the steady part of the charge a.
/// </summary>
/// <remarks>
/// Zero where all capacitors are charged softly. Never above the slow-switching limit where topology decides the flow:
/// that one takes all charge as impulses. Source: docs/theory/averages-with-inductors.md, "Charge sharing".
/// </remarks>
public sealed class ChargeSharing
{
    internal ChargeSharing(NamedList<Quantity> coefficients, double ohmsAtOneHertz)
    {
        Coefficients = coefficients;
        OhmsAtOneHertz = ohmsAtOneHertz;
    }

    /// <summary>
    /// The coefficient of each capacitor, without a unit; by name or by position as in <see cref="Converter.Capacitors"/>.
    /// Exact where the steady part does not depend on capacitances.
    /// </summary>
    public NamedList<Quantity> Coefficients { get; }

    /// <summary>The impedance in ohms (Ω) at a switching frequency of 1 Hz.</summary>
    public double OhmsAtOneHertz { get; }

    /// <summary>The impedance in ohms (Ω) at a switching frequency.</summary>
    /// <param name="frequencyHz">Switching frequency, one period per cycle, in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive, or not from 1e-60 to 1e60 Hz.</exception>
    public double Ohms(double frequencyHz) => OhmsAtOneHertz / Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));

    /// <summary>The impedance at 1 Hz and the coefficients.</summary>
    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture, $"{OhmsAtOneHertz:G6} Ω at 1 Hz from coefficients [{string.Join(", ", Coefficients)}]");
}
