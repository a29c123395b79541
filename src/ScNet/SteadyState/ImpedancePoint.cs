namespace ScNet.SteadyState;

/// <summary>
/// The exact output impedance at one frequency and what the published estimates make of the two limits
/// there, so that a user sees where an estimate is safe.
/// </summary>
public sealed class ImpedancePoint
{
    // M. S. Makowski, ICSES 2012 (from memory).
    private const double LaterExponent = 2.54;

    internal ImpedancePoint(TwoPortPoint twoPort, double slowOhms, double fastOhms)
    {
        TwoPort = twoPort;
        SlowOhms = slowOhms;
        FastOhms = fastOhms;
    }

    /// <summary>Switching frequency in hertz (Hz).</summary>
    public double FrequencyHz => TwoPort.FrequencyHz;

    /// <summary>The exact output impedance in ohms (Ω).</summary>
    public double Ohms => TwoPort.Ohms;

    /// <summary>The whole two-port at this frequency: ratio, impedance, current ratio and input conductance.</summary>
    public TwoPortPoint TwoPort { get; }

    /// <summary>The slow-switching limit at this frequency in ohms (Ω).</summary>
    public double SlowOhms { get; }

    /// <summary>The fast-switching limit in ohms (Ω).</summary>
    public double FastOhms { get; }

    /// <summary>The root of the sum of the limits' squares in ohms (Ω): Seeman and Sanders 2008 (from memory).</summary>
    public double RootSumSquareOhms => double.Hypot(SlowOhms, FastOhms);

    /// <summary>The limits joined with exponent 2.54 in ohms (Ω): M. S. Makowski, "A note on resistive models of switched-capacitor DC-DC converters", ICSES 2012 (from memory).</summary>
    public double Norm254Ohms
    {
        get
        {
            double large = Math.Max(SlowOhms, FastOhms), small = Math.Min(SlowOhms, FastOhms);
            return large * Math.Pow(1 + Math.Pow(small / large, LaterExponent), 1 / LaterExponent);
        }
    }

    /// <summary>
    /// R_SSL · coth(R_SSL / R_FSL) in ohms (Ω): exact where every phase has the same single time constant
    /// per duty, an estimate elsewhere. Derived in docs/theory/output-impedance.md.
    /// </summary>
    public double SinglePairOhms => SinglePair(SlowOhms, FastOhms);

    /// <summary>Relative error of <see cref="RootSumSquareOhms"/> against the exact value, positive where it is too high.</summary>
    public double RootSumSquareError => (RootSumSquareOhms / Ohms) - 1;

    /// <summary>Relative error of <see cref="Norm254Ohms"/>, positive where it is too high.</summary>
    public double Norm254Error => (Norm254Ohms / Ohms) - 1;

    /// <summary>Relative error of <see cref="SinglePairOhms"/>, positive where it is too high.</summary>
    public double SinglePairError => (SinglePairOhms / Ohms) - 1;

    /// <summary>The exact impedance and both limits.</summary>
    public override string ToString() =>
        $"{UnitText.Of(Ohms, "Ω")} at {UnitText.Of(FrequencyHz, "Hz")}: SSL {UnitText.Of(SlowOhms, "Ω")}, FSL {UnitText.Of(FastOhms, "Ω")}";

    /// <summary>The estimate of a single pair in ohms (Ω) from both limits in ohms (Ω).</summary>
    internal static double SinglePair(double slowOhms, double fastOhms) =>
        slowOhms <= 0 ? fastOhms : slowOhms / Math.Tanh(slowOhms / fastOhms);
}
