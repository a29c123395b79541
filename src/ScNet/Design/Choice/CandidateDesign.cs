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

    private CandidateDesign(Candidate candidate)
    {
        Candidate = candidate;
    }

    /// <summary>The candidate.</summary>
    public Candidate Candidate { get; }

    /// <summary>Why it is rejected; empty where it is not.</summary>
    public IReadOnlyList<string> Rejections { get; private init; } = [];

    /// <summary>Which elements take stacks.</summary>
    public IReadOnlyList<string> Stacks { get; private init; } = [];

    /// <summary>The converter with its devices; null for a linear regulator, or where it is rejected.</summary>
    public SizedConverter? Sized { get; private init; }

    /// <summary>The modes that serve.</summary>
    public IReadOnlyList<RegulatedMode> Modes { get; private init; } = [];

    /// <summary>What it draws and loses; of no meaning where it is rejected.</summary>
    public LifeEstimate Life { get; private init; } = null!;

    /// <summary>By how much of itself the loss may be lowered at most.</summary>
    public double? RelativeGap { get; private init; }

    /// <summary>By what candidates are ranked, the largest first: hours of life, or less input power where no charge is told.</summary>
    public double Merit => Life.Hours ?? -Life.InputWatts!.Value;

    /// <summary>Whether it does what is required.</summary>
    public bool IsAccepted => Rejections.Count == 0;

    /// <summary>Sizes a candidate and adds up its energy.</summary>
    public static CandidateDesign Of(Candidate candidate, Requirement requirement, CancellationToken token)
    {
        if (candidate.Analysis is not { } analysis)
        {
            return Of(candidate, requirement, [RegulatedModes.Linear(requirement.Process.Control)], null, null, []);
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
        if (candidate.Converter!.Inductors.Count == 0)
        {
            return GearDesign.Try(candidate, requirement, points, out reason, token) is { } gears
                ? Of(candidate, requirement, gears.Modes, gears.Sizes.Converter, gears.Sizes.Certificate?.RelativeGap, fit.Stacks)
                : Rejected(candidate, [reason]);
        }

        if (!candidate.HasDuty)
        {
            return Rejected(candidate, ["no duty regulates it: it has an odd number of phases"]);
        }

        return StageDesign.Try(candidate, requirement, fit, points, out reason) is { } stage
            ? Of(candidate, requirement, [new StageMode(candidate, stage, requirement.FrequencyHz)], stage.Typical, stage.RelativeGap, fit.Stacks)
            : Rejected(candidate, [reason]);
    }

    private static CandidateDesign Of(
        Candidate candidate, Requirement requirement, IReadOnlyList<RegulatedMode> modes, SizedConverter? sized, double? gap, IReadOnlyList<string> stacks)
    {
        if (OperatingProfile.ReasonOfLost(modes, OperatingProfile.Ends(requirement)) is { } lost)
        {
            return Rejected(candidate, [lost]);
        }

        LifeEstimate life = LifeEstimate.Of(modes, requirement, LifeSlices);
        return life.End is { } end
            ? Rejected(candidate, [$"{end}: {end.Reasons[modes.ToList().IndexOf(OperatingProfile.Nearest(modes))]}"])
            : new CandidateDesign(candidate) { Stacks = stacks, Sized = sized, Modes = modes, Life = life, RelativeGap = gap };
    }

    private static CandidateDesign Rejected(Candidate candidate, IReadOnlyList<string> reasons) => new(candidate) { Rejections = reasons };
}
