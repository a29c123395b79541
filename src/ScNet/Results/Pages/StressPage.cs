using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Results.Pages;

/// <summary>What every switch and capacitor must withstand, as a person reads it.</summary>
public static class StressPage
{
    private const int MostChanges = 20;

    /// <summary>The columns of its tables of elements.</summary>
    public static IReadOnlyList<PageColumn> Columns { get; } = Array.AsReadOnly<PageColumn>([.. Switches(string.Empty, [], namesMode: false).Columns, .. Capacitors([], namesMode: true).Columns]);

    /// <summary>The page of one converter without ratings.</summary>
    /// <param name="stress">Its stress.</param>
    public static Page Of(ConverterStress stress) => Of(RatedStress.Of(null, stress));

    /// <summary>The page of one converter with ratings.</summary>
    /// <param name="ratings">Its ratings.</param>
    public static Page Of(ConverterRatings ratings) => Of(RatedStress.Of(null, ratings));

    /// <summary>The page of one converter: over all modes and at the changes between them, or of one mode phase by phase.</summary>
    /// <param name="result">The stress, with or without ratings.</param>
    /// <exception cref="ArgumentException">There is no stress, as the file could not be read.</exception>
    public static Page Of(RatedStress result)
    {
        ArgumentNullException.ThrowIfNull(result);
        ConverterStress stress = result.Stress ?? throw new ArgumentException("Expected the stress of a converter that was read.", nameof(result));
        Converter converter = stress.Analysis.Converter;
        ModeStress? only = result.Modes.Count() == 1 ? result.Modes.First() : null;
        string file = result.File is null ? string.Empty : $" ({result.File})";
        string mode = only is not null && converter.Modes.Count > 1 ? $", mode {only.Mode}" : string.Empty;
        Interval<double> input = only?.InputVolts ?? (stress.Modes.Count > 0 ? stress.Modes[0].InputVolts : default);
        return new Page(
            $"{converter.Name}{file}{mode}: stress at {StressWords.Volts(input)} of input",
            [
                new PageRemarks(["Voltages of the ideal converter: without load, ripple, spikes and the moments between two phases"]),
                .. only is null ? Overall(stress) : OfMode(only),
                .. only is null && stress.Changes.Count > 0 ? Changes(stress) : [],
                .. Cautions(stress, result),
                .. result.Ratings is { } ratings ? RatingBlocks.Of(ratings) : [],
            ]);
    }

    private static IEnumerable<PageBlock> Overall(ConverterStress stress)
    {
        bool hasModes = stress.Analysis.Converter.Modes.Count > 1;
        if (stress.Switches.Count > 0)
        {
            yield return Switches(
                $"Switches: the largest voltages while open, first minus second node{(hasModes ? ", over all modes" : string.Empty)}", stress.Switches, hasModes);
        }

        if (stress.Capacitors.Count > 0)
        {
            yield return Capacitors(stress.Capacitors, hasModes);
        }
    }

    private static IEnumerable<PageBlock> OfMode(ModeStress mode)
    {
        if (mode.Switches.Count > 0)
        {
            yield return Switches("Switches: the largest voltages while open, first minus second node", mode.Switches, namesMode: false);
            yield return new PageTable(
                "The same phase by phase, in V per V of input; 0 while closed",
                [new PageColumn("switch", IsFigure: false, "element"), .. mode.Analysis.Converter.Phases.Select(p => new PageColumn($"phase {p}", IsFigure: true, "phases"))],
                mode.Switches.Select(s => (IEnumerable<PageCell>)[s.Switch.Name, .. s.Phases.Select(Span)]));
        }

        if (mode.Capacitors.Count > 0)
        {
            yield return Capacitors(mode.Capacitors, namesMode: false);
        }
    }

    private static PageCell Span(VoltageSpan span) =>
        new(span.ToString(), span.PerVoltOfInput is { Minimum: { } low, Maximum: { } high } ? Math.Max(Math.Abs(low.ToDouble()), Math.Abs(high.ToDouble())) : null);

    private static PageTable Switches(string caption, IEnumerable<SwitchStress> switches, bool namesMode) => new(
        caption,
        [
            new("switch", IsFigure: false, "element"),
            new("positive", IsFigure: true, "positive.volts", "The largest positive voltage"),
            new("in", IsFigure: false, "positive.phase", "Where it occurs"),
            new("negative", IsFigure: true, "negative.volts", "The largest negative voltage"),
            new("in", IsFigure: false, "negative.phase", "Where it occurs"),
            new("both ways", IsFigure: false, "blocksBothWays", "Whether it must block both ways, which a device with its body tied to one side does not"),
        ],
        switches.Select(s => (IEnumerable<PageCell>)
        [
            s.Switch.Name,
            StressWords.Extreme(s.PeakPositive, s.IsDetermined), StressWords.Place(s.PeakPositive, namesMode),
            StressWords.Extreme(s.PeakNegative, s.IsDetermined), StressWords.Place(s.PeakNegative, namesMode),
            s.BlocksBothWays ? "yes" : s.IsDetermined ? "no" : "?",
        ]));

