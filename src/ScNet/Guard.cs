namespace ScNet;

/// <summary>Checks of arguments that more than one type makes.</summary>
internal static class Guard
{
    /// <summary>Requires a list of the given length with finite, positive (or zero, where allowed) values; null passes.</summary>
    public static void Values(IReadOnlyList<double>? values, int length, bool allowZero, string parameterName)
    {
        if (values is null)
        {
            return;
        }

        if (values.Count != length)
        {
            throw new ArgumentException($"Expected {length} values, one per element, but got {values.Count}.", parameterName);
        }

        for (int i = 0; i < length; i++)
        {
            if (!IsInRange(values[i], allowZero))
            {
                throw new ArgumentException($"Expected a finite {(allowZero ? "value of at least zero" : "positive value")} at index {i}, but got {values[i]}.", parameterName);
            }
        }
    }

    /// <summary>Whether a component value is finite and positive, or zero where allowed.</summary>
    public static bool IsInRange(double value, bool allowZero) => double.IsFinite(value) && (allowZero ? value >= 0 : value > 0);
}
