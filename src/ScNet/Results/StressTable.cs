using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Results;

/// <summary>What elements must withstand as a document for other programs: a row per element over all modes, at all changes and in each mode, and one per change.</summary>
internal static class StressTable
{
    /// <summary>The table.</summary>
    /// <param name="inputVolts">The input voltages in volts (V) of all rows.</param>
    /// <param name="results">The converters.</param>
    /// <param name="hasRatings">Whether the rows are compared with devices.</param>
    public static ResultTable Of(Interval<double> inputVolts, IEnumerable<RatedStress> results, bool hasRatings)
    {
        results = Guard.Copy(results, nameof(results));
        Figure<Row>[] figures =
        [
            new("file", r => r.Result.File),
            new("converter", r => r.Result.Stress?.Analysis.Converter.Name),
            new("mode", r => r.Mode),
            new("status", r => r.Result.Stress is null ? "error" : "ok"),
            new("diagnostics", r => r.Result.Diagnostics, HasColumn: false),
            new("scope", r => r.Scope),
            new("from", r => r.From),
            new("kind", r => r.Kind),
            new("element", r => r.Element),
            .. Extreme("positive", r => r.Positive),
            .. Extreme("negative", r => r.Negative),
            new("blocksBothWays", r => r.Switch?.BlocksBothWays),
            new("isFloating", r => r.Switch?.IsFloating),
            new("isDetermined", r => r.IsDetermined),
            new("undetermined", r => r.Undetermined, HasColumn: false),
            new("phases", r => r.Switch?.Phases is { PhaseCount: > 0 } phases ? phases.Select(p => p.IsDetermined ? p.ToString() : null) : null, HasColumn: false),
            new("blockingVolts", r => r.Change?.PeakStressVolts),
            new("surgeVolts", r => r.Change?.PeakSurgeVolts),
            new("surges", r => r.Change?.Surges.Select(s => s.ToString()), HasColumn: false),
            .. hasRatings ? s_ratings : [],
        ];
        return ResultTable.OfAny(
            [new("minimumInputVolts", inputVolts.Minimum), new("maximumInputVolts", inputVolts.Maximum)], figures, results.SelectMany(RowsOf));
    }

    private static readonly Figure<Row>[] s_ratings =
    [
        new("rating.device", r => r.Verdict is null ? null : r.Device),
        new("rating.ratedVolts", r => r.Verdict?.RatedVolts),
        new("rating.volts", r => r.Verdict?.Volts),
        new("rating.outcome", r => r.Verdict?.Outcome switch
        {
            RatingOutcome.WithinRating => "within-rating",
            RatingOutcome.NeedsStack => "needs-stack",
            RatingOutcome.NotAllowed => "not-allowed",
            RatingOutcome.Undetermined => "undetermined",
            _ => null,
        }),
        new("rating.inSeries", r => r.Verdict?.StackCount),
        new("rating.isLowerBound", r => r.Verdict?.IsLowerBound),
    ];

    private static Figure<Row>[] Extreme(string key, Func<Row, StressExtreme?> extreme) =>
    [
        new($"{key}.volts", r => extreme(r)?.Volts),
        new($"{key}.perVoltOfInput", r => extreme(r)?.PerVoltOfInput),
        new($"{key}.mode", r => extreme(r)?.Mode.Name),
        new($"{key}.from", r => extreme(r)?.From?.Name),
        new($"{key}.phase", r => extreme(r)?.Phase),
        new($"{key}.basis", r => extreme(r)?.Basis.ToString().ToLowerInvariant()),
    ];

    private static IEnumerable<Row> RowsOf(RatedStress result)
    {
        if (result.Stress is not { } stress)
        {
            return [new Row(result, "file")];
        }

        ConverterRatings? ratings = result.Ratings;
        bool isWhole = result.Only is null;
        return
        [
            .. isWhole ? Elements(result, "modes", null, stress.Switches, stress.Capacitors, s => ratings?.Switches[s].Overall, c => ratings?.Capacitors[c].Overall) : [],
            .. isWhole && stress.Changes.Count > 0
                ? Elements(result, "changes", null, stress.SwitchesAtChanges, [], s => ratings?.Switches[s].AtChanges, _ => null)
                : [],
            .. result.Modes.SelectMany(m => Elements(
                result, "mode", m.Mode.Name, m.Switches, m.Capacitors, s => ratings?.Switches[s].Modes[Place(m)], c => ratings?.Capacitors[c].Modes[Place(m)])),
            .. isWhole ? stress.Changes.Select(c => new Row(result, "change") { Mode = c.To.Name, From = c.From.Name, Change = c }) : [],
        ];

        int Place(ModeStress mode) => stress.Modes.TakeWhile(m => m != mode).Count();
    }

    private static IEnumerable<Row> Elements(
        RatedStress result, string scope, string? mode, IReadOnlyList<SwitchStress> switches, IReadOnlyList<CapacitorStress> capacitors,
        Func<int, RatingVerdict?> ofSwitch, Func<int, RatingVerdict?> ofCapacitor) =>
    [
        .. switches.Select((s, i) => new Row(result, scope)
        {
            Mode = mode, Kind = "switch", Element = s.Switch.Name, Switch = s, Positive = s.PeakPositive, Negative = s.PeakNegative,
            IsDetermined = s.IsDetermined, Undetermined = s.Undetermined, Verdict = ofSwitch(i), Device = result.Ratings?.Switches[i].Device.Name,
        }),
        .. capacitors.Select((c, i) => new Row(result, scope)
        {
            Mode = mode, Kind = "capacitor", Element = c.Capacitor.Name,
            Positive = c.Peak is { Volts: >= 0 } ? c.Peak : null, Negative = c.Peak is { Volts: < 0 } ? c.Peak : null,
            IsDetermined = c.IsDetermined, Undetermined = c.Undetermined, Verdict = ofCapacitor(i), Device = result.Ratings?.Capacitors[i].Device.Name,
        }),
    ];

    private sealed record Row(RatedStress Result, string Scope)
    {
        public string? Mode { get; init; }

        public string? From { get; init; }

        public string? Kind { get; init; }

        public string? Element { get; init; }

        public SwitchStress? Switch { get; init; }

        public StressExtreme? Positive { get; init; }

        public StressExtreme? Negative { get; init; }

        public bool? IsDetermined { get; init; }

        public IReadOnlyList<string>? Undetermined { get; init; }

        public ModeChange? Change { get; init; }

        public RatingVerdict? Verdict { get; init; }

        public string? Device { get; init; }
    }
}
