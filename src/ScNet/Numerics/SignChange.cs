namespace ScNet.Numerics;

/// <summary>Where a function changes its sign, to half the digits: at an extreme the value hardly depends on the place.</summary>
internal static class SignChange
{
    private const int StepLimit = 100;
    private const double Tolerance = 1e-9;

    /// <summary>Whether two values have opposite signs, however small they are; zero has none.</summary>
    public static bool LiesBetween(double atLow, double atHigh) => atLow < 0 ? atHigh > 0 : atLow > 0 && atHigh < 0;

    /// <summary>Regula falsi from ends of opposite signs; an end that stays twice counts half (the Illinois rule).</summary>
    /// <param name="function">The function.</param>
    /// <param name="low">One end.</param>
    /// <param name="atLow">The function there.</param>
    /// <param name="high">The other end.</param>
    /// <param name="atHigh">The function there.</param>
    public static double Find(Func<double, double> function, double low, double atLow, double high, double atHigh)
    {
        double place = low, tolerance = Tolerance * (high - low);
        int stayed = 0;
        for (int step = 0; step < StepLimit && high - low > tolerance; step++)
        {
            place = low + ((high - low) * (atLow / (atLow - atHigh)));
            if (!(place > low && place < high))
            {
                place = 0.5 * (low + high);
            }

            double value = function(place);
            if (value == 0)
            {
                break;
            }

            if (value > 0 == atLow > 0)
            {
                (low, atLow) = (place, value);
                atHigh *= stayed > 0 ? 0.5 : 1;
                stayed = 1;
            }
            else
            {
                (high, atHigh) = (place, value);
                atLow *= stayed < 0 ? 0.5 : 1;
                stayed = -1;
            }
        }

        return place;
    }
}
