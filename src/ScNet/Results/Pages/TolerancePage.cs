using System.Globalization;
using ScNet.SteadyState;

namespace ScNet.Results.Pages;

/// <summary>How component tolerances spread the output impedance, as a person reads it.</summary>
public static class TolerancePage
{
    private static readonly PageColumn[] s_worstCases =
    [
        Ohms("frequency", "hertz"),
        Ohms("nominal", "nominalOhms"),
        Ohms("least found", "worstCase.foundMinimumOhms"),
        Ohms("least certain", "worstCase.boundMinimumOhms"),
        Ohms("most found", "worstCase.foundMaximumOhms"),
        Ohms("most certain", "worstCase.boundMaximumOhms"),
    ];

    private static readonly PageColumn[] s_spreads =
    [
        Ohms("frequency", "hertz"),
        Ohms("mean", "spread.meanOhms"),
        Ohms("deviation", "spread.standardDeviationOhms", "Standard deviation of the samples"),
        Ohms("5 %", "spread.quantile05Ohms", "What 5 % of the samples do not exceed"),
        Ohms("median", "spread.medianOhms"),
        Ohms("95 %", "spread.quantile95Ohms", "What 95 % of the samples do not exceed"),
    ];

    /// <summary>The columns of its tables.</summary>
    public static IReadOnlyList<PageColumn> Columns { get; } = Array.AsReadOnly<PageColumn>([.. s_worstCases, .. s_spreads]);

    /// <summary>The page of one mode.</summary>
    /// <param name="tolerances">The tolerances.</param>
    /// <param name="rows">The rows of the mode, at least one: a frequency each.</param>
    /// <exception cref="ArgumentException">There is no row, or one of a file that could not be read.</exception>
    public static Page Of(ComponentTolerances tolerances, IReadOnlyList<ResultRow<ToleratedMode>> rows)
    {
        ArgumentNullException.ThrowIfNull(tolerances);
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count == 0 || rows[0].Outcome is not { } outcome)
        {
            throw new ArgumentException("Expected rows of a mode.", nameof(rows));
        }

        Converter converter = outcome.Converter;
        ToleratedMode[] results = [.. rows.Select(r => r.Result).OfType<ToleratedMode>()];
        string file = rows[0].File is { } path ? $" ({path})" : string.Empty;
        string mode = converter.Modes.Count > 1 ? $", mode {outcome.Mode}" : string.Empty;
        string[] findings = [.. rows.SelectMany(r => r.Diagnostics).Select(d => d.ToString()).Distinct()];
        return new Page(
            $"{converter.Name}{file}{mode}: output impedance within tolerances",
            [
                new PageFigures(
                [
                    new("Capacitances", PlusMinus(tolerances.Capacitance)),
                    new("On-resistances", PlusMinus(tolerances.OnResistance)),
                    new("Series resistances", PlusMinus(tolerances.Esr)),
                ]),
                .. results.Length > 0 ? [WorstCases(results), Spreads(results)] : new PageBlock[] { new PageRemarks(["No result"], isCaution: true) },
                .. findings.Length > 0 ? [new PageRemarks(findings, isCaution: true)] : Array.Empty<PageBlock>(),
            ]);
    }

    private static PageTable WorstCases(ToleratedMode[] results) => new(
        "Worst case: found is what some values within the tolerances reach, certain what no values leave",
        s_worstCases,
        results.Select(r => (IEnumerable<PageCell>)
        [
            Cell(r.FrequencyHz, "Hz"),
            Cell(r.Spread.NominalOhms),
            Cell(r.WorstCase.FoundOhms.Minimum),
            Cell(r.WorstCase.BoundOhms.Minimum),
            Cell(r.WorstCase.FoundOhms.Maximum),
            Cell(r.WorstCase.BoundOhms.Maximum),
        ]));

    private static PageTable Spreads(ToleratedMode[] results) => new(
        string.Create(CultureInfo.InvariantCulture, $"Spread of {results[0].Spread.SamplesOhms.Count} samples, every element drawn by itself, uniformly within its tolerance"),
        s_spreads,
        results.Select(r => (IEnumerable<PageCell>)
        [
            Cell(r.FrequencyHz, "Hz"),
            Cell(r.Spread.MeanOhms),
            Cell(r.Spread.StandardDeviationOhms),
            Cell(r.Spread.QuantileOhms(0.05)),
            Cell(r.Spread.QuantileOhms(0.5)),
            Cell(r.Spread.QuantileOhms(0.95)),
        ]));

    private static PageColumn Ohms(string heading, string key, string? meaning = null) => new(heading, IsFigure: true, key, meaning);

    private static PageCell Cell(double? value, string unit = "Ω") => new(EngineeringNumber.Of(value, unit), value);

    private static string PlusMinus(double fraction) => fraction == 0 ? "exact" : $"±{UnitText.Percent(fraction)}";
}
