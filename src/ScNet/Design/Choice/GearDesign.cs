using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Design.Sizing;

namespace ScNet.Design.Choice;

/// <summary>A switched-capacitor candidate with the sizes that lose least over all points, each in its best gear.</summary>
/// <remarks>
/// Which gear serves a point and what sizes are best hang together. Points begin in the gear of the least ratio with some room above the
/// output and move up while sizes cannot reach them there; sized, each moves to the gear that draws least, and the sizes are found again,
/// while that helps.
/// </remarks>
internal sealed class GearDesign
{
    /// <summary>The factor on load currents for which sizes are found: those that just reach a point would miss it by rounding.</summary>
    public const double Reserve = 1.002;

    private const double LeastRoom = 0.03;
    private const double LeastGain = 1e-4;
    private const int MostRounds = 3;

    private GearDesign(SizedDesign sizes, IReadOnlyList<RegulatedMode> modes, double inputWatts)
    {
        (Sizes, Modes, InputWatts) = (sizes, modes, inputWatts);
    }

    /// <summary>The sizes.</summary>
    public SizedDesign Sizes { get; }

    /// <summary>The gears that serve some point.</summary>
    public IReadOnlyList<RegulatedMode> Modes { get; }

    private double InputWatts { get; }

    /// <summary>The modes, and the same at a corner.</summary>
    /// <param name="frequencyHz">Floor and ceiling of the frequency.</param>
    public SizedModes Sized(Interval<double> frequencyHz) => new(Sizes.Converter, Modes, Sizes.Certificate?.RelativeGap, corner =>
    {
        SizedConverter own = CornerSizes.Of(Sizes.Converter, corner);
        return [.. Modes.Reverse().Select(m => new Lazy<RegulatedMode>(() => RegulatedModes.OfFrequency(LossModel.Of(own, m.Model!.Analysis), frequencyHz)))];
    });

    /// <summary>Finds gears and sizes; null where there are none, with the reason.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="requirement">What is required.</param>
    /// <param name="points">The points that count.</param>
    /// <param name="margin">The factor on load currents at the ends of the input range for which there must be room.</param>
    /// <param name="reason">Why there are none.</param>
    /// <param name="token">Stops the work.</param>
    public static GearDesign? Try(Candidate candidate, Requirement requirement, IReadOnlyList<ProfilePoint> points, double margin, out string reason, CancellationToken token)
    {
        (string Name, double Ratio)[] gears = [.. candidate.Analysis!.Results.Where(m => m.Ratio.IsDetermined && m.CarriesLoad)
            .Select(m => (m.Mode.Name, m.Ratio.ToDouble())).OrderBy(g => g.Item2)];
        int[] gearOf = [.. points.Select(p => FirstGear(gears, p))];
        GearDesign? best = null;
        reason = string.Empty;
        for (int round = 0; round < MostRounds; round++)
        {
            token.ThrowIfCancellationRequested();
            if (Sized(candidate.Analysis!, requirement, points, margin, gears, gearOf, out reason) is not { } sizes)
            {
                break;
            }

            RegulatedMode[] modes = [.. gears.Select((g, i) => (g.Name, Index: i)).Where(g => gearOf.Contains(g.Index)).Select(g =>
                RegulatedModes.OfFrequency(LossModel.Of(sizes.Converter, candidate.Analysis!.Modes[g.Name].Require()), requirement.FrequencyHz))];
            int[] inUse = [.. Enumerable.Range(0, gears.Length).Where(g => gearOf.Contains(g))];
            double watts = 0;
            int[] better = [.. gearOf];
            for (int p = 0; p < points.Count; p++)
            {
                if (BestMode.Of(modes, points[p].InputVolts, points[p].SourceOhms(requirement), points[p].OutputVolts, points[p].LoadAmperes) is ({ } mode, { } held, _))
                {
                    better[p] = inUse[mode];
                    watts += points[p].Weight * held.InputWatts;
                }
                else
                {
                    reason = OperatingProfile.ReasonAt(modes, points[p]);
                    watts = double.PositiveInfinity;
                }
            }

            if (best is null ? double.IsFinite(watts) : watts < best.InputWatts * (1 - LeastGain))
            {
                best = new GearDesign(sizes, modes, watts);
            }
            else if (best is not null)
            {
                break;
            }

            if (better.SequenceEqual(gearOf))
            {
                break;
            }

            gearOf = better;
        }

        return best;
    }

    // moves points up while sizes do not reach them
    private static SizedDesign? Sized(
        ConverterAnalysis analysis, Requirement requirement, IReadOnlyList<ProfilePoint> points, double margin, (string Name, double Ratio)[] gears, int[] gearOf, out string reason)
    {
        AreaBudget area = AreaBudget.Of(requirement);
        while (true)
        {
            SizingPoint[] asked = [.. points.Select((p, i) => new SizingPoint(
                gears[gearOf[i]].Name, p.InputVolts, p.OutputVolts, p.LoadAmperes * Reserve * (p.IsEnd ? margin : 1), p.Weight))];
            SizingOutcome outcome = SizedDesign.Try(
                analysis, requirement.Process, asked, area, requirement.FrequencyHz, new SizingOptions { InputVolts = requirement.InputVolts });
            if (outcome.Unreachable.Count == 0)
            {
                reason = string.Join("; ", outcome.Findings.Where(f => f.Severity == DiagnosticSeverity.Error).Select(f => f.Message));
                return outcome.Design;
            }

            foreach ((UnreachablePoint point, int at) in outcome.Unreachable.SelectMany(u => Enumerable.Range(0, asked.Length).Where(i => asked[i] == u.Point).Select(i => (u, i))))
            {
                if (gearOf[at] < gears.Length - 1)
                {
                    gearOf[at]++;
                }
                else
                {
                    reason = $"{OperatingProfile.NotHeld(points[at])}{(gears.Length > 1 ? $" in {gears[^1].Name}" : string.Empty)}: {point.Reason}";
                    return null;
                }
            }
        }
    }

    private static int FirstGear((string Name, double Ratio)[] gears, ProfilePoint point)
    {
        int first = Array.FindIndex(gears, g => g.Ratio * point.InputVolts >= point.OutputVolts * (1 + LeastRoom));
        return first >= 0 ? first : gears.Length - 1;
    }
}
