using MathNet.Numerics.RootFinding;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Design.Sizing;

/// <summary>A mode at some sizes: the coefficients of its limits, its exact impedance, and how that moves with every size.</summary>
/// <remarks>Below the floor of the frequency cycles are left out, so that R(f) = R(floor) · floor/f: docs/theory/regulation.md.</remarks>
internal sealed class SizedMode
{
    private const double Rounding = 1e-22;

    private readonly SteadyStateModel _model;
    private readonly Interval<double> _frequencyHz;
    private (double LogOhms, double[] ByElement, double ByFrequency)? _atFloor;

    private SizedMode(ModeAnalysis analysis, Interval<double> frequencyHz)
    {
        Analysis = analysis;
        _frequencyHz = frequencyHz;
        _model = SteadyStateModel.Of(analysis);
        Slow = Numbers(analysis.ChargeSharing?.Coefficients ?? analysis.SlowSwitchingLimit.Coefficients);
        FastOfSwitches = Numbers(analysis.FastSwitchingLimit.SwitchCoefficients);
        FastOfCapacitors = Numbers(analysis.FastSwitchingLimit.CapacitorCoefficients);
    }

    /// <summary>The analysis at these sizes.</summary>
    public ModeAnalysis Analysis { get; }

    /// <summary>The coefficient of 1/(C f) of each capacitor, with the steady part of held currents taken out.</summary>
    public double[] Slow { get; }

    /// <summary>The coefficient of each switch's resistance.</summary>
    public double[] FastOfSwitches { get; }

    /// <summary>The coefficient of each capacitor's series resistance.</summary>
    public double[] FastOfCapacitors { get; }

    /// <summary>Whether no charge has to pass a capacitor, so that frequency regulates nothing.</summary>
    public bool IsTied => Slow.All(k => k == 0);

    /// <summary>Whether an element carries charge at these sizes: coefficients go with its square, and rounding leaves some 1e-32 of none.</summary>
    public bool Uses(int element) => element < Slow.Length
        ? Slow[element] > Rounding || FastOfCapacitors[element] > Rounding
        : FastOfSwitches[element - Slow.Length] > Rounding;

    /// <summary>Prepares a mode at the sizes of a converter.</summary>
    /// <param name="analysis">The analysis of the mode at any sizes.</param>
    /// <param name="converter">The converter with its sizes, without parasitic capacitances.</param>
    /// <param name="frequencyHz">Floor and ceiling of the frequency.</param>
    /// <param name="wiringOhms">The wiring in series with each switch in ohms, part of its on-resistance.</param>
    public static SizedMode Of(ModeAnalysis analysis, Converter converter, Interval<double> frequencyHz, double wiringOhms) =>
        new(analysis.WithValuesOf(converter), frequencyHz) { WiringOhms = wiringOhms };

    /// <summary>The impedance at a frequency that may lie below the floor.</summary>
    public double Ohms(double frequencyHz) => frequencyHz < _frequencyHz.Minimum
        ? _model.Impedance.Ohms(_frequencyHz.Minimum!.Value) * _frequencyHz.Minimum.Value / frequencyHz
        : _model.Impedance.Ohms(frequencyHz);

    /// <summary>The frequency with a given impedance; the ceiling where it would lie above, and the floor where frequency regulates nothing.</summary>
    public double FrequencyOf(double ohms)
    {
        double low = _frequencyHz.Minimum!.Value, high = _frequencyHz.Maximum!.Value;
        double atLow = Ohms(low);
        if (IsTied)
        {
            return low;
        }

        if (atLow <= ohms)
        {
            return low * atLow / ohms;
        }

        if (Ohms(high) >= ohms)
        {
            return high;
        }

        double target = Math.Log(ohms);
        return Math.Exp(Brent.FindRoot(u => Math.Log(Ohms(Math.Exp(u))) - target, Math.Log(low), Math.Log(high), 1e-13, 200));
    }

    /// <summary>The impedance at a frequency within floor and ceiling with its elasticities.</summary>
    /// <param name="frequencyHz">The frequency in hertz.</param>
    /// <returns>The logarithm of the impedance, and its derivatives by the logarithms of every capacitance, every conductance without wiring, and the frequency.</returns>
    public (double LogOhms, double[] ByElement, double ByFrequency) ElasticityAt(double frequencyHz) =>
        frequencyHz == _frequencyHz.Minimum ? _atFloor ??= FindElasticity(frequencyHz) : FindElasticity(frequencyHz);

    /// <summary>The wiring in series with each switch in ohms.</summary>
    public required double WiringOhms { get; init; }

    private (double LogOhms, double[] ByElement, double ByFrequency) FindElasticity(double frequencyHz)
    {
        ImpedanceSensitivity slopes = _model.SensitivityAt(frequencyHz);
        Converter converter = Analysis.Converter;
        int capacitors = converter.Capacitors.Count;
        var by = new double[capacitors + converter.Switches.Count];
        for (int e = 0; e < capacitors; e++)
        {
            // the series resistance of a sort of capacitor goes with 1/C
            Capacitor capacitor = converter.Capacitors[e];
            by[e] = ((capacitor.Farads * slopes.ByCapacitanceOhmsPerFarad[e]) - (capacitor.EsrOhms * slopes.ByEsr[e])) / slopes.Ohms;
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            by[capacitors + s] = -WithoutWiring(s) * slopes.ByOnResistance[s] / slopes.Ohms;
        }

        return (Math.Log(slopes.Ohms), by, frequencyHz * slopes.ByFrequencyOhmsPerHertz / slopes.Ohms);
    }

    private double WithoutWiring(int @switch) => Analysis.Converter.Switches[@switch].Ohms - WiringOhms;

    private static double[] Numbers(NamedList<Quantity> coefficients) => [.. coefficients.Select(k => k.IsDetermined ? k.ToDouble() : double.PositiveInfinity)];
}
