using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Choice;

/// <summary>What came of sizing a candidate: what it makes of the energy, or why it cannot do what is required.</summary>
internal sealed class CandidateDesign
{
    // over which energy is added up
    private const int LifeSlices = 20;

    // sizes for ever larger loads at the ends of the input range, until every corner holds what is required there: larger by what lacks, and after
    // some rounds by ever higher powers of it, as sizes with room to spare stay what they are until that is used up
    private const int MostRounds = 20, LastPlainRound = 3;
    private const double MoreThanLack = 1.001;

    // raises the least frequency of a stage, whose coils cannot be cut into parts, until its ripple is allowed
    private const int MostRaises = 8;
    private const double LeastRaise = 1.1, LargestRaise = 2;

    private CandidateDesign(Candidate candidate)
    {
        Candidate = candidate;
    }

    /// <summary>The candidate.</summary>
    public Candidate Candidate { get; }

    /// <summary>Why it is rejected; empty where it is not.</summary>
    public IReadOnlyList<string> Rejections { get; private init; } = [];

    /// <summary>Whether another area, load or process might admit it where it is rejected: ratings, ratios and phases do not change with them.</summary>
    public bool IsOpen { get; private init; }

    /// <summary>What is worth knowing of its sizes: which elements take stacks, and which corner decided.</summary>
    public IReadOnlyList<string> Notes { get; private init; } = [];

    /// <summary>The converter with its devices; null for a linear regulator, or where it is rejected.</summary>
    public SizedConverter? Sized { get; private init; }

    /// <summary>The modes that serve.</summary>
    public IReadOnlyList<RegulatedMode> Modes { get; private init; } = [];

    /// <summary>What it draws and loses; of no meaning where it is rejected.</summary>
    public LifeEstimate Life { get; private init; } = null!;

    /// <summary>By how much of itself the loss may be lowered at most.</summary>
    public double? RelativeGap { get; private init; }

    /// <summary>The largest ripple; null where none is limited, or a linear regulator has none.</summary>
    public OutputRipple? Ripple { get; private init; }

    /// <summary>By what candidates are ranked, the largest first: hours of life, or less input power where no charge is told.</summary>
    public double Merit => Life.Hours ?? -Life.InputWatts!.Value;

    /// <summary>Whether it does what is required.</summary>
    public bool IsAccepted => Rejections.Count == 0;

    /// <summary>Sizes a candidate and adds up its energy. A stage whose ripple is too large at the frequency of least loss runs faster.</summary>
    public static CandidateDesign Of(Candidate candidate, Requirement requirement, CancellationToken token)
    {
        CandidateDesign first = AtLeastLoss(candidate, requirement, token), design = first;
        double floor = requirement.FrequencyHz.Minimum!.Value, ceiling = requirement.FrequencyHz.Maximum!.Value;
        for (int raise = 0; raise < MostRaises && floor < ceiling && design is { IsAccepted: false, Ripple: { HasCoils: true, RunningHertz: var slowest } ripple }; raise++)
        {
            double factor = Math.Clamp(ripple.Volts / requirement.RippleVolts!.Value, LeastRaise, LargestRaise);
            floor = Math.Min(Math.Max(floor, slowest) * factor, ceiling);
            design = AtLeastLoss(candidate, requirement with { FrequencyHz = new Interval<double>(floor, ceiling) }, token);
        }

        return design.IsAccepted ? design : first;
    }

