namespace ScNet.Design.Losses;

/// <summary>Currents that rise or fall in a straight line in each phase, at one volt of input and one hertz.</summary>
/// <param name="Means">The mean of each element's in each phase, in amperes; index phase, then element.</param>
/// <param name="Rises">How far each rises from the start of the phase to its end.</param>
internal sealed record StraightLines(double[][] Means, double[][] Rises)
{
    /// <summary>Whether there are none at all.</summary>
    public bool IsNone { get; init; }

    /// <summary>Room for currents.</summary>
    public static StraightLines Of(int phases, int elements) => new(Rows(phases, elements), Rows(phases, elements));

    private static double[][] Rows(int count, int length) => [.. Enumerable.Range(0, count).Select(_ => new double[length])];
}
