using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>V_out = ratio · V_in − ohms · I_out and I_in = currentRatio · I_out + siemens · V_in, averages over a period.</summary>
internal readonly record struct TwoPortValues<T>(T Ratio, T Ohms, T CurrentRatio, T InputSiemens)
    where T : struct, IReal<T>
{
    // what eliminating nodes in doubled precision leaves of a ratio that cancels
    private const double Dust = 1e-26;

    /// <summary>The two-port of a solved period.</summary>
    /// <param name="map">The period.</param>
    /// <param name="period">Its length.</param>
    /// <param name="isStiff">Whether the second input is the output voltage; else it is the load current.</param>
    /// <param name="largestSiemens">The largest conductance in the network, against which rounding is told from a value.</param>
    /// <param name="errors">How far rounding can have moved the figures; one that it can have made from zero is zero.</param>
    public static TwoPortValues<T> Of(PeriodMap<T> map, T period, bool isStiff, double largestSiemens, out TwoPortErrors errors)
    {
        T frequency = T.Of(1) / period;
        T outByInput = map.Output[NetworkStructure.Input] * frequency, outByLoad = map.Output[NetworkStructure.Load] * frequency;
        T inByInput = map.InputCharge[NetworkStructure.Input] * frequency, inByLoad = map.InputCharge[NetworkStructure.Load] * frequency;
        errors = TwoPortErrors.Of(map.Error, frequency.Nearest);
        if (!isStiff)
        {
            return new(Known(outByInput, errors.Ratio + Dust), Known(-outByLoad, errors.Ohms), Known(inByLoad, errors.CurrentRatio + Dust), Known(inByInput, errors.InputSiemens + (Dust * largestSiemens)));
        }

        T ohms = T.Of(-1) / outByLoad;
        errors = errors.OfStiff((outByInput * ohms).Nearest, ohms.Nearest, (inByLoad * ohms).Nearest);
        T ratio = Known(outByInput * ohms, errors.Ratio + Dust), currentRatio = Known(-(inByLoad * ohms), errors.CurrentRatio + Dust);
        return new(ratio, ohms, currentRatio, Known(inByInput - (currentRatio * outByInput), errors.InputSiemens + (Dust * largestSiemens)));
    }

    /// <summary>
    /// The largest relative error of ratio, impedance and current ratio, and that of the input conductance in proportion
    /// to the larger of itself and the conductance that the load shows at the input.
    /// </summary>
    /// <param name="errors">As <see cref="Of"/> gave them.</param>
    public double RelativeError(TwoPortErrors errors)
    {
        double seen = Math.Max(Math.Abs(InputSiemens.Nearest), Math.Abs((Ratio * CurrentRatio).Nearest / Ohms.Nearest));
        return Math.Max(
            Math.Max(Relative(errors.Ratio, Ratio.Nearest), Relative(errors.Ohms, Ohms.Nearest)),
            Math.Max(Relative(errors.CurrentRatio, CurrentRatio.Nearest), Relative(errors.InputSiemens, double.IsFinite(seen) ? seen : 0)));
    }

    // in doubled precision what is not known to differ from zero is taken as zero, but for a derivative that may remain
    private static T Known(T value, double error) => typeof(T) == typeof(DoubleDouble) && Math.Abs(value.Nearest) <= error ? default : value;

    private static double Relative(double error, double value) => value != 0 ? error / Math.Abs(value) : IsFine || error == 0 ? 0 : 1;

    private static bool IsFine => T.Rounding < PlainReal.Rounding;
}
