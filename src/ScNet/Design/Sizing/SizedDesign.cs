using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Devices;
using ScNet.SteadyState;
using ScNet.Stress;

namespace ScNet.Design.Sizing;

/// <summary>
/// A converter with the kinds, stacks and sizes of its elements that lose least over all points in the area, and the frequency of
/// each point.
/// </summary>
/// <remarks>
/// Gears share one chip: one set of sizes serves all modes. Capacitors across the sources alone
/// carry no charge and get the least size, like all that no point uses. Derivation and sources: docs/theory/sizing.md.
/// </remarks>
public sealed class SizedDesign
{
    private readonly SizingTask _task;

    internal SizedDesign(SizingTask task, SizedConverter converter, SizedPoint[] points, IReadOnlyList<UnreachablePoint> unreachable, OptimalityCertificate? certificate)
    {
        _task = task;
        Converter = converter;
        Points = [.. points];
        Unreachable = [.. unreachable];
        Certificate = certificate;
        double weights = points.Sum(p => p.Point.Weight);
        WeightedLossWatts = points.Sum(p => p.Point.Weight * p.TotalLossWatts);
        WeightedOutputWatts = points.Sum(p => p.Point.Weight * p.OutputWatts);
    }

    /// <summary>The converter with its devices: farads, micrometres, square micrometres and number in series of every element.</summary>
    public SizedConverter Converter { get; }

    /// <summary>The points that it serves, in the order asked for.</summary>
    public IReadOnlyList<SizedPoint> Points { get; }

    /// <summary>The points that no sizes within the area serve, and why.</summary>
    public IReadOnlyList<UnreachablePoint> Unreachable { get; }

    /// <summary>How good the sizes are for certain; null once they are rounded.</summary>
    public OptimalityCertificate? Certificate { get; }

    /// <summary>The area that was allowed.</summary>
    public AreaBudget Area => _task.Area;

    /// <summary>The sum of weight times loss over the points, in watts (W).</summary>
    public double WeightedLossWatts { get; }

    /// <summary>The sum of weight times output power, in watts (W).</summary>
    public double WeightedOutputWatts { get; }

    /// <summary>Weighted output per weighted input power.</summary>
    public double Efficiency => WeightedOutputWatts / (WeightedOutputWatts + WeightedLossWatts);

    /// <summary>The share of the area of capacitors and switches that capacitors take.</summary>
    public double CapacitorShare
    {
        get
        {
            double capacitors = Converter.Capacitors.Sum(c => c.AreaSquareMetres);
            return capacitors / (capacitors + Converter.Switches.Sum(s => s.AreaSquareMetres));
        }
    }

    /// <summary>Finds kinds, stacks, sizes and frequencies.</summary>
    /// <param name="analysis">The analysis of the converter, whatever its values.</param>
    /// <param name="process">What it can be made of.</param>
    /// <param name="points">The points that count, each with the mode that serves it; at least one.</param>
    /// <param name="area">The area.</param>
    /// <param name="frequencyHz">Floor and ceiling of the frequency in hertz (Hz): below the floor cycles are left out.</param>
    /// <param name="options">How sizes are looked for; null for the defaults.</param>
    /// <exception cref="ArgumentException">There is no point, a mode does not exist, a value is out of range, or the area is not bounded.</exception>
    /// <exception cref="ScNetException">There are no sizes, the converter has inductors (<see cref="DiagnosticCodes.InductorSizes"/>), or a mode has no result.</exception>
    public static SizedDesign Of(
        ConverterAnalysis analysis, Process process, IReadOnlyList<SizingPoint> points, AreaBudget area, Interval<double> frequencyHz, SizingOptions? options = null) =>
        Try(analysis, process, points, area, frequencyHz, options).Require();

    /// <summary>The same where there may be no sizes. There are none for a converter with inductors, whose duties belong to its sizes: that is a finding.</summary>
    /// <inheritdoc cref="Of" path="/param"/>
    /// <exception cref="ArgumentException">There is no point, a mode does not exist, a value is out of range, or the area is not bounded.</exception>
    /// <exception cref="ScNetException">A mode has no result.</exception>
    public static SizingOutcome Try(
        ConverterAnalysis analysis, Process process, IReadOnlyList<SizingPoint> points, AreaBudget area, Interval<double> frequencyHz, SizingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(process);
        ArgumentNullException.ThrowIfNull(area);
        SizingCheck.Points(points, analysis);
        SizingCheck.Area(area);
        SizingCheck.Frequency(frequencyHz);
        options ??= new();
        if (SizingCheck.Network(analysis.Converter) is { } refusal)
        {
            return new SizingOutcome(analysis.Converter.Name, null, [], [refusal]);
        }

        ElementOptions kinds = ElementOptions.Of(StressOf(analysis, points, options), process, HeldVoltages.Of(analysis.Converter, points.Select(p => (analysis.Modes[p.Mode].Require(), p.InputVolts))));
        if (kinds.Findings.Any(f => f.Severity == DiagnosticSeverity.Error))
        {
            return new SizingOutcome(analysis.Converter.Name, null, [], kinds.Findings);
        }

        SizingTask task = new(analysis, process, points, area, frequencyHz, options, kinds);
        SizingSearch search = new(task);
        SizingSolution? found = search.Run();
        return found is null
            ? new SizingOutcome(analysis.Converter.Name, null, search.Unreachable, [.. kinds.Findings, .. search.Unreachable.Select(Finding)])
            : new SizingOutcome(analysis.Converter.Name, From(task, found, search.Unreachable), search.Unreachable, [.. kinds.Findings, .. search.Unreachable.Select(Finding)]);
    }

