namespace ScNet.SteadyState;

/// <summary>
/// The two-port of a mode at one frequency: V_out = ratio · V_in − ohms · I_out and I_in = currentRatio · I_out +
/// siemens · V_in, averages over a period.
/// </summary>
public sealed class TwoPortPoint
{
    private readonly Func<TwoPortDetails> _find;
    private TwoPortDetails? _details;

    internal TwoPortPoint(double frequencyHz, PortRatios ratios, double ohms, double relativeError, Func<TwoPortDetails> details)
    {
        FrequencyHz = frequencyHz;
        Ratio = ratios.Voltage;
        Ohms = ohms;
        CurrentRatio = ratios.Current;
        InputSiemens = ratios.InputSiemens;
        RelativeError = relativeError;
        _find = details;
    }

    /// <summary>Switching frequency in hertz (Hz).</summary>
    public double FrequencyHz { get; }

    /// <summary>Average output voltage per volt of input without load; with a stiff output, that at which its average current vanishes.</summary>
    public double Ratio { get; }

    /// <summary>The output impedance in ohms (Ω): the fall of the average output voltage per ampere of average load current.</summary>
    public double Ohms { get; }

    /// <summary>Average input current per unit of average load current, the input held at zero volts.</summary>
    public double CurrentRatio { get; }

    /// <summary>Average input current per volt of input without load, in siemens (S).</summary>
    public double InputSiemens { get; }

    /// <summary>
    /// The estimated rounding error of the figures above, in proportion to each; of <see cref="InputSiemens"/> in
    /// proportion to itself or to ratio · current ratio / ohms, the larger of both. Without inductors it is no estimate of
    /// this network, but what random networks of values over twelve decades are held to.
    /// </summary>
    public double RelativeError { get; }

    /// <summary>
    /// Average voltage of each capacitor per volt of input without load, positive plate minus bottom plate; null where
    /// nothing fixes it. By name or by position as in <see cref="Converter.Capacitors"/>. Found when first asked for.
    /// </summary>
    public NamedList<double?> CapacitorVoltages => Details.CapacitorVoltages;

    /// <summary>
    /// The largest magnitude of the eigenvalues of the map of the state over one period, a stiff output or a load current
    /// held: what is left after a period of the disturbance that lasts longest. Zero without states; states that nothing
    /// moves are left out. Found when first asked for.
    /// </summary>
    public double DecayPerPeriod => Details.DecayPerPeriod;

    /// <summary>Periods in which the disturbance that lasts longest falls to 1/e.</summary>
    public double TimeConstantPeriods => Details.TimeConstantPeriods;

    /// <summary>The time constant of the disturbance that lasts longest in seconds (s).</summary>
    public double TimeConstantSeconds => TimeConstantPeriods / FrequencyHz;

    /// <summary>All four figures.</summary>
    public override string ToString() =>
        $"{UnitText.Of(FrequencyHz, "Hz")}: ratio {UnitText.Of(Ratio, "V/V")}, {UnitText.Of(Ohms, "Ω")}, current ratio {UnitText.Of(CurrentRatio, "A/A")}, {UnitText.Of(InputSiemens, "S")}";

    private TwoPortDetails Details => LazyInitializer.EnsureInitialized(ref _details, _find)!;
}
