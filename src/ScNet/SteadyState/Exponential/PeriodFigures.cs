using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>The figures of a solved period as doubles, and what its details are worked out from.</summary>
/// <param name="Ohms">The output impedance.</param>
/// <param name="Ratios">The other figures.</param>
/// <param name="RelativeError">The estimated error.</param>
/// <param name="Inverse">The inverse of one minus the map over a period.</param>
/// <param name="OpenState">The average state in open circuit per volt of input.</param>
internal readonly record struct PeriodFigures(double Ohms, PortRatios Ratios, double RelativeError, double[] Inverse, double[] OpenState)
{
    public bool IsFinite =>
        double.IsFinite(Ohms) && double.IsFinite(Ratios.Voltage) && double.IsFinite(Ratios.Current) && double.IsFinite(Ratios.InputSiemens);

    public static PeriodFigures Of<T>(PeriodMap<T> map, T period, bool isStiff, double largestSiemens)
        where T : struct, IReal<T>
    {
        TwoPortValues<T> values = TwoPortValues<T>.Of(map, period, isStiff, largestSiemens, out TwoPortErrors errors);
        var inverse = new double[map.KeptCount * map.KeptCount];
        map.CopyInverse(inverse);
        var open = new double[map.StateIntegral.Length / map.InputCount];
        for (int x = 0; x < open.Length; x++)
        {
            T sum = map.StateIntegral[(x * map.InputCount) + NetworkStructure.Input];
            sum += isStiff ? map.StateIntegral[(x * map.InputCount) + NetworkStructure.Load] * values.Ratio : default;
            open[x] = (sum / period).Nearest;
        }

        // a lossless network draws nothing, which rounding may make negative
        double siemens = values.InputSiemens.Nearest;
        siemens = siemens < 0 && -siemens <= errors.InputSiemens ? 0 : siemens;
        return new(values.Ohms.Nearest, new(values.Ratio.Nearest, values.CurrentRatio.Nearest, siemens), values.RelativeError(errors), inverse, open);
    }
}
