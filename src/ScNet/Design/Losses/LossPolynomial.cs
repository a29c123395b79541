namespace ScNet.Design.Losses;

/// <summary>
/// A loss in watts as it depends on input voltage V, load current I and frequency f: the sum of a coefficient each for I², I·V/f,
/// V²/f², f, f·V, f·V², V, V² and 1. Every loss but charge sharing, body diodes and cores is one.
/// </summary>
/// <remarks>Which loss has which: docs/theory/losses.md.</remarks>
internal readonly record struct LossPolynomial
{
    /// <summary>Of I², in ohms.</summary>
    public double Current2 { get; init; }

    /// <summary>Of I·V/f.</summary>
    public double CurrentVoltsPerHertz { get; init; }

    /// <summary>Of V²/f².</summary>
    public double Volts2PerHertz2 { get; init; }

    /// <summary>Of f, in joules.</summary>
    public double Hertz { get; init; }

    /// <summary>Of f·V, in coulombs.</summary>
    public double HertzVolts { get; init; }

    /// <summary>Of f·V², in farads.</summary>
    public double HertzVolts2 { get; init; }

    /// <summary>Of V, in amperes.</summary>
    public double Volts { get; init; }

    /// <summary>Of V², in siemens.</summary>
    public double Volts2 { get; init; }

    /// <summary>Always, in watts.</summary>
    public double Constant { get; init; }

    /// <summary>Whether it is zero everywhere.</summary>
    public bool IsZero => this == default;

    public static LossPolynomial operator +(LossPolynomial a, LossPolynomial b) => new()
    {
        Current2 = a.Current2 + b.Current2,
        CurrentVoltsPerHertz = a.CurrentVoltsPerHertz + b.CurrentVoltsPerHertz,
        Volts2PerHertz2 = a.Volts2PerHertz2 + b.Volts2PerHertz2,
        Hertz = a.Hertz + b.Hertz,
        HertzVolts = a.HertzVolts + b.HertzVolts,
        HertzVolts2 = a.HertzVolts2 + b.HertzVolts2,
        Volts = a.Volts + b.Volts,
        Volts2 = a.Volts2 + b.Volts2,
        Constant = a.Constant + b.Constant,
    };

    /// <summary>The same, so many times.</summary>
    public LossPolynomial Times(double factor) => new()
    {
        Current2 = Current2 * factor,
        CurrentVoltsPerHertz = CurrentVoltsPerHertz * factor,
        Volts2PerHertz2 = Volts2PerHertz2 * factor,
        Hertz = Hertz * factor,
        HertzVolts = HertzVolts * factor,
        HertzVolts2 = HertzVolts2 * factor,
        Volts = Volts * factor,
        Volts2 = Volts2 * factor,
        Constant = Constant * factor,
    };

    /// <summary>The loss in watts.</summary>
    /// <param name="volts">Input voltage in volts.</param>
    /// <param name="amperes">Load current in amperes.</param>
    /// <param name="hertz">Frequency in hertz.</param>
    public double At(double volts, double amperes, double hertz)
    {
        double voltsPerHertz = volts / hertz;
        return (amperes * ((Current2 * amperes) + (CurrentVoltsPerHertz * voltsPerHertz)))
            + (Volts2PerHertz2 * voltsPerHertz * voltsPerHertz)
            + (hertz * (Hertz + (volts * (HertzVolts + (HertzVolts2 * volts)))))
            + (volts * (Volts + (Volts2 * volts)))
            + Constant;
    }
}
