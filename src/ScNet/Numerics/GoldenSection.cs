namespace ScNet.Numerics;

/// <summary>The least of a function of one variable that falls and then rises.</summary>
internal static class GoldenSection
{
    private const double Golden = 0.6180339887498949;

    // a minimum is flat: the value is then good to the square of it
    private const double Tolerance = 3e-4;

    /// <summary>The place of the minimum between two bounds, to 3e-4, by golden sections.</summary>
    public static double Minimum(double low, double high, Func<double, double> value)
    {
        double left = high - (Golden * (high - low)), right = low + (Golden * (high - low));
        double atLeft = value(left), atRight = value(right);
        while (high - low > Tolerance)
        {
            if (atLeft <= atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - (Golden * (high - low));
                atLeft = value(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + (Golden * (high - low));
                atRight = value(right);
            }
        }

        return (low + high) / 2;
    }
}
