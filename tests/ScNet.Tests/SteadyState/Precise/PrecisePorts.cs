using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>V_out = Ratio · V_in - Ohms · I_out, I_in = CurrentRatio · I_out + Siemens · V_in, in all places.</summary>
internal readonly record struct PrecisePorts(BigReal Ratio, BigReal Ohms, BigReal CurrentRatio, BigReal Siemens)
{
    // rounding of 640 places
    private const double Nothing = 1e-150;

    /// <summary>The figures in doubles.</summary>
    public PortOracle.Ports Ports => new(Nearest(Ratio), Nearest(Ohms), Nearest(CurrentRatio), Nearest(Siemens));

    public static PrecisePorts Of(PrecisePeriod period)
    {
        BigMatrix shown = period.ByCurrents();
        return new(shown[1, 0], -shown[1, 1], shown[0, 1], shown[0, 0]);
    }

    /// <summary>The nearest double, zero for what is nothing but rounding.</summary>
    public static double Nearest(BigReal value) => BigReal.Abs(value) > Nothing ? (double)value : 0;

    /// <summary>The figures in the order of their names.</summary>
    public BigReal[] ToArray() => [Ratio, Ohms, CurrentRatio, Siemens];
}
