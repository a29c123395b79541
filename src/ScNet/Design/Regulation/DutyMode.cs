using Fractions;
using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Design.Regulation;

/// <summary>A stage with an inductor whose duty regulates at one frequency; at a light load it works in bursts.</summary>
/// <remarks>Derivation: docs/theory/regulation.md.</remarks>
internal sealed class DutyMode : RegulatedMode
{
    // phases appear and vanish where a piece ends, so it ends this far before
    private const double Inset = 1.0 / (1L << 30);

    private readonly DutyPiece[] _pieces;
    private readonly double _frequencyHz;
    private readonly ControlOverhead _control;

    public DutyMode(string name, Func<Fraction, LossModel> stageAtDuty, Interval<double> duty, double frequencyHz, IReadOnlyList<double> breaks)
        : base(name)
    {
        double low = duty.Minimum ?? 0, high = duty.Maximum ?? 0;
        if (!(low > 0 && high < 1 && high - low > 4 * Inset))
        {
            throw new ArgumentOutOfRangeException(nameof(duty), duty, "Expected a range of duties between 0 and 1.");
        }

        _frequencyHz = Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
        double[] ends = [low, .. breaks.Where(b => b > low + (4 * Inset) && b < high - (4 * Inset)).Distinct().Order(), high];
        _pieces = [.. Enumerable.Range(0, ends.Length - 1).Select(k => DutyPiece.Of(
            stageAtDuty, breaks.Contains(ends[k]) ? ends[k] + Inset : ends[k], breaks.Contains(ends[k + 1]) ? ends[k + 1] - Inset : ends[k + 1], frequencyHz))];
        _control = _pieces[0].First.Sized.Process.Control;
    }

    /// <inheritdoc/>
    public override RegulatedPoint Hold(double inputVolts, double outputVolts, double loadAmperes)
    {
        Require(inputVolts, outputVolts, loadAmperes);
        Span<double> watts = stackalloc double[LossModel.KindCount];
        double outputWatts = outputVolts * loadAmperes;
        if (!TrySolve(inputVolts, outputVolts, loadAmperes, watts, out double duty, out double ohms))
        {
            return new(RegulationOutcome.DutyOutOfRange, _frequencyHz, double.NaN, outputWatts, []);
        }

        // what a cycle costs by itself, over what a current costs: below this current it is better to rest between bursts of it;
        // no number where a cycle costs less than nothing by rounding
        double total = Sum(watts), byCycle = total - Lasting(watts) - (ohms * loadAmperes * loadAmperes);
        double burst = Math.Sqrt(byCycle / ohms);
        Span<double> inBurst = stackalloc double[LossModel.KindCount];
        if (burst > loadAmperes && TrySolve(inputVolts, outputVolts, burst, inBurst, out double burstDuty, out _))
        {
            double share = loadAmperes / burst;
            for (int kind = 0; kind < inBurst.Length; kind++)
            {
                inBurst[kind] *= (LossKind)kind == LossKind.Leakage ? 1 : share;
            }

            inBurst[(int)LossKind.Control] += (1 - share) * _control.FixedWatts;
            if (Sum(inBurst) < total)
            {
                return new(RegulationOutcome.HeldBySkipping, share * _frequencyHz, burstDuty, outputWatts, inBurst, share);
            }
        }

        return new(RegulationOutcome.Held, _frequencyHz, duty, outputWatts, watts);
    }

    /// <inheritdoc/>
    public override string ReasonAt(double inputVolts, double outputVolts, double loadAmperes)
    {
        if (Hold(inputVolts, outputVolts, loadAmperes).IsHeld)
        {
            return string.Empty;
        }

        double least = double.PositiveInfinity, most = double.NegativeInfinity;
        foreach (DutyPiece piece in _pieces)
        {
            for (int k = 0; k < piece.Places.Length; k++)
            {
                double volts = piece.VoltsAt(k, inputVolts, loadAmperes);
                (least, most) = (Math.Min(least, volts), Math.Max(most, volts));
            }
        }

        return FormattableString.Invariant($"duties from {_pieces[0].Places[0]:G3} to {_pieces[^1].Places[^1]:G3} give ")
            + $"{EngineeringNumber.Of(least, "V")} to {EngineeringNumber.Of(most, "V")} at this load, and {EngineeringNumber.Of(outputVolts, "V")} is wanted";
    }

    // of all duties that hold the output the one that loses least
    private bool TrySolve(double inputVolts, double outputVolts, double loadAmperes, Span<double> watts, out double duty, out double ohms)
    {
        Span<double> own = stackalloc double[LossModel.KindCount];
        (duty, ohms) = (double.NaN, 0);
        double least = double.PositiveInfinity;
        foreach (DutyPiece piece in _pieces)
        {
            double before = piece.VoltsAt(0, inputVolts, loadAmperes) - outputVolts;
            for (int k = 0; k + 1 < piece.Places.Length; k++)
            {
                double after = piece.VoltsAt(k + 1, inputVolts, loadAmperes) - outputVolts;
                if (Math.Min(before, after) <= 0 && Math.Max(before, after) >= 0)
                {
                    double found = piece.DutyBetween(k, inputVolts, outputVolts, loadAmperes);
                    piece.WattsAt(k, found, inputVolts, loadAmperes, _frequencyHz, own);
                    if (Sum(own) is var loss && loss < least)
                    {
                        (least, duty, ohms) = (loss, found, piece.OhmsAt(k, found));
                        own.CopyTo(watts);
                    }
                }

                before = after;
            }
        }

        return !double.IsNaN(duty);
    }

    // what is lost between bursts too
    private double Lasting(ReadOnlySpan<double> watts) => watts[(int)LossKind.Leakage] + _control.FixedWatts;

    private static double Sum(ReadOnlySpan<double> watts)
    {
        double sum = 0;
        foreach (double loss in watts)
        {
            sum += loss;
        }

        return sum;
    }
}
