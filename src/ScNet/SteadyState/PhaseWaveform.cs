using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>One signal over one phase: constant + slope · t/τ + Σ shape_k ψ_k(t) + Σ integral_k Ψ_k(t).</summary>
internal sealed class PhaseWaveform(PhaseBasis basis, double constant, double slope, double[] shapes, double[] integrals)
{
    private const int BisectionSteps = 60;

    /// <summary>The mean over the phase.</summary>
    public double Mean()
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
    public double SquareIntegral()
    {
        double sum = constant * constant * basis.Duration;
        for (int k = 0; k < shapes.Length; k++)
        {
            if (shapes[k] == 0)
            {
                continue;
            }

            for (int l = 0; l < shapes.Length; l++)
            {
                sum += shapes[k] * shapes[l] * ModalFunctions.Overlap(basis.Rates[k], basis.Rates[l], basis.Duration);
            }
        }

        // of a signal that is nothing but rounding
        return Math.Max(0, sum);
    }

    /// <summary>The value at a time in seconds from the start of the phase.</summary>
    public double At(double time)
    {
        double value = constant + (slope * time / basis.Duration);
        for (int k = 0; k < basis.Rates.Length; k++)
        {
            if (shapes[k] != 0)
            {
                value += shapes[k] * ModalFunctions.Shape(basis.Rates[k], basis.Duration, time);
            }

            if (integrals[k] != 0)
            {
                value += integrals[k] * ModalFunctions.ShapeIntegral(basis.Rates[k], basis.Duration, time);
            }
        }

        return value;
    }

    /// <summary>Least and greatest value over the phase, ends and inner extremes.</summary>
    public (double Least, double Greatest) Extremes()
    {
        double first = At(0), last = At(basis.Duration);
        double least = Math.Min(first, last), greatest = Math.Max(first, last);
        int lastSign = 0, lastPoint = 0;
        for (int p = 0; p < basis.Grid.Length; p++)
        {
            // a derivative of exactly zero at a grid point decides nothing by itself
            double derivative = GridDerivative(p);
            int sign = derivative > 0 ? 1 : derivative < 0 ? -1 : 0;
            if (sign * lastSign < 0)
            {
                double value = At(StationaryTime(basis.Grid[lastPoint], basis.Grid[p], lastSign < 0));
                least = Math.Min(least, value);
                greatest = Math.Max(greatest, value);
            }

            if (sign != 0)
            {
                (lastSign, lastPoint) = (sign, p);
            }
        }

        return (least, greatest);
    }

    private double GridDerivative(int point) =>
        (slope / basis.Duration) + DenseRows.Dot(shapes, basis.SlopesAt(point)) + DenseRows.Dot(integrals, basis.ShapesAt(point));

    private double Derivative(double time)
    {
        double value = slope / basis.Duration;
        for (int k = 0; k < basis.Rates.Length; k++)
        {
            value += (shapes[k] * ModalFunctions.ShapeByTime(basis.Rates[k], basis.Duration, time))
                + (integrals[k] * ModalFunctions.Shape(basis.Rates[k], basis.Duration, time));
        }

        return value;
    }

    private double StationaryTime(double low, double high, bool isRising)
    {
        for (int step = 0; step < BisectionSteps && high > low; step++)
        {
            double middle = 0.5 * (low + high);
            if (Derivative(middle) < 0 == isRising)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return 0.5 * (low + high);
    }
}
