using System.Collections.Concurrent;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Numerics;

namespace ScNet.Design.Choice;

/// <summary>
/// A sized stage with inductors that its duty regulates, at the frequency that loses least; at a light load it leaves cycles out and
/// runs the others at the current that loses least per charge.
/// </summary>
/// <remarks>Derivation: docs/theory/sizing.md, "Stages with inductors".</remarks>
internal sealed class StageMode : RegulatedMode
{
    private const int DutyTurns = 2;

    private readonly Candidate _candidate;
    private readonly Func<int, SizedConverter> _sizedAt;
    private readonly Interval<double> _frequencyHz;
    private readonly ConcurrentDictionary<int, Lazy<StageCycle>> _cycles = new();

    /// <summary>Prepares it.</summary>
    /// <param name="candidate">The stage.</param>
    /// <param name="sizedAt">It with its sizes at each of its duties.</param>
    /// <param name="frequencyHz">Floor and ceiling of the frequency.</param>
    public StageMode(Candidate candidate, Func<int, SizedConverter> sizedAt, Interval<double> frequencyHz)
        : base(candidate.Name)
    {
        (_candidate, _sizedAt, _frequencyHz) = (candidate, sizedAt, frequencyHz);
    }

    /// <inheritdoc/>
    public override Quantity? Ratio => null;

    /// <inheritdoc/>
    public override RegulatedPoint Hold(double inputVolts, double outputVolts, double loadAmperes)
    {
        Require(inputVolts, outputVolts, loadAmperes);
        double outputWatts = outputVolts * loadAmperes, dropVolts = 0;
        StageCycle? cycle = null;
        double duty = 0;
        (double Hertz, double Amperes) best = default;
        for (int turn = 0; turn < DutyTurns; turn++)
        {
            if (_candidate.Duties.Of((outputVolts + dropVolts) / inputVolts) is not ({ } node, { } part))
            {
                return new(RegulationOutcome.DutyOutOfRange, 0, double.NaN, outputWatts, []);
            }

            duty = (node + part) / StageDuties.Parts * _candidate.MaximumDuty.ToDouble();
            cycle = CycleAt(node).Towards(CycleAt(node + 1), part);
            if (Best(cycle, inputVolts, loadAmperes) is not { } found)
            {
                return new(RegulationOutcome.ImpedanceTooHigh, _frequencyHz.Maximum!.Value, duty, outputWatts, []);
            }

            best = found;
            dropVolts = cycle.OhmsAt(best.Hertz) * best.Amperes;
        }

        double share = loadAmperes / best.Amperes;
        Span<double> watts = stackalloc double[LossModel.KindCount];
        cycle!.WattsAt(inputVolts, best.Amperes, best.Hertz, share, watts);
        return new(share < 1 ? RegulationOutcome.HeldBySkipping : RegulationOutcome.Held, share * best.Hertz, duty, outputWatts, watts, share);
    }

    /// <inheritdoc/>
    public override string ReasonAt(double inputVolts, double outputVolts, double loadAmperes) => Hold(inputVolts, outputVolts, loadAmperes).Outcome switch
    {
        RegulationOutcome.DutyOutOfRange => $"no duty gives {EngineeringNumber.Of(outputVolts, "V")} from {EngineeringNumber.Of(inputVolts, "V")}",
        RegulationOutcome.ImpedanceTooHigh => $"at the ceiling of {EngineeringNumber.Of(_frequencyHz.Maximum, "Hz")} {EngineeringNumber.Of(loadAmperes, "A")} is too much for its capacitors or inductors",
        _ => string.Empty,
    };

    /// <inheritdoc/>
    internal override (Converter Converter, Mode Mode)? NetworkAt(double duty)
    {
        Converter converter = _sizedAt((int)Math.Round(duty / _candidate.MaximumDuty.ToDouble() * StageDuties.Parts)).Converter;
        return (converter, converter.Modes[0]);
    }

    /// <inheritdoc/>
    internal override double LackAt(double inputVolts, double outputVolts, double loadAmperes)
    {
        RegulatedPoint point = Hold(inputVolts, outputVolts, loadAmperes);
        return point.IsHeld ? 1
            : point.Outcome == RegulationOutcome.ImpedanceTooHigh && _candidate.Duties.Of(outputVolts / inputVolts) is ({ } node, _)
                ? CycleAt(node).LeastHertz(inputVolts, loadAmperes) / _frequencyHz.Maximum!.Value
                : double.PositiveInfinity;
    }

    private StageCycle CycleAt(int node) => _cycles.GetOrAdd(
        node, n => new Lazy<StageCycle>(() => new StageCycle(_sizedAt(n), _candidate.Duties.AnalysisAt(n)))).Value;

    // the loss per charge of a cycle is convex in the logarithms of its current and frequency
    private (double Hertz, double Amperes)? Best(StageCycle cycle, double volts, double loadAmperes)
    {
        double ceiling = _frequencyHz.Maximum!.Value;
        if (cycle.LeastHertz(volts, loadAmperes) > ceiling)
        {
            return null;
        }

        double low = Math.Log(loadAmperes), high = low;
        for (double step = Math.Log(2); high - low < LargestRange && cycle.LeastHertz(volts, Math.Exp(high + step)) <= ceiling; high += step)
        {
        }

        if (high == low)
        {
            return (HertzAt(cycle, volts, loadAmperes), loadAmperes);
        }

        double amperes = Math.Exp(GoldenSection.Minimum(low, high, x => HertzAt(cycle, volts, Math.Exp(x)) is var hertz ? cycle.RunningWatts(volts, Math.Exp(x), hertz) / Math.Exp(x) : 0));
        double atLoad = cycle.RunningWatts(volts, loadAmperes, HertzAt(cycle, volts, loadAmperes)) / loadAmperes;
        if (atLoad <= cycle.RunningWatts(volts, amperes, HertzAt(cycle, volts, amperes)) / amperes)
        {
            amperes = loadAmperes;
        }

        return (HertzAt(cycle, volts, amperes), amperes);
    }

    private double HertzAt(StageCycle cycle, double volts, double amperes)
    {
        double ceiling = _frequencyHz.Maximum!.Value;
        double floor = Math.Min(ceiling, Math.Max(_frequencyHz.Minimum!.Value, cycle.LeastHertz(volts, amperes)));
        return Math.Exp(GoldenSection.Minimum(Math.Log(floor), Math.Log(ceiling), x => cycle.RunningWatts(volts, amperes, Math.Exp(x))));
    }

    private const double LargestRange = 14;
}
