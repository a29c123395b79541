using ScNet.Analysis;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState;

/// <summary>The two-port of a network of resistors and capacitors from symmetric decompositions.</summary>
internal sealed class ModalTwoPort(ModeAnalysis analysis, PreparedMode prepared) : ITwoPortMethod
{
    // what the tests hold against a hundred digits
    private const double RelativeError = 1e-12;

    private readonly Lazy<ExponentialTwoPort> _exponential = new(() => ExponentialTwoPort.Of(analysis.Converter, analysis.Mode));

    public TwoPortPoint At(double frequencyHz)
    {
        double period = 1 / frequencyHz;
        return new TwoPortPoint(frequencyHz, prepared.Ratios(period), prepared.Ohms(period), RelativeError, () => Details(frequencyHz));
    }

    // without parasitic capacitances nothing moves in open circuit
    private TwoPortDetails Details(double frequencyHz)
    {
        TwoPortDetails details = _exponential.Value.DetailsAt(frequencyHz);
        return analysis.Converter.ParasiticCapacitances.Any() ? details : details with
        {
            CapacitorVoltages = new NamedList<double?>(
                [.. analysis.IdealPoint.CapacitorVoltages.Select(v => v.IsDetermined ? (double?)v.ToDouble() : null)], analysis.Converter.Capacitors.Names),
        };
    }
}
