using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// What the input and all outputs of a mode see of one another at one frequency: V_i = ratio_i · V_in − Σ ohms_ik · I_k and
/// I_in = Σ currentRatio_k · I_k + siemens · V_in, averages over a period.
/// </summary>
/// <remarks>The main output comes first, by the name of its node; a further output without path or supply has null everywhere.</remarks>
public sealed class MultiPortPoint
{
    internal MultiPortPoint(
        double frequencyHz, NamedList<double?> ratios, OutputMatrix<double?> ohms, NamedList<double?> currentRatios, double inputSiemens, double relativeError)
    {
        (FrequencyHz, Ratios, Ohms, CurrentRatios, InputSiemens, RelativeError) = (frequencyHz, ratios, ohms, currentRatios, inputSiemens, relativeError);
    }

    /// <summary>Switching frequency in hertz (Hz).</summary>
    public double FrequencyHz { get; }

    /// <summary>Average voltage of each output per volt of input without any load.</summary>
    public NamedList<double?> Ratios { get; }

    /// <summary>The fall of the row's average output voltage per ampere of the column's average load current, in ohms (Ω); symmetric with two phases.</summary>
    public OutputMatrix<double?> Ohms { get; }

    /// <summary>Average input current per unit of each load current, the input held at zero volts.</summary>
    public NamedList<double?> CurrentRatios { get; }

    /// <summary>Average input current per volt of input without any load, in siemens (S).</summary>
    public double InputSiemens { get; }

    /// <summary>
    /// The estimated rounding error: of ratios in proportion to the largest of them, of an impedance between two outputs in
    /// proportion to the root of the product of their own.
    /// </summary>
    public double RelativeError { get; }

    /// <summary>Voltages, currents and powers at given loads.</summary>
    /// <param name="inputVolts">Input voltage in volts (V).</param>
    /// <param name="loadAmperes">Average load current of each output in amperes (A), the main one first; zero for an output that is without supply.</param>
    /// <exception cref="ArgumentException">There is not one finite current per output, or an output without supply is to carry some.</exception>
    public MultiPortOperation Operate(double inputVolts, params IReadOnlyList<double> loadAmperes)
    {
        ArgumentNullException.ThrowIfNull(loadAmperes);
        Guard.InRange(inputVolts, allowZero: true, nameof(inputVolts));
        if (loadAmperes.Count != Ratios.Count || loadAmperes.Any(i => !double.IsFinite(i)))
        {
            throw new ArgumentException($"Expected {Ratios.Count} finite load currents, one per output, but got [{string.Join(", ", loadAmperes)}].", nameof(loadAmperes));
        }

        for (int k = 0; k < loadAmperes.Count; k++)
        {
            if (loadAmperes[k] != 0 && Ratios[k] is null)
            {
                throw new ArgumentException($"Output '{Ratios.Names[k]}' carries no current in this mode, but {UnitText.Of(loadAmperes[k], "A")} are asked of it.", nameof(loadAmperes));
            }
        }

        return new MultiPortOperation(this, inputVolts, [.. loadAmperes]);
    }

    /// <summary>The frequency, the ratios and the impedances.</summary>
    public override string ToString() =>
        $"{UnitText.Of(FrequencyHz, "Hz")}: ratios [{string.Join(", ", Ratios.Select(r => r is { } ratio ? UnitText.Of(ratio, "V/V") : "?"))}], {Ohms} Ω";
}
