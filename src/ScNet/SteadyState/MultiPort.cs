using ScNet.Analysis;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState;

/// <summary>
/// What the input and all outputs of a mode see of one another on average over a period, exactly, ripple and parasitic
/// capacitances included: the two-port with a row and a column per further output.
/// </summary>
/// <remarks>
/// The figures of the main output alone are those of <see cref="TwoPort"/>. The others come from exponentials of the state
/// equation, with inductors or without: docs/theory/several-outputs.md. Safe on many threads. Cost: the cube of the states per
/// phase at every frequency.
/// </remarks>
public sealed class MultiPort
{
    private readonly ModeAnalysis _analysis;
    private readonly TwoPort _twoPort;
    private readonly ExponentialMultiPort? _method;
    private readonly NameIndex _names;
    private readonly bool _isAtRest;

    internal MultiPort(ModeAnalysis analysis, TwoPort twoPort)
    {
        _analysis = analysis;
        _twoPort = twoPort;
        Converter converter = analysis.Converter;
        _method = converter.FurtherOutputs.Count > 0 ? ExponentialMultiPort.Of(converter, analysis.Mode) : null;
        _names = new(converter.Name, "output", [converter.OutputNode, .. converter.FurtherOutputs.Select(o => o.Name)]);
        _isAtRest = converter.Inductors.Count == 0 && converter.ParasiticBranches.Count == 0;
    }

    /// <summary>The converter.</summary>
    public Converter Converter => _analysis.Converter;

    /// <summary>The mode.</summary>
    public Mode Mode => _analysis.Mode;

    /// <summary>A warning per further output whose current has no path or no supply in this mode; its figures are null.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics => _method?.Diagnostics ?? [];

    /// <summary>The figures at a switching frequency.</summary>
    /// <param name="frequencyHz">Switching frequency, one period per cycle, in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not from 1e-60 to 1e60 Hz.</exception>
    /// <exception cref="ScNetException">The network has no periodic state at this frequency: <see cref="DiagnosticCodes.NoPeriodicState"/>.</exception>
    public MultiPortPoint At(double frequencyHz)
    {
        TwoPortPoint main = _twoPort.At(frequencyHz);
        MultiPortValues? found = _method?.At(frequencyHz);
        int count = _names.Count;
        var ratios = new double?[count];
        var currents = new double?[count];
        var ohms = new double?[count * count];
        (ratios[0], currents[0], ohms[0]) = (main.Ratio, main.CurrentRatio, main.Ohms);
        int[] places = found is null ? [0] : [0, .. _method!.Supplied.Select(k => k + 1)];
        for (int i = 0; i < places.Length && found is not null; i++)
        {
            int at = places[i];
            for (int k = 0; k < places.Length; k++)
            {
                ohms[(at * count) + places[k]] = i + k == 0 ? main.Ohms : found.Ohms[(i * places.Length) + k];
            }

            if (i > 0)
            {
                // without inductors and parasitic capacitances nothing moves in open circuit
                double? ideal = _isAtRest && _analysis.Outputs.Outputs[at] is { IsSupplied: true, Ratio: var ratio } ? ratio.ToDouble() : null;
                (ratios[at], currents[at]) = (ideal ?? found.Ratios[i], ideal ?? found.CurrentRatios[i]);
            }
        }

        return new MultiPortPoint(
            frequencyHz,
            new NamedList<double?>(ratios, _names),
            new OutputMatrix<double?>(ohms, _names),
            new NamedList<double?>(currents, _names),
            main.InputSiemens,
            Math.Max(main.RelativeError, found?.RelativeError ?? 0));
    }

    /// <summary>The converter, the mode and the outputs.</summary>
    public override string ToString() => $"{Converter.Name}, mode {Mode}: {string.Join(", ", Enumerable.Range(0, _names.Count).Select(k => _names[k]))}";
}
