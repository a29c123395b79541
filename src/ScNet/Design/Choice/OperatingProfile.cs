using MathNet.Numerics.Interpolation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Choice;

/// <summary>The operating points of a requirement: discharge in equal slices of charge, times the states of the load.</summary>
/// <remarks>The midpoint of each slice stands for it: the error falls with the square of their number, where no gear changes.</remarks>
internal static class OperatingProfile
{
    /// <summary>The points that count, slice after slice.</summary>
    /// <param name="requirement">The requirement.</param>
    /// <param name="slices">The equal parts of the charge, or of the input range where there is no discharge curve.</param>
    public static ProfilePoint[] Of(Requirement requirement, int slices)
    {
        double[] volts = Volts(requirement, slices);
        return [.. volts.SelectMany((v, slice) => Loads(requirement).Select(l => new ProfilePoint(v, l.Volts, l.Amperes, l.Share / slices, l.Load, slice)))];
    }

    /// <summary>What must be held at both ends of the input range.</summary>
    public static ProfilePoint[] Ends(Requirement requirement) =>
        [.. new[] { requirement.InputVolts.Minimum!.Value, requirement.InputVolts.Maximum!.Value }.Distinct()
            .SelectMany(v => Loads(requirement).Select(l => new ProfilePoint(v, l.Volts, l.Amperes, 0, l.Load, -1)))];

    private static IEnumerable<(int Load, double Volts, double Amperes, double Share)> Loads(Requirement requirement) =>
        requirement.Loads.SelectMany((load, i) => load.OutputVolts is { } own
            ? [(i, own, load.Amperes, load.Share)]
            : requirement.OutputVolts.Select(v => (i, v, load.Amperes, load.Share / requirement.OutputVolts.Count)));

    private static double[] Volts(Requirement requirement, int slices)
    {
        (double low, double high) = (requirement.InputVolts.Minimum!.Value, requirement.InputVolts.Maximum!.Value);
        double[] middles = [.. Enumerable.Range(0, slices).Select(k => (k + 0.5) / slices)];
        if (requirement.Discharge.Count < 2)
        {
            return [.. middles.Select(m => high - (m * (high - low)))];
        }

        DischargePoint[] rising = [.. requirement.Discharge.OrderBy(p => p.StateOfCharge)];
        LinearSpline curve = LinearSpline.InterpolateSorted([.. rising.Select(p => p.StateOfCharge)], [.. rising.Select(p => p.Volts)]);
        (double empty, double full) = (rising[0].StateOfCharge, rising[^1].StateOfCharge);
        return [.. middles.Select(m => Math.Clamp(curve.Interpolate(full - (m * (full - empty))), low, high))];
    }
}
