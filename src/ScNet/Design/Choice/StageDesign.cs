using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Numerics;

namespace ScNet.Design.Choice;

/// <summary>A stage with inductors with the kinds, stacks and sizes that lose least over points, and the frequency of each.</summary>
internal sealed class StageDesign
{
    private readonly Candidate _candidate;
    private readonly Process _process;
    private readonly ElementOptions _options;
    private readonly int[] _chosen;
    private readonly GeometricOptimum _optimum;
    private readonly StageProgram _program;

    private StageDesign(
        Candidate candidate, Process process, ElementOptions options, IReadOnlyList<InductorDevice> inductors,
        IReadOnlyList<StagePoint> points, StageProgram program, int[] chosen, GeometricOptimum optimum)
    {
        (_candidate, _process, _options, _chosen, _optimum, _program) = (candidate, process, options, chosen, optimum, program);
        (Inductors, Points) = (inductors, points);
    }

    /// <summary>The inductors, all of one kind.</summary>
    public IReadOnlyList<InductorDevice> Inductors { get; }

    /// <summary>The points.</summary>
    public IReadOnlyList<StagePoint> Points { get; }

    /// <summary>The weighted loss in watts as the program sees it.</summary>
    public double Watts => Math.Exp(_optimum.LogValue);

    /// <summary>By how much of itself the loss may be lowered at most, with these kinds.</summary>
    public double RelativeGap => 1 - Math.Exp(-_optimum.Gap);

    /// <summary>The frequency of a point in hertz.</summary>
    public double FrequencyOf(int point) => Math.Exp(_optimum.Logarithms[_program.FrequencyOf(point)]);

    /// <summary>The load current in amperes of a point's cycles, of which some are left out.</summary>
    public double CurrentOf(int point) => Math.Exp(_optimum.Logarithms[_program.CurrentOf(point)]);

    /// <summary>The sized stage at the duty of the point that counts most.</summary>
    public SizedConverter Typical => At(Points.MaxBy(p => p.Weight * p.Point.LoadAmperes * p.Point.OutputVolts)!.Node);

    /// <summary>The sized stage at one of its duties.</summary>
    public SizedConverter At(int node)
    {
        int capacitors = _options.Capacitors.Length;
        double[] values = [.. _optimum.Logarithms.Take(_chosen.Length).Select(Math.Exp)];
        return SizedValues.Build(
            _candidate.Duties.AnalysisAt(node).Converter, _process,
            [.. _options.Capacitors.Select((o, e) => o[_chosen[e]])],
            [.. _options.Switches.Select((o, s) => o[_chosen[capacitors + s]])],
            values[..capacitors],
            [.. values[capacitors..].Select(g => 1 / g)],
            Inductors);
    }

    /// <summary>The stage as a mode, and the same at a corner.</summary>
    /// <param name="frequencyHz">Floor and ceiling of the frequency.</param>
    public SizedModes Sized(Interval<double> frequencyHz) => new(
        Typical, [new StageMode(_candidate, At, frequencyHz)], RelativeGap,
        corner => [new Lazy<RegulatedMode>(() => new StageMode(_candidate, node => CornerSizes.Of(At(node), corner), frequencyHz))]);

    /// <summary>Finds sizes; null where an inductor or a duty is missing, with the reason.</summary>
    public static StageDesign? Try(
        Candidate candidate, Requirement requirement, DeviceFit fit, IReadOnlyList<ProfilePoint> points, double margin, out string reason)
    {
        reason = string.Empty;
        List<(ProfilePoint Point, int Node)> served = [];
        foreach (ProfilePoint point in points)
        {
            if (candidate.Duties.Of(point.OutputVolts / point.InputVolts) is not ({ } node, { } share))
            {
                reason = $"no duty gives {EngineeringNumber.Of(point.OutputVolts, "V")} from {EngineeringNumber.Of(point.InputVolts, "V")}";
                return null;
            }

            served.Add((point, share > 0.5 ? node + 1 : node));
        }

        if (requirement.Process.Inductors.Count == 0)
        {
            reason = "the process has no inductor";
            return null;
        }

        ElementOptions options = ElementOptions.Of(
            fit.Stress, requirement.Process, HeldVoltages.Of(candidate.Converter!, served.Select(p => (candidate.Duties.AnalysisAt(p.Node), p.Point.InputVolts))));
        StageDesign? best = null;
        foreach (InductorDevice inductor in requirement.Process.Inductors)
        {
            if (Try(candidate, requirement, options, served, margin, inductor) is { } design && (best is null || design.Watts < best.Watts))
            {
                best = design;
            }
        }

        reason = best is null ? "no sizes within the area carry the load" : string.Empty;
        return best;
    }

    private static StageDesign? Try(
        Candidate candidate, Requirement requirement, ElementOptions options, List<(ProfilePoint Point, int Node)> served, double margin, InductorDevice inductor)
    {
        AreaBudget area = AreaBudget.Of(requirement);
        InductorDevice[] inductors = [.. candidate.Converter!.Inductors.Select(_ => inductor)];
        if (area.TotalSquareMetres is { } total && inductors.Sum(l => l.AreaSquareMetres) >= total)
        {
            return null;
        }

        Dictionary<int, StageCosts> costs = served.Select(p => p.Node).Distinct().ToDictionary(
            n => n, n => StageCosts.Of(candidate.Duties.AnalysisAt(n), requirement.Process, options, inductors));
        StagePoint[] points = [.. served.Select(p => new StagePoint(p.Point with { LoadAmperes = p.Point.LoadAmperes * GearDesign.Reserve * (p.Point.IsEnd ? margin : 1) }, p.Point.Weight, p.Node, costs[p.Node]))];
        StageProgram program = new(points, options, inductors, area, requirement.FrequencyHz);
        int[] counts = [.. options.Capacitors.Select(o => o.Length), .. options.Switches.Select(o => o.Length)];
        int[] chosen = [.. counts.Select((n, e) => Enumerable.Range(0, n).MinBy(o => program.AreaPerValue(e, o)))];
        (int[] Chosen, GeometricOptimum Optimum)? best = null;
        for (int round = 0; round < MostRounds; round++)
        {
            GeometricOptimum optimum = program.Solve(chosen);
            if (!optimum.IsFeasible || (best is { } known && optimum.LogValue >= known.Optimum.LogValue - Worth))
            {
                break;
            }

            best = (chosen, optimum);
            int[] own = chosen;
            chosen = [.. counts.Select((n, e) => Enumerable.Range(0, n).MinBy(o => program.CostOf(e, o, optimum)))];
            if (chosen.SequenceEqual(own))
            {
                break;
            }
        }

        return best is { } found ? new StageDesign(candidate, requirement.Process, options, inductors, points, program, found.Chosen, found.Optimum) : null;
    }

    private const int MostRounds = 6;

    private const double Worth = 1e-6;
}