    private static CandidateDesign AtLeastLoss(Candidate candidate, Requirement requirement, CancellationToken token)
    {
        if (candidate.Analysis is not { } analysis)
        {
            RegulatedMode[] linear = [RegulatedModes.Linear(requirement.Process.Control)];
            return OperatingProfile.ReasonOfLost(linear, OperatingProfile.Ends(requirement)) is { } low
                ? Rejected(candidate, [low])
                : Of(candidate, requirement, linear, null, null, []);
        }

        if (!analysis.Results.Any())
        {
            return Rejected(candidate, [.. analysis.Modes.SelectMany(m => m.Diagnostics).Where(d => d.Severity == DiagnosticSeverity.Error).Select(d => d.Message).Take(1)]);
        }

        DeviceFit fit = DeviceFit.Of(analysis, requirement);
        if (fit.Rejections.Count > 0)
        {
            return Rejected(candidate, fit.Rejections);
        }

        ProfilePoint[] points = OperatingProfile.Of(requirement);
        string reason;
        bool isStage = candidate.Converter!.Inductors.Count > 0;
        if (isStage && !candidate.HasDuty)
        {
            return Rejected(candidate, ["no duty regulates it: it has an odd number of phases"]);
        }

        CornerCheck? first = null, failed = null;
        double margin = 1;
        for (int round = 0; round < MostRounds; round++)
        {
            token.ThrowIfCancellationRequested();
            SizedModes? made = isStage
                ? StageDesign.Try(candidate, requirement, fit, points, margin, out reason)?.Sized(requirement.FrequencyHz)
                : GearDesign.Try(candidate, requirement, points, margin, out reason, token)?.Sized(requirement.FrequencyHz);
            if (made is null)
            {
                return Rejected(candidate, [failed is null ? reason : $"{failed}; no sizes in the area do better"], isOpen: Reaches(candidate, points));
            }

            if (OperatingProfile.ReasonOfLost(made.Modes, OperatingProfile.Ends(requirement)) is { } lost)
            {
                return Rejected(candidate, [lost], isOpen: true);
            }

            if (CornerCheck.Of(requirement, made.At) is not { } found)
            {
                return Of(candidate, requirement, made.Modes, made.Converter, made.RelativeGap, first is null ? fit.Stacks : [.. fit.Stacks, first.Note]);
            }

            failed = found;
            first ??= found;
            if (double.IsInfinity(found.Lack))
            {
                break;
            }

            margin *= Math.Pow(found.Lack * MoreThanLack, 1 << Math.Max(0, round - LastPlainRound));
        }

        return Rejected(candidate, [$"{failed}"], isOpen: true);
    }

    private static CandidateDesign Of(
        Candidate candidate, Requirement requirement, IReadOnlyList<RegulatedMode> modes, SizedConverter? sized, double? gap, IReadOnlyList<string> notes)
    {
        LifeEstimate life = LifeEstimate.Of(modes, requirement, LifeSlices);
        OutputRipple? ripple = requirement.RippleVolts is null || life.End is not null ? null : OutputRipple.Of(requirement, modes);
        if (ripple?.Volts > requirement.RippleVolts)
        {
            return new CandidateDesign(candidate) { Rejections = [RippleText(ripple, requirement)], IsOpen = true, Ripple = ripple };
        }

        return life.End is { } end
            ? Rejected(candidate, [$"{end}: {end.Reasons[modes.ToList().IndexOf(OperatingProfile.Nearest(modes))]}"], isOpen: true)
            : new CandidateDesign(candidate)
            {
                Notes = ripple is { Parts: > 1 } ? [.. notes, RippleText(ripple, requirement)] : notes,
                Sized = sized,
                Modes = modes,
                Life = life,
                RelativeGap = gap,
                Ripple = ripple,
            };
    }

    // "8 parts in turn: ripple of 36 mV at 10 mA from 2.8 V, 40 mV allowed"
    private static string RippleText(OutputRipple ripple, Requirement requirement)
    {
        string at = $"at {EngineeringNumber.Of(ripple.Point.LoadAmperes, "A")} from {EngineeringNumber.Of(ripple.Point.InputVolts, "V")}, {EngineeringNumber.Of(requirement.RippleVolts, "V")} allowed";
        string parts = ripple.Parts > 1 ? $"{UnitText.Count(ripple.Parts, "part", "parts")} in turn: " : string.Empty;
        return double.IsInfinity(ripple.Volts)
            ? $"{parts}nothing holds the output up all the time {at}: tell what does, output_farads"
            : $"{parts}ripple of {EngineeringNumber.Of(ripple.Volts, "V")} {at}";
    }

    private static CandidateDesign Rejected(Candidate candidate, IReadOnlyList<string> reasons, bool isOpen = false) => new(candidate) { Rejections = reasons, IsOpen = isOpen };

    // whether ideal ratios reach every point, so that it is only impedances that do not
    private static bool Reaches(Candidate candidate, ProfilePoint[] points) => points.All(p => candidate.HasDuty
        ? candidate.Duties.Of(p.OutputVolts / p.InputVolts) is not null
        : candidate.Analysis!.Results.Any(m => m.Ratio.IsDetermined && Math.Abs(m.Ratio.ToDouble()) * p.InputVolts > p.OutputVolts));
}
