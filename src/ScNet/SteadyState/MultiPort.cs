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
        int count = _names.Count;
        double?[] ratios = new double?[count], currents = new double?[count], ohms = new double?[count * count];
        double error = main.RelativeError;
        if (_method?.At(frequencyHz) is { } found)
        {
            int[] places = [0, .. _method.Supplied.Select(k => k + 1)];
            for (int i = 0; i < places.Length; i++)
            {
                int at = places[i];
                for (int k = 0; k < places.Length; k++)
                {
                    ohms[(at * count) + places[k]] = found.Ohms[(i * places.Length) + k];
                }

                // without inductors and parasitic capacitances nothing moves in open circuit
                double? ideal = _isAtRest && _analysis.Outputs.Outputs[at] is { IsSupplied: true, Ratio: var ratio } ? ratio.ToDouble() : null;
                (ratios[at], currents[at]) = (ideal ?? found.Ratios[i], ideal ?? found.CurrentRatios[i]);
            }

            error = Math.Max(error, found.RelativeError);
        }

        (ratios[0], currents[0], ohms[0]) = (main.Ratio, main.CurrentRatio, main.Ohms);
        return new MultiPortPoint(
            frequencyHz,
            new NamedList<double?>(ratios, _names),
            new OutputMatrix<double?>(ohms, _names),
            new NamedList<double?>(currents, _names),
            main.InputSiemens,
            error);
    }

    /// <summary>The converter, the mode and the outputs.</summary>
    public override string ToString() => $"{Converter.Name}, mode {Mode}: {string.Join(", ", Enumerable.Range(0, _names.Count).Select(k => _names[k]))}";
}
