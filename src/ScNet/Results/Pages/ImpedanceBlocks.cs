using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Results.Pages;

/// <summary>The output impedance of a mode at some frequencies: exact, limits, and estimates with their errors.</summary>
internal static class ImpedanceBlocks
{
    /// <summary>The columns of the impedance, from the frequency on.</summary>
    public static readonly PageColumn[] Columns =
    [
        new("frequency", true, "hertz"),
        new("exact", true, "ohms", Group: "exact"),
        new("SSL", true, "slowSwitchingLimit.ohms", Group: "exact"),
        new("FSL", true, "fastSwitchingLimit.ohms", Group: "exact"),
        new("RSS", true, "rootSumSquareOhms", "root-sum-square √(SSL² + FSL²)", "rss"),
        new("RSS error", true, Meaning: "of the estimate before it against the exact value", Group: "rss"),
        new("2.54-norm", true, "norm254Ohms", "(SSL^2.54 + FSL^2.54)^(1/2.54)", "norm"),
        new("norm error", true, Meaning: "of the estimate before it against the exact value", Group: "norm"),
        new("pair", true, "singlePairOhms", "of a single pair of exponentials, SSL·coth(SSL/FSL)", "pair"),
        new("pair error", true, Meaning: "of the estimate before it against the exact value", Group: "pair"),
    ];

    /// <summary>Adds the impedance, or why it is refused; whether there is nothing to refuse.</summary>
    public static bool TryAdd(List<PageBlock> blocks, ModeOutcome outcome, IReadOnlyList<double> frequenciesHz)
    {
        if (frequenciesHz.Count == 0)
        {
            return true;
        }

        SteadyStateModel? model = null;
        ResultRow<ImpedancePoint[]> row = ResultRow.Find(null, outcome, a => frequenciesHz.Select((model = SteadyStateModel.Of(a)).At).ToArray());
        if (row.Result is not { } points)
        {
            blocks.Add(new PageFigures([new("Output impedance", "no result")]));
            blocks.AddRange(Findings.Of(row.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)));
            return false;
        }

        // the published estimates are those of capacitors charged by impulses
        Converter converter = outcome.Converter;
        if (converter.Inductors.Count == 0)
        {
            double corner = model!.Impedance.CornerFrequencyHz;
            blocks.Add(new PageTable("Output impedance: exact, both limits, and estimates from the limits", Columns, points.Select(Row), hasLegend: true));
            blocks.Add(new PageFigures([new(
                "Corner frequency", corner > 0 && double.IsFinite(corner) ? $"{EngineeringNumber.Of(corner, "Hz")}, where both limits are equal" : "none: one of the limits is zero")]));
        }

        if (converter.Inductors.Count > 0 || converter.Parasitics.Count > 0 || converter.Capacitors.Any(c => c.Plates.BottomFarads > 0 || c.Plates.TopFarads > 0))
        {
            blocks.Add(TwoPort(converter, points));
        }

        if (converter.FurtherOutputs.Count > 0)
        {
            blocks.AddRange(OutputBlocks.Of(model!.MultiPort, frequenciesHz));
        }

        return true;
    }

    /// <summary>The cells of <see cref="Columns"/>.</summary>
    public static IEnumerable<PageCell> Row(ImpedancePoint point) =>
    [
        Cells.Of(point.FrequencyHz, "Hz"),
        Cells.Of(point.Ohms, "Ω"),
        Cells.Of(point.SlowOhms, "Ω"),
        Cells.Of(point.FastOhms, "Ω"),
        Cells.Of(point.RootSumSquareOhms, "Ω"),
        Cells.SignedPercent(point.RootSumSquareError),
        Cells.Of(point.Norm254Ohms, "Ω"),
        Cells.SignedPercent(point.Norm254Error),
        Cells.Of(point.SinglePairOhms, "Ω"),
        Cells.SignedPercent(point.SinglePairError),
    ];

    private static PageTable TwoPort(Converter converter, ImpedancePoint[] points)
    {
        bool hasInductors = converter.Inductors.Count > 0;
        return new PageTable(
            "Exact averages: output = ratio · input - impedance · load current, input current = current ratio · load current + conductance · input",
            [
                new("frequency", true, "hertz"), new("ratio", true, "ratio"), new("impedance", true, "ohms"), new("current ratio", true, "currentRatio"), new("conductance", true, "inputSiemens"),
                .. hasInductors
                    ?
                    [
                        new("left per period", true, "decayPerPeriod", "what a period leaves of the disturbance that lasts longest", "decay"),
                        new("time constant", true, Meaning: "after which a disturbance has fallen to 1/e", Group: "decay"),
                        .. converter.Capacitors.Select(c => new PageColumn(c.Name, true, "capacitorVoltages", "average voltage of the capacitor per volt of input without load", "capacitors")),
                    ]
                    : Array.Empty<PageColumn>(),
            ],
            points.Select(p => p.TwoPort).Select(p => (IEnumerable<PageCell>)
            [
                Cells.Of(p.FrequencyHz, "Hz"),
                Cells.Plain(p.Ratio),
                Cells.Of(p.Ohms, "Ω"),
                Cells.Plain(p.CurrentRatio),
                Cells.Of(p.InputSiemens, "S"),
                .. hasInductors ? [Cells.Plain(p.DecayPerPeriod), Cells.Of(p.TimeConstantSeconds, "s"), .. p.CapacitorVoltages.Select(Cells.Plain)] : Array.Empty<PageCell>(),
            ]),
            hasLegend: true);
    }
}
