using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>One signal over one phase: constant + slope · t/τ + Σ shape_k ψ_k(t) + Σ integral_k Ψ_k(t).</summary>
/// <remarks>
/// A current has shapes only and a voltage integrals only; the other list is then empty. Cost of the extremes: a
/// product per mode and grid time, and some ten values at each inner extreme that may exceed those known. Cost of the square: modes².
/// </remarks>
internal sealed class ModalWaveform(PhaseBasis basis, double constant, double slope, double[] shapes, double[] integrals) : PhaseWaveform
{
    private PhaseBasis Basis => basis;

    private double[] Shapes => shapes;

    private double Constant => constant;

    // what an extreme inside must promise beyond the values known, relative to them
    private const double Rounding = 1e-14;

    /// <summary>The sum of currents, each with a sign, of one phase; of one or of several bases.</summary>
    public static ModalWaveform Sum(double duration, IEnumerable<(double Sign, ModalWaveform Current)> currents)
    {
        (double Sign, ModalWaveform Current)[] all = [.. currents];
        PhaseBasis[] bases = [.. all.Select(c => c.Current.Basis).Distinct()];
        PhaseBasis whole = bases.Length == 1 ? bases[0] : new PhaseBasis([.. bases.SelectMany(b => b.Rates)], duration);
        var sum = new double[whole.Rates.Length];
        int first = 0;
        foreach (PhaseBasis one in bases)
        {
            foreach ((double sign, ModalWaveform current) in all.Where(c => c.Current.Basis == one))
            {
                for (int k = 0; k < one.Rates.Length; k++)
                {
                    sum[first + k] += sign * current.Shapes[k];
                }
            }

            first += one.Rates.Length;
        }

        return new ModalWaveform(whole, all.Sum(c => c.Sign * c.Current.Constant), 0, sum, []);
    }

    /// <summary>By how much a signal without shapes changes over the phase.</summary>
    public override double Change => slope;

    /// <summary>The mean over the phase.</summary>
    public override double Mean()
    {
        double mean = constant + (0.5 * slope);
        for (int k = 0; k < integrals.Length; k++)
        {
            // the integral of Ψ is (τ/2λ) L(λτ/2), that is τ times the excess
            mean += integrals[k] * ModalFunctions.Excess(basis.Rates[k], basis.Duration);
        }

        return mean;
    }

    /// <summary>The integral of the square over the phase, for a signal without slope and integrals.</summary>
    public override double SquareIntegral()
    {
        double sum = constant * constant * basis.Duration;
        for (int k = 0; k < shapes.Length; k++)
        {
            if (shapes[k] != 0)
            {
                sum += shapes[k] * DenseRows.Dot(shapes, basis.Overlaps(k));
            }
        }

        // of a signal that is nothing but rounding
        return Math.Max(0, sum);
    }

    /// <summary>The value at a time in seconds from the start of the phase.</summary>
    public override double At(double time) =>
        constant + (slope * time / basis.Duration) + basis.Shapes(shapes, time) + basis.Integrals(integrals, time);

    /// <summary>Least and greatest value over the phase, ends and inner extremes.</summary>
    public override (double Least, double Greatest) Extremes()
    {
        double first = AtGrid(0), last = AtGrid(basis.Grid.Length - 1);
        double least = Math.Min(first, last), greatest = Math.Max(first, last);
        int lastPoint = 0;
        double lastDerivative = 0;
        List<Turn> turns = [];
        for (int p = 0; p < basis.Grid.Length; p++)
        {
            // a derivative of exactly zero at a grid point decides nothing by itself
            double derivative = GridDerivative(p);
            if (derivative == 0)
            {
                continue;
            }

            if (lastDerivative != 0 && double.IsNegative(derivative) != double.IsNegative(lastDerivative))
            {
                Turn turn = new(lastPoint, lastDerivative, AtGrid(lastPoint), p, derivative);
                least = Math.Min(least, turn.FirstValue);
                greatest = Math.Max(greatest, turn.FirstValue);
                turns.Add(turn);
            }

            (lastDerivative, lastPoint) = (derivative, p);
        }

        foreach (Turn turn in turns.Where(t => MayExceed(t, least, greatest)))
        {
            double value = At(SignChange.Find(Derivative, basis.Grid[turn.First], turn.FirstDerivative, basis.Grid[turn.Last], turn.LastDerivative));
            least = Math.Min(least, value);
            greatest = Math.Max(greatest, value);
        }

        return (least, greatest);
    }

    // Every mode's share of the derivative is monotone, so between two grid points it lies between its values there.
    private bool MayExceed(Turn turn, double least, double greatest)
    {
        double isUp = Math.CopySign(1, turn.FirstDerivative), steepest = isUp * slope / basis.Duration;
        if (shapes.Length > 0)
        {
            steepest += SumOfLarger(shapes, basis.SlopesAt(turn.First), basis.SlopesAt(turn.Last), isUp);
        }

        if (integrals.Length > 0)
        {
            steepest += SumOfLarger(integrals, basis.ShapesAt(turn.First), basis.ShapesAt(turn.Last), isUp);
        }

        double farthest = turn.FirstValue + (isUp * steepest * (basis.Grid[turn.Last] - basis.Grid[turn.First]));
        return Math.Max(farthest - greatest, least - farthest) > Rounding * Math.Max(Math.Abs(least), Math.Abs(greatest));
    }

    private static double SumOfLarger(double[] weights, ReadOnlySpan<double> first, ReadOnlySpan<double> last, double sign)
    {
        double sum = 0;
        for (int k = 0; k < weights.Length; k++)
        {
            double weight = sign * weights[k];
            sum += Math.Max(weight * first[k], weight * last[k]);
        }

        return sum;
    }

    // Two grid points between which the derivative changes its sign.
    private readonly record struct Turn(int First, double FirstDerivative, double FirstValue, int Last, double LastDerivative);

    private double AtGrid(int point) =>
        constant + (slope * basis.Grid[point] / basis.Duration)
        + (shapes.Length == 0 ? 0 : DenseRows.Dot(shapes, basis.ShapesAt(point)))
        + (integrals.Length == 0 ? 0 : DenseRows.Dot(integrals, basis.IntegralsAt(point)));

    private double GridDerivative(int point) =>
        (slope / basis.Duration)
        + (shapes.Length == 0 ? 0 : DenseRows.Dot(shapes, basis.SlopesAt(point)))
        + (integrals.Length == 0 ? 0 : DenseRows.Dot(integrals, basis.ShapesAt(point)));

    private double Derivative(double time) => (slope / basis.Duration) + basis.Slopes(shapes, time) + basis.Shapes(integrals, time);
}
