using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>Spreads of the output impedance as a document for other programs: a row per mode and frequency.</summary>
internal static class ToleranceTable
{
    private static readonly Figure<ToleratedMode>[] s_figures =
    [
        new("hertz", m => m.FrequencyHz),
        new("nominalOhms", m => m.Spread.NominalOhms),
        new("worstCase.foundMinimumOhms", m => m.WorstCase.FoundOhms.Minimum),
        new("worstCase.foundMaximumOhms", m => m.WorstCase.FoundOhms.Maximum),
        new("worstCase.boundMinimumOhms", m => m.WorstCase.BoundOhms.Minimum),
        new("worstCase.boundMaximumOhms", m => m.WorstCase.BoundOhms.Maximum),
        new("spread.sampleCount", m => m.Spread.SamplesOhms.Count),
        new("spread.meanOhms", m => m.Spread.MeanOhms),
        new("spread.standardDeviationOhms", m => m.Spread.StandardDeviationOhms),
        new("spread.quantile05Ohms", m => m.Spread.QuantileOhms(0.05)),
        new("spread.medianOhms", m => m.Spread.QuantileOhms(0.5)),
        new("spread.quantile95Ohms", m => m.Spread.QuantileOhms(0.95)),
    ];

    /// <summary>The table.</summary>
    /// <param name="tolerances">The tolerances of all rows.</param>
    /// <param name="seed">What the samples were drawn from.</param>
    /// <param name="rows">The rows, in their order.</param>
    public static ResultTable Of(ComponentTolerances tolerances, int seed, IEnumerable<ResultRow<ToleratedMode>> rows)
    {
        ArgumentNullException.ThrowIfNull(tolerances);
        ArgumentNullException.ThrowIfNull(rows);
        return ResultTable.Of(
            [
                new("capacitanceTolerance", tolerances.Capacitance),
                new("onResistanceTolerance", tolerances.OnResistance),
                new("esrTolerance", tolerances.Esr),
                new("seed", seed),
            ],
            s_figures,
            rows);
    }
}
