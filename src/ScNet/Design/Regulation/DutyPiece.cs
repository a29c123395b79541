using Fractions;
using ScNet.Design.Losses;
using ScNet.Numerics;

namespace ScNet.Design.Regulation;

/// <summary>A stage over a range of duties in which it is smooth: ratio and impedance as polynomials, losses at the duties that were sampled.</summary>
/// <remarks>Derivation: docs/theory/regulation.md. Safe on many threads.</remarks>
internal sealed class DutyPiece
{
    private const int Ratio = 0;
    private const int Ohms = 1;
    private const double Resolved = 1e-11;
    private const double Settled = 1e-15;
    private const int StepLimit = 60;
    private const long Denominator = 1L << 40;

    private readonly ChebyshevPieces _pieces;
    private readonly LossModel[] _models;

    private DutyPiece(ChebyshevPieces pieces, LossModel[] models) => (_pieces, _models) = (pieces, models);

    /// <summary>The duties that were sampled, rising.</summary>
    public ReadOnlySpan<double> Places => _pieces.Places;

    /// <summary>The losses at the first duty.</summary>
    public LossModel First => _models[0];

    /// <summary>Prepares it.</summary>
    /// <param name="stageAtDuty">The losses of the stage at a duty.</param>
    /// <param name="low">The lowest duty.</param>
    /// <param name="high">The highest duty.</param>
    /// <param name="frequencyHz">The frequency at which it runs.</param>
    public static DutyPiece Of(Func<Fraction, LossModel> stageAtDuty, double low, double high, double frequencyHz)
    {
        Dictionary<double, LossModel> models = [];
        ChebyshevPieces pieces = ChebyshevPieces.Of(2, Sample, [low, high], Resolved, isAbsolute: false);
        return new DutyPiece(pieces, [.. pieces.Places.ToArray().Select(d => models[d])]);

        void Sample(double duty, Span<double> values)
        {
            if (!models.TryGetValue(duty, out LossModel? model))
            {
                models[duty] = model = stageAtDuty(new Fraction((long)Math.Round(duty * Denominator), Denominator))
                    ?? throw new ArgumentException("Expected a stage at every duty, but there is none.", nameof(stageAtDuty));
            }

            if (!model.Analysis.CarriesLoad || !model.Analysis.Ratio.IsDetermined)
            {
                throw new ArgumentException($"Expected a stage that carries a load with a ratio that averages fix, but '{model.Analysis.Converter.Name}' does not.", nameof(stageAtDuty));
            }

            values[Ratio] = Math.Abs(model.Analysis.Ratio.ToDouble());
            values[Ohms] = model.Analysis.FastSwitchingLimit.Ohms + ((model.Analysis.ChargeSharing?.OhmsAtOneHertz ?? 0) / frequencyHz);
        }
    }

    /// <summary>The output voltage at a duty that was sampled.</summary>
    public double VoltsAt(int place, double inputVolts, double loadAmperes) =>
        (_pieces.Sample(place, Ratio) * inputVolts) - (_pieces.Sample(place, Ohms) * loadAmperes);

    /// <summary>The duty between two neighbours that were sampled at which the output has a voltage; the voltages at both are on either side of it, or one of them is it.</summary>
    public double DutyBetween(int before, double inputVolts, double outputVolts, double loadAmperes)
    {
        double low = Places[before], high = Places[before + 1];
        double atLow = VoltsAt(before, inputVolts, loadAmperes) - outputVolts, atHigh = VoltsAt(before + 1, inputVolts, loadAmperes) - outputVolts;
        int piece = ChebyshevPieces.PieceOf(before);
        bool isRising = atLow < atHigh;
        double place = atLow == atHigh ? low : low + ((high - low) * atLow / (atLow - atHigh));
        for (int step = 0; step < StepLimit; step++)
        {
            (double ratio, double bySlope) = _pieces.At(piece, Ratio, place);
            (double ohms, double ohmsSlope) = _pieces.At(piece, Ohms, place);
            double excess = (ratio * inputVolts) - (ohms * loadAmperes) - outputVolts;
            if (Math.Abs(excess) <= Settled * inputVolts)
            {
                break;
            }

            if (excess < 0 == isRising)
            {
                low = place;
            }
            else
            {
                high = place;
            }

            double next = place - (excess / ((bySlope * inputVolts) - (ohmsSlope * loadAmperes)));
            if (!(next >= low && next <= high))
            {
                next = 0.5 * (low + high);
            }

            if (next == place)
            {
                break;
            }

            place = next;
        }

        return place;
    }

    /// <summary>The impedance in ohms at a duty.</summary>
    public double OhmsAt(int before, double duty) => _pieces.ValueAt(ChebyshevPieces.PieceOf(before), Ohms, duty);

    /// <summary>The losses at a duty: those of the duties that were sampled on its piece, and the polynomial through them.</summary>
    public void WattsAt(int before, double duty, double inputVolts, double loadAmperes, double frequencyHz, Span<double> watts)
    {
        int first = ChebyshevPieces.PieceOf(before) * (ChebyshevPieces.Degree + 1);
        Span<double> own = stackalloc double[LossModel.KindCount];
        watts.Clear();
        double sum = 0;
        for (int k = 0; k <= ChebyshevPieces.Degree; k++)
        {
            double distance = duty - Places[first + k];
            _models[first + k].WattsAt(inputVolts, loadAmperes, frequencyHz, _pieces.Sample(first + k, Ohms), own);
            if (distance == 0)
            {
                own.CopyTo(watts);
                return;
            }

            double weight = WeightOf(k) / distance;
            sum += weight;
            for (int kind = 0; kind < own.Length; kind++)
            {
                watts[kind] += weight * own[kind];
            }
        }

        for (int kind = 0; kind < watts.Length; kind++)
        {
            watts[kind] /= sum;
        }
    }

    // the weights of Chebyshev points of the second kind: 1, -1, 1, …, the ends half
    private static double WeightOf(int point) => (point % 2 == 0 ? 1 : -1) * (point is 0 or ChebyshevPieces.Degree ? 0.5 : 1);
}