    /// <summary>The same with every width and every capacitor's area a whole number of steps, at least one, and still within the area.</summary>
    /// <remarks>
    /// To the nearest step; where that takes more area than allowed, those that gained most by it give a step back. The frequencies follow;
    /// a point that the rounded sizes cannot hold even at the ceiling becomes unreachable.
    /// </remarks>
    /// <param name="grid">The steps.</param>
    public SizedDesign WithGrid(SizeGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return SizeRounding.Of(_task, this, grid);
    }

    /// <summary>The netlist document with these values, which <see cref="Netlists.NetlistReader"/> reads; kind, stack and size of every element stand above it as remarks.</summary>
    public string ToToml() => SizedNetlist.Of(Converter);

    /// <summary>Converter, area, efficiency and certificate.</summary>
    public override string ToString() =>
        $"{Converter}: {UnitText.Percent(Efficiency)} over {UnitText.Count(Points.Count, "point", "points")}{(Certificate is null ? string.Empty : $", {Certificate}")}{(Unreachable.Count == 0 ? string.Empty : $"; {UnitText.Count(Unreachable.Count, "point", "points")} not reached")}";

    /// <summary>What a converter makes of points; those that it cannot hold are left out and named.</summary>
    /// <param name="task">What was asked.</param>
    /// <param name="converter">The converter with its sizes.</param>
    /// <param name="points">The points and, for those whose output may follow, the frequency.</param>
    /// <param name="lost">Receives those that cannot be held.</param>
    internal static SizedPoint[] Serve(SizingTask task, SizedConverter converter, IEnumerable<(SizingPoint Point, double FrequencyHz)> points, List<UnreachablePoint> lost)
    {
        var models = new LossModel?[task.Modes.Length];
        var modes = new RegulatedMode?[task.Modes.Length];
        List<SizedPoint> served = [];
        foreach ((SizingPoint point, double frequencyHz) in points)
        {
            int m = task.ModeOf(point);
            LossModel model = models[m] ??= LossModel.Of(converter, task.Modes[m]);
            if (point.OutputVolts is not { } output)
            {
                LossBudget budget = model.At(new OperatingPoint(point.InputVolts, point.LoadAmperes, frequencyHz));
                served.Add(new SizedPoint(point, frequencyHz, model.Impedance.Ohms(frequencyHz), budget.OutputVolts, [.. Enum.GetValues<LossKind>().Select(budget.WattsOf)]));
                continue;
            }

            RegulatedMode mode = modes[m] ??= RegulatedModes.OfFrequency(model, task.FrequencyHz);
            RegulatedPoint held = mode.Hold(point.InputVolts, Math.Abs(output), point.LoadAmperes);
            if (held.IsHeld)
            {
                served.Add(new SizedPoint(point, held.FrequencyHz, task.NeededOhms(point), output, [.. Enum.GetValues<LossKind>().Select(held.LossOf)]));
            }
            else
            {
                lost.Add(new UnreachablePoint(point, task.NeededOhms(point), model.Impedance.Ohms(task.FrequencyHz.Maximum!.Value), isAlone: false));
            }
        }

        return [.. served];
    }

    private static SizedDesign From(SizingTask task, SizingSolution found, IReadOnlyList<UnreachablePoint> unreachable)
    {
        SizedConverter converter = task.Build(found.Options, found.Values);
        double watts = found.Watts;
        List<UnreachablePoint> lost = [.. unreachable];
        return new SizedDesign(
            task,
            converter,
            Serve(task, converter, found.Points.Zip(found.FrequenciesHz), lost),
            lost,
            new OptimalityCertificate(
                Math.Max(0, 1 - Math.Exp(-found.Gap)), watts * Math.Exp(-found.Gap), task.Modes.All(m => m.ChargeFlow.DeterminedBy == FlowDetermination.Topology), found.Rounds, found.Steps));
    }

    private static Diagnostic Finding(UnreachablePoint point) =>
        new(DiagnosticSeverity.Warning, DiagnosticCodes.PointUnreachable, $"{point}. Allow more area or a higher frequency, or take another mode.");

    private static ConverterStress StressOf(ConverterAnalysis analysis, IReadOnlyList<SizingPoint> points, SizingOptions options)
    {
        if (options.InputVolts.IsDetermined)
        {
            return ConverterStress.Of(analysis, options.InputVolts);
        }

        return ConverterStress.Of(analysis, Hull(points), inputVoltsOfModes: points.GroupBy(p => p.Mode, StringComparer.Ordinal).ToDictionary(g => g.Key, Hull, StringComparer.Ordinal));

        static Interval<double> Hull(IEnumerable<SizingPoint> points) => new(points.Min(p => p.InputVolts), points.Max(p => p.InputVolts));
    }
}
