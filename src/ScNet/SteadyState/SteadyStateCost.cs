namespace ScNet.SteadyState;

/// <summary>
/// What a computation takes. Counted in double precision, as sizes of nothing real go beyond its range while their
/// products go beyond that of integers.
/// </summary>
/// <param name="Steps">Multiplications.</param>
/// <param name="Numbers">Numbers kept at once.</param>
internal readonly record struct SteadyStateCost(double Steps, double Numbers)
{
    /// <summary>The most multiplications: some twenty seconds of one core.</summary>
    public const double MostSteps = 4e10;

    /// <summary>The most numbers kept at once: two gigabytes.</summary>
    public const double MostNumbers = 2.5e8;

    public bool IsTooLarge => Steps > MostSteps || Numbers > MostNumbers;

    public static SteadyStateCost operator +(SteadyStateCost left, SteadyStateCost right) =>
        new(left.Steps + right.Steps, left.Numbers + right.Numbers);
}
