namespace ScNet.Analysis;

/// <summary>
/// The output impedance at low frequency, where charge moves in impulses between equilibria:
/// R = Σ coefficient / (C · f) over the capacitors, with coefficient = Σ (a)² / 2 over the phases.
/// </summary>
/// <remarks>With held currents see <see cref="ChargeSharing"/>, which takes their steady part out. Source: docs/theory/exact-steady-state.md, "The two limits"; Seeman and Sanders 2008 (from memory).</remarks>
public sealed class SlowSwitchingLimit
{
    internal SlowSwitchingLimit(NamedList<Quantity> coefficients, double ohmsAtOneHertz)
    {
        Coefficients = coefficients;
        OhmsAtOneHertz = ohmsAtOneHertz;
    }

    /// <summary>The coefficient of each capacitor, without a unit; by name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<Quantity> Coefficients { get; }

    /// <summary>The limit in ohms (Ω) at a switching frequency of 1 Hz; infinite where averages can carry no load.</summary>
    public double OhmsAtOneHertz { get; }

    /// <summary>The limit in ohms (Ω) at a switching frequency.</summary>
    /// <param name="frequencyHz">Switching frequency, one period per cycle, in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive, or not from 1e-60 to 1e60 Hz.</exception>
    public double Ohms(double frequencyHz) => OhmsAtOneHertz / Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));

    /// <summary>The limit at 1 Hz and the coefficients.</summary>
    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture, $"{OhmsAtOneHertz:G6} Ω at 1 Hz from coefficients [{string.Join(", ", Coefficients)}]");
}
