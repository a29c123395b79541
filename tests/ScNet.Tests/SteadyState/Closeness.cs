namespace ScNet.Tests.SteadyState;

/// <summary>How near lists of numbers are to one another.</summary>
internal static class Closeness
{
    /// <summary>Whether two numbers are no farther apart than a distance.</summary>
    public static Func<double, double, bool> Within(double distance) => (expected, actual) => Math.Abs(expected - actual) <= distance;
}
