namespace ScNet.Design.Losses;

/// <summary>A voltage in every phase per volt of input, each between two bounds, which are equal where it is fixed.</summary>
internal sealed class VoltageProfile
{
    private readonly (double Low, double High)[] _phases;

    /// <summary>States a voltage.</summary>
    /// <param name="phases">The bounds in each phase.</param>
    /// <param name="isRelative">Whether a constant that is the same in all phases is unknown.</param>
    /// <param name="floats">Whether it rests on what a node does while it floats.</param>
    public VoltageProfile((double Low, double High)[] phases, bool isRelative = false, bool floats = false)
    {
        _phases = phases;
        IsRelative = isRelative;
        Floats = floats;
    }

    /// <summary>Whether only its changes are known.</summary>
    public bool IsRelative { get; }

    /// <summary>Whether it rests on what a node does while it floats.</summary>
    public bool Floats { get; }

    /// <summary>Whether it is fixed in every phase, and not only bounded.</summary>
    public bool IsFixed => Array.TrueForAll(_phases, p => p.Low == p.High);

    /// <summary>The voltage of one node against another; null where one is unknown.</summary>
    public static VoltageProfile? Difference(VoltageProfile? first, VoltageProfile? second) => first is null || second is null
        ? null
        : new([.. first._phases.Zip(second._phases, (a, b) => (a.Low - b.High, a.High - b.Low))], first.IsRelative || second.IsRelative, first.Floats || second.Floats);

    /// <summary>The same but for a constant.</summary>
    public VoltageProfile ButForAConstant() => new(_phases, isRelative: true, Floats);

    /// <summary>½ Σ Δ² over the steps Δ from phase to phase and from the last to the first; where bounds are given the most that they allow.</summary>
    public double HalfSquares()
    {
        double most = 0;
        (double low, double high) = _phases[0];
        foreach (double start in (ReadOnlySpan<double>)[low, high])
        {
            // convex in every voltage: the most is among the ends of the bounds, found phase by phase
            (double Volts, double Sum) atLow = (start, 0), atHigh = (start, 0);
            for (int j = 1; j < _phases.Length; j++)
            {
                (double nextLow, double nextHigh) = _phases[j];
                (atLow, atHigh) = ((nextLow, Longest(nextLow, atLow, atHigh)), (nextHigh, Longest(nextHigh, atLow, atHigh)));
            }

            most = Math.Max(most, Longest(start, atLow, atHigh));
        }

        return 0.5 * most;
    }

    /// <summary>Σ D |v| with the duties D; where bounds are given the most that they allow.</summary>
    /// <param name="duties">The share of each phase in the period.</param>
    public double MeanMagnitude(double[] duties)
    {
        double sum = 0;
        for (int j = 0; j < _phases.Length; j++)
        {
            sum += duties[j] * Math.Max(Math.Abs(_phases[j].Low), Math.Abs(_phases[j].High));
        }

        return sum;
    }

    private static double Longest(double volts, (double Volts, double Sum) a, (double Volts, double Sum) b) =>
        Math.Max(a.Sum + Square(volts - a.Volts), b.Sum + Square(volts - b.Volts));

    private static double Square(double value) => value * value;
}
