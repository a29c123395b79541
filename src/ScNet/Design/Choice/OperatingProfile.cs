using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Choice;

/// <summary>The operating points of a requirement for which sizes are found: parts of the discharge times the states of the load, and what must be held.</summary>
internal static class OperatingProfile
{
    // parts of the discharge
    private const int Slices = 5;

    // what must be held at the ends of the input range counts next to nothing for the loss
    private const double EndWeight = 1e-6;

    /// <summary>All points.</summary>
    public static ProfilePoint[] Of(Requirement requirement) =>
    [
        .. DischargeSlices.Middles(DischargeSlices.CurveOf(requirement), Slices)
            .SelectMany(v => AskedPoints.Loads(requirement).Select(l => new ProfilePoint(v, l.OutputVolts!.Value, l.Amperes, l.Share / Slices, IsEnd: false))),
        .. Ends(requirement),
    ];

    /// <summary>What must be held at both ends of the input range.</summary>
    public static ProfilePoint[] Ends(Requirement requirement) =>
    [
        .. new[] { requirement.InputVolts.Minimum!.Value, requirement.InputVolts.Maximum!.Value }.Distinct()
            .SelectMany(v => AskedPoints.Held(requirement).Select(p => new ProfilePoint(v, p.OutputVolts, p.LoadAmperes, EndWeight, IsEnd: true))),
    ];

    /// <summary>The first of points that no mode holds, with the reason of the mode with the largest ratio, which comes nearest; null where all are held.</summary>
    public static string? ReasonOfLost(IReadOnlyList<RegulatedMode> modes, IEnumerable<ProfilePoint> points)
    {
        foreach (ProfilePoint point in points)
        {
            if (!modes.Any(m => m.Hold(point.InputVolts, point.OutputVolts, point.LoadAmperes).IsHeld))
            {
                return ReasonAt(modes, point);
            }
        }

        return null;
    }

    /// <summary>Why no mode holds a point: the reason of the one with the largest ratio, which comes nearest.</summary>
    public static string ReasonAt(IReadOnlyList<RegulatedMode> modes, ProfilePoint point)
    {
        RegulatedMode nearest = Nearest(modes);
        string mode = modes.Count > 1 ? $" in {nearest.Name}" : string.Empty;
        return $"{NotHeld(point)}{mode}: {nearest.ReasonAt(point.InputVolts, point.OutputVolts, point.LoadAmperes)}";
    }

    /// <summary>"800 mV at 10 mA from 2.8 V is not held".</summary>
    public static string NotHeld(ProfilePoint point) =>
        $"{EngineeringNumber.Of(point.OutputVolts, "V")} at {EngineeringNumber.Of(point.LoadAmperes, "A")} from {EngineeringNumber.Of(point.InputVolts, "V")} is not held";

    /// <summary>The mode of the largest ratio, the first of equals.</summary>
    public static RegulatedMode Nearest(IReadOnlyList<RegulatedMode> modes) => modes.MaxBy(m => m.Ratio is { IsDetermined: true } ratio ? ratio.ToDouble() : 0)!;
}