    private static PageTable Capacitors(IEnumerable<CapacitorStress> capacitors, bool namesMode) => new(
        $"Capacitors: the largest voltage held, positive minus bottom plate{(namesMode ? ", over all modes" : string.Empty)}",
        [
            new("capacitor", IsFigure: false, "element"),
            new("voltage", IsFigure: true, "positive.volts"),
            new("per V of input", IsFigure: true, "positive.perVoltOfInput"),
            .. namesMode ? [new PageColumn("in", IsFigure: false, "positive.mode")] : Array.Empty<PageColumn>(),
        ],
        capacitors.Select(c => (IEnumerable<PageCell>)
        [
            c.Capacitor.Name,
            StressWords.Extreme(c.Peak, c.IsDetermined),
            new(c.Peak?.PerVoltOfInput.ToString() ?? "?", c.Peak?.PerVoltOfInput.ToDouble()),
            .. namesMode ? [StressWords.Place(c.Peak, namesMode)] : Array.Empty<PageCell>(),
        ]));

    private static IEnumerable<PageBlock> Changes(ConverterStress stress)
    {
        if (stress.Switches.Count > 0)
        {
            yield return Switches("Switches at the instant of a change of mode", stress.SwitchesAtChanges, namesMode: true);
        }

        ModeChange[] worst = [.. stress.Changes.OrderByDescending(c => Math.Max(c.PeakStressVolts ?? double.PositiveInfinity, c.PeakSurgeVolts ?? double.PositiveInfinity)).Take(MostChanges)];
        yield return new PageTable(
            "Changes of mode: the most that an open switch blocks, and that a closed one takes of the surge",
            [
                new("from", IsFigure: false, "from"),
                new("to", IsFigure: false, "mode"),
                new("open", IsFigure: true, "blockingVolts"),
                new("closed", IsFigure: true, "surgeVolts"),
                new("largest surge", IsFigure: false, "surges", "The loop whose capacitors do not agree, and the switches that take the difference"),
            ],
            worst.Select(c => (IEnumerable<PageCell>)
            [
                c.From.Name, c.To.Name,
                new(EngineeringNumber.Of(c.PeakStressVolts, "V"), c.PeakStressVolts),
                new(EngineeringNumber.Of(c.PeakSurgeVolts, "V"), c.PeakSurgeVolts),
                c.Surges.MaxBy(s => s.Volts) is { } surge ? StressWords.Surge(surge) : "none",
            ]));
        if (stress.Changes.Count > worst.Length)
        {
            yield return new PageRemarks([$"and {UnitText.Count(stress.Changes.Count - worst.Length, "change", "changes")} with less"]);
        }

        if (stress.Modes.Count is > 2 and <= ModeOrder.MaximumModes)
        {
            ModeOrder order = stress.FindOrder(ModeOrderCriterion.Surge);
            yield return new PageRemarks([$"The order through all modes with the least surge: {string.Join(", ", order.Modes)}; at most {EngineeringNumber.Of(order.PeakVolts, "V")}"]);
        }
    }

    private static IEnumerable<PageBlock> Cautions(ConverterStress stress, RatedStress result)
    {
        IEnumerable<string> open = result.Modes.SelectMany(m => m.Switches.Where(s => !s.IsDetermined).Select(s => $"{s.Switch.Name}: nothing bounds its voltage in {string.Join("; ", s.Undetermined)}")
            .Concat(m.Capacitors.Where(c => !c.IsDetermined).Select(c => $"{c.Capacitor.Name}: nothing bounds its voltage in {string.Join("; ", c.Undetermined)}")));
        string[] lines =
        [
            .. StressWords.Legend(result),
            .. open.Distinct(),
            .. stress.ModesWithoutResult.Where(m => result.Only is null || m == result.Only).Select(m => $"Mode {m} has no result, and nothing is said of it"),
            .. result.Diagnostics.Select(d => d.ToString()),
        ];
        if (lines.Length > 0)
        {
            yield return new PageRemarks(lines, isCaution: true);
        }
    }
}
