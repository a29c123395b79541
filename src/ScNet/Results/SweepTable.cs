using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>The output impedance over frequency, beside both limits and the published estimates, as a document for other programs.</summary>
internal static class SweepTable
{
    private static readonly Figure<ImpedancePoint>[] s_figures =
    [
        new("hertz", p => p.FrequencyHz),
        new("ohms", p => p.Ohms),
        new("slowSwitchingLimit.ohms", p => p.SlowOhms),
        new("fastSwitchingLimit.ohms", p => p.FastOhms),
        new("rootSumSquareOhms", p => p.RootSumSquareOhms),
        new("norm254Ohms", p => p.Norm254Ohms),
        new("singlePairOhms", p => p.SinglePairOhms),
        new("ratio", p => p.TwoPort.Ratio),
        new("currentRatio", p => p.TwoPort.CurrentRatio),
        new("inputSiemens", p => p.TwoPort.InputSiemens),
    ];

    /// <summary>The table.</summary>
    /// <param name="rows">One row per mode and frequency.</param>
    public static ResultTable Of(IEnumerable<ResultRow<ImpedancePoint>> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return ResultTable.Of([], s_figures, rows);
    }
}
