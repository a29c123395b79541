using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>V_out = ratio · V_in − ohms · I_out and I_in = currentRatio · I_out + siemens · V_in, averages over a period.</summary>
internal readonly record struct TwoPortValues<T>(T Ratio, T Ohms, T CurrentRatio, T InputSiemens)
    where T : struct, IReal<T>
{
    /// <summary>The two-port of a solved period.</summary>
    /// <param name="map">The period.</param>
    /// <param name="period">Its length.</param>
    /// <param name="isStiff">Whether the second input is the output voltage; else it is the load current.</param>
    public static TwoPortValues<T> Of(PeriodMap<T> map, T period, bool isStiff)
    {
        T frequency = T.Of(1) / period;
        T outByInput = map.Output[NetworkStructure.Input] * frequency, outByLoad = map.Output[NetworkStructure.Load] * frequency;
        T inByInput = map.InputCharge[NetworkStructure.Input] * frequency, inByLoad = map.InputCharge[NetworkStructure.Load] * frequency;
        if (!isStiff)
        {
            return new(outByInput, -outByLoad, inByLoad, inByInput);
        }

        T ohms = T.Of(-1) / outByLoad, ratio = outByInput * ohms;
        return new(ratio, ohms, -(inByLoad * ohms), inByInput + (inByLoad * ratio));
    }

    /// <summary>
    /// The largest estimated relative error of ratio, impedance and current ratio, and that of the input conductance in
    /// proportion to the larger of itself and the conductance that the load sees from the input.
    /// </summary>
    /// <param name="map">The period that was solved.</param>
    /// <param name="period">Its length in seconds.</param>
    /// <param name="isStiff">As in <see cref="Of"/>.</param>
    /// <param name="siemensError">The estimated error of the input conductance in siemens.</param>
    public double RelativeError(PeriodMap<T> map, double period, bool isStiff, out double siemensError)
    {
        (double ratio, double ohms, double currentRatio, double siemens) = (Ratio.Nearest, Ohms.Nearest, CurrentRatio.Nearest, InputSiemens.Nearest);
        double[] output = map.Error.Output, charge = map.Error.InputCharge;
        double outByInput = output[NetworkStructure.Input] / period, outByLoad = output[NetworkStructure.Load] / period;
        double inByInput = charge[NetworkStructure.Input] / period, inByLoad = charge[NetworkStructure.Load] / period;
        double ratioError = outByInput, ohmsError = outByLoad, currentError = inByLoad;
        siemensError = inByInput;
        if (isStiff)
        {
            double size = Math.Abs(ohms);
            ratioError = size * (outByInput + (Math.Abs(ratio) * outByLoad));
            ohmsError = size * size * outByLoad;
            currentError = size * (inByLoad + (Math.Abs(currentRatio) * outByLoad));
            siemensError = inByInput + (Math.Abs(ratio) * inByLoad) + (Math.Abs(currentRatio / ohms) * ratioError);
        }

        double seen = Math.Max(Math.Abs(siemens), Math.Abs(ratio * currentRatio / ohms));
        return Math.Max(Math.Max(Relative(ratioError, ratio), Relative(ohmsError, ohms)), Math.Max(Relative(currentError, currentRatio), Relative(siemensError, seen)));
    }

    private static double Relative(double error, double value) => value == 0 ? error : error / Math.Abs(value);
}
