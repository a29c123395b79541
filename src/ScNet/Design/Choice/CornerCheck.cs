using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Devices;

namespace ScNet.Design.Choice;

/// <summary>What a corner of the process takes from sizes that hold everything typically.</summary>
/// <param name="Corner">The corner.</param>
/// <param name="Point">The point that it does not hold.</param>
/// <param name="Reason">Why.</param>
/// <param name="Lack">The factor by which the load there is too large; infinite where no load is small enough.</param>
internal sealed record CornerCheck(Corner Corner, ProfilePoint Point, string Reason, double Lack)
{
    /// <summary>The first corner, in the order of the process, that does not hold all ends of the input range, at the point that lacks most; null where all do.</summary>
    /// <param name="requirement">What is required.</param>
    /// <param name="modesAt">The modes at a corner, by falling ratio; made when they are asked for.</param>
    public static CornerCheck? Of(Requirement requirement, Func<Corner, IReadOnlyList<Lazy<RegulatedMode>>> modesAt)
    {
        ProfilePoint[] ends = OperatingProfile.Ends(requirement);
        foreach (Corner corner in requirement.Process.Corners)
        {
            IReadOnlyList<Lazy<RegulatedMode>> modes = modesAt(corner);
            (ProfilePoint point, double lack) = ends.Select(p => (p, LackOf(modes, p))).MaxBy(p => p.Item2);
            if (lack > 1)
            {
                return new CornerCheck(corner, point, OperatingProfile.ReasonAt([.. modes.Select(m => m.Value)], point), lack);
            }
        }

        return null;
    }

    /// <summary>What is worth knowing of larger sizes that do.</summary>
    public string Note => $"corner {Corner} decides its sizes: with those that lose least typically {Reason}";

    /// <summary>"in corner slow 800 mV at 10 mA from 2.8 V is not held: …".</summary>
    public override string ToString() => $"in corner {Corner} {Reason}";

    private static double LackOf(IReadOnlyList<Lazy<RegulatedMode>> modes, ProfilePoint point)
    {
        double least = double.PositiveInfinity;
        foreach (Lazy<RegulatedMode> mode in modes)
        {
            least = Math.Min(least, mode.Value.LackAt(point.InputVolts, point.OutputVolts, point.LoadAmperes));
            if (least <= 1)
            {
                break;
            }
        }

        return least;
    }
}
