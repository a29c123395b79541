using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Design.Regulation;

/// <summary>The lowest frequency at which a mode has a wanted output impedance, prepared between a floor and a ceiling.</summary>
/// <remarks>
/// ln R over ln f as polynomials on pieces: what is left over is at most 1e-11 of the impedance. Making it costs some hundred
/// exact impedances, asking it none. Derivation: docs/theory/regulation.md.
/// </remarks>
internal sealed class FrequencyOfImpedance
{
    private const double Resolved = 1e-12;
    private const double Settled = 5e-14;
    private const double LastStep = 2e-7;
    private const int StepLimit = 60;

    private readonly ChebyshevPieces _pieces;

    // the least of ln R up to each place; falls even where R itself does not
    private readonly double[] _least;

    private FrequencyOfImpedance(ChebyshevPieces pieces, double floorHz, double ceilingHz)
    {
        _pieces = pieces;
        FloorHz = floorHz;
        CeilingHz = ceilingHz;
        _least = new double[pieces.Places.Length];
        double least = double.PositiveInfinity;
        for (int k = 0; k < _least.Length; k++)
        {
            _least[k] = least = Math.Min(least, pieces.Sample(k, 0));
        }

        OhmsAtFloor = Math.Exp(_least[0]);
        LeastOhms = Math.Exp(_least[^1]);
    }

    /// <summary>The lowest frequency in hertz (Hz).</summary>
    public double FloorHz { get; }

    /// <summary>The highest frequency in hertz (Hz).</summary>
    public double CeilingHz { get; }

    /// <summary>The impedance in ohms (Ω) at the floor.</summary>
    public double OhmsAtFloor { get; }

    /// <summary>The least impedance in ohms (Ω) of all frequencies between floor and ceiling.</summary>
    public double LeastOhms { get; }

    /// <summary>Prepares it.</summary>
    /// <param name="impedance">The exact impedance, above zero.</param>
    /// <param name="frequencyHz">Floor and ceiling in hertz (Hz).</param>
    public static FrequencyOfImpedance Of(OutputImpedance impedance, Interval<double> frequencyHz)
    {
        double floor = Guard.InRange(frequencyHz.Minimum ?? 0, allowZero: false, nameof(frequencyHz));
        double ceiling = Guard.InRange(frequencyHz.Maximum ?? 0, allowZero: false, nameof(frequencyHz));
        if (ceiling <= floor)
        {
            throw new ArgumentOutOfRangeException(nameof(frequencyHz), frequencyHz, "Expected a ceiling above the floor.");
        }

        ChebyshevPieces pieces = ChebyshevPieces.Of(
            1, (u, ln) => ln[0] = Math.Log(impedance.Ohms(Math.Exp(u))), [Math.Log(floor), Math.Log(ceiling)], Resolved, isAbsolute: true);
        return new FrequencyOfImpedance(pieces, floor, ceiling);
    }

    /// <summary>The lowest frequency in hertz (Hz) with an impedance; for a higher impedance than that at the floor the floor, for a lower one than <see cref="LeastOhms"/> the ceiling.</summary>
    /// <param name="ohms">The impedance in ohms (Ω), above zero.</param>
    public double HertzAt(double ohms)
    {
        double wanted = Math.Log(ohms);
        if (wanted >= _least[0] || wanted < _least[^1])
        {
            return wanted >= _least[0] ? FloorHz : CeilingHz;
        }

        // the first place where it is low enough
        int below = 0, at = _least.Length - 1;
        while (at - below > 1)
        {
            int middle = (below + at) / 2;
            if (_least[middle] > wanted)
            {
                below = middle;
            }
            else
            {
                at = middle;
            }
        }

        return Math.Clamp(Math.Exp(Between(wanted, below, at)), FloorHz, CeilingHz);
    }

    // Newton's method, and halves where that leaves the bracket.
    private double Between(double wanted, int below, int at)
    {
        int piece = ChebyshevPieces.PieceOf(at);
        double low = _pieces.Places[below], high = _pieces.Places[at];
        double atLow = _pieces.Sample(below, 0), atHigh = _pieces.Sample(at, 0);
        double place = high > low && atLow > atHigh ? low + ((high - low) * (atLow - wanted) / (atLow - atHigh)) : high;
        for (int step = 0; step < StepLimit; step++)
        {
            (double value, double slope) = _pieces.At(piece, 0, place);
            double excess = value - wanted;
            if (Math.Abs(excess) <= Settled)
            {
                break;
            }

            if (excess > 0)
            {
                low = place;
            }
            else
            {
                high = place;
            }

            double next = place - (excess / slope);
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
            }

            double moved = Math.Abs(next - place);
            place = next;
            if (moved <= LastStep)
            {
                break; // the next step would be as small as the square of this one
            }
        }

        return place;
    }
}
