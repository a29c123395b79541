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

    private readonly ChebyshevPieces _pieces;

    // the places sampled, and the bottoms between them
    private readonly Point[] _points;

    private FrequencyOfImpedance(ChebyshevPieces pieces, double floorHz, double ceilingHz)
    {
        _pieces = pieces;
        FloorHz = floorHz;
        CeilingHz = ceilingHz;
        List<Point> points = [];
        double least = double.PositiveInfinity;
        for (int k = 0; k < pieces.Places.Length; k++)
        {
            if (k > 0 && BottomBetween(pieces, k - 1, k) is { } bottom)
            {
                Add(bottom.Place, bottom.LnOhms, k);
            }

            Add(pieces.Places[k], pieces.Sample(k, 0), k);
        }

        _points = [.. points];
        OhmsAtFloor = Math.Exp(_points[0].Least);
        LeastOhms = Math.Exp(_points[^1].Least);

        void Add(double place, double lnOhms, int k)
        {
            least = Math.Min(least, lnOhms);
            points.Add(new(place, lnOhms, least, ChebyshevPieces.PieceOf(k)));
        }
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

        // the first place where it is low enough; none is beyond the last
        int below = -1, at = _points.Length;
        while (at - below > 1)
        {
            int middle = (below + at) / 2;
            if (_points[middle].Least > wanted)
            {
                below = middle;
            }
            else
            {
                at = middle;
            }
        }

        return at == 0 ? FloorHz
            : at == _points.Length ? CeilingHz
            : Math.Clamp(Math.Exp(Between(wanted, _points[below], _points[at])), FloorHz, CeilingHz);
    }

    // Newton's method, and halves where that leaves the bracket. Each step starts anew inside it and makes it smaller, so it ends.
    private double Between(double wanted, Point below, Point at)
    {
        int piece = at.Piece;
        double low = below.Place, high = at.Place;
        double atLow = below.LnOhms, atHigh = at.LnOhms;
        double place = high > low && atLow > atHigh ? low + ((high - low) * (atLow - wanted) / (atLow - atHigh)) : high;
        double moved = double.PositiveInfinity;
        while (moved > LastStep) // the next step would be as small as the square of this one
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

            moved = Math.Abs(next - place);
            place = next;
        }

        return place;
    }

    // where ln R falls from one place and rises to the next the lowest one between; null elsewhere
    private static (double Place, double LnOhms)? BottomBetween(ChebyshevPieces pieces, int before, int after)
    {
        int piece = ChebyshevPieces.PieceOf(after);
        double low = pieces.Places[before], high = pieces.Places[after];
        if (!(pieces.At(piece, 0, low).Slope < 0 && pieces.At(piece, 0, high).Slope > 0))
        {
            return null;
        }

        while (low + (0.5 * (high - low)) is var middle && middle > low && middle < high)
        {
            (low, high) = pieces.At(piece, 0, middle).Slope < 0 ? (middle, high) : (low, middle);
        }

        return (high, pieces.At(piece, 0, high).Value);
    }

    // a place, ln R there, and the least of ln R up to there: that falls even where R itself does not
    private readonly record struct Point(double Place, double LnOhms, double Least, int Piece);
}
