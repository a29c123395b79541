using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// V_i = ratio_i · V_in − Σ ohms_ik · I_k and I_in = Σ currentRatio_k · I_k + siemens · V_in, averages over a period, the main
/// output first; ohms by rows.
/// </summary>
internal sealed record MultiPortValues(double[] Ratios, double[] Ohms, double[] CurrentRatios, double InputSiemens, double RelativeError)
{
    public bool IsFinite => Ratios.Concat(Ohms).Concat(CurrentRatios).Append(InputSiemens).All(double.IsFinite);

    /// <summary>The figures of a solved period.</summary>
    /// <param name="map">The period.</param>
    /// <param name="period">Its length.</param>
    /// <param name="isStiff">Whether the second input is the voltage of the main output; else it is its current.</param>
    public static MultiPortValues Of<T>(PeriodMap<T> map, T period, bool isStiff)
        where T : struct, IReal<T>
    {
        // rows: input current, main output, further ones; columns: input voltage, main output, further currents
        int size = map.InputCount, outputs = size - 1;
        T frequency = T.Of(1) / period;
        T[][] rows = [map.InputCharge, map.Output, .. map.FurtherOutputs];
        double[][] sizes = [map.Error.InputCharge, map.Error.Output, .. map.Error.FurtherOutputs];
        T[][] averages = Array.ConvertAll(rows, row => Array.ConvertAll(row, v => v * frequency));
        double[][] errors = Array.ConvertAll(sizes, row => Array.ConvertAll(row, v => v * frequency.Nearest));
        if (isStiff)
        {
            SolveForVoltage(averages, errors, NetworkStructure.Load);
        }

        double Value(int row, int column) => averages[row][column].Nearest;
        double[] ratios = [.. Enumerable.Range(1, outputs).Select(i => Value(i, 0))];
        double[] currents = [.. Enumerable.Range(1, outputs).Select(k => Value(0, k))];
        double[] ohms = [.. Enumerable.Range(1, outputs).SelectMany(i => Enumerable.Range(1, outputs).Select(k => -Value(i, k)))];
        double largest = Enumerable.Range(0, outputs).Max(i => Math.Abs(ohms[(i * outputs) + i])), ratio = Math.Max(ratios.Max(Math.Abs), currents.Max(Math.Abs));
        double siemens = Math.Max(Math.Abs(Value(0, 0)), ratio * ratio / largest), relative = Relative(errors[0][0], siemens);
        for (int i = 0; i < outputs; i++)
        {
            relative = Math.Max(relative, Math.Max(Relative(errors[i + 1][0], ratio), Relative(errors[0][i + 1], ratio)));
            for (int k = 0; k < outputs; k++)
            {
                double scale = Math.Sqrt(Math.Abs(ohms[(i * outputs) + i] * ohms[(k * outputs) + k]));
                relative = Math.Max(relative, Relative(errors[i + 1][k + 1], scale > 0 ? scale : largest));
            }
        }

        // a lossless network draws nothing, which rounding may make negative
        double drawn = Value(0, 0) is var own && own < 0 && -own <= errors[0][0] ? 0 : Value(0, 0);
        return new(ratios, ohms, currents, drawn, relative);
    }

    // A row that gives a current for a voltage is solved for the voltage and put into the others.
    private static void SolveForVoltage<T>(T[][] averages, double[][] errors, int pivot)
        where T : struct, IReal<T>
    {
        int size = averages.Length;
        T inverse = T.Of(1) / averages[pivot][pivot];
        double scale = Math.Abs(inverse.Nearest), relative = scale * errors[pivot][pivot];
        for (int k = 0; k < size; k++)
        {
            T share = averages[pivot][k] * inverse;
            (averages[pivot][k], errors[pivot][k]) = k == pivot
                ? (inverse, scale * relative)
                : (-share, (scale * errors[pivot][k]) + (Math.Abs(share.Nearest) * relative));
        }

        for (int i = 0; i < size; i++)
        {
            T factor = averages[i][pivot];
            double doubt = errors[i][pivot];
            for (int k = 0; k < size && i != pivot; k++)
            {
                T through = factor * averages[pivot][k];
                double moved = (Math.Abs(factor.Nearest) * errors[pivot][k]) + (doubt * Math.Abs(averages[pivot][k].Nearest));
                (averages[i][k], errors[i][k]) = k == pivot ? (through, moved) : (averages[i][k] + through, errors[i][k] + moved);
            }
        }
    }

    private static double Relative(double error, double scale) => error == 0 ? 0 : scale > 0 && double.IsFinite(scale) ? error / scale : 1;
}
