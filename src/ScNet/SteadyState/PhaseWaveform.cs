namespace ScNet.SteadyState;

/// <summary>One signal over one phase.</summary>
internal abstract class PhaseWaveform
{
    /// <summary>By how much the signal changes over the phase.</summary>
    public abstract double Change { get; }

    /// <summary>The mean over the phase.</summary>
    public abstract double Mean();

    /// <summary>The integral of the square over the phase.</summary>
    public abstract double SquareIntegral();

    /// <summary>The value at a time in seconds from the start of the phase.</summary>
    public abstract double At(double time);

    /// <summary>Least and greatest value over the phase, ends and inner extremes.</summary>
    public abstract (double Least, double Greatest) Extremes();
}
