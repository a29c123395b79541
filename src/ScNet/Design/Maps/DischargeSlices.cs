using MathNet.Numerics.Interpolation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Maps;

/// <summary>A slice of a cell's charge, for which its middle stands.</summary>
/// <param name="StateOfCharge">The share of the charge that is left at its start.</param>
/// <param name="Share">Its share of the whole charge.</param>
/// <param name="OpenVolts">The open voltage in volts (V) in its middle.</param>
internal readonly record struct DischargeSlice(double StateOfCharge, double Share, double OpenVolts);

/// <summary>Cuts each straight line of a discharge curve into slices of equal charge.</summary>
internal static class DischargeSlices
{
    /// <summary>The discharge curve of a requirement by falling state of charge: where it has none, every voltage of its range alike from the highest on.</summary>
    public static IReadOnlyList<DischargePoint> CurveOf(Requirement requirement) => requirement.Discharge.Count > 0
        ? requirement.Discharge
        : [new(1, requirement.InputVolts.Maximum ?? 0), new(0, requirement.InputVolts.Minimum ?? 0)];

    /// <summary>The open voltages in the middle of so many equal parts of the charge of a curve.</summary>
    public static double[] Middles(IReadOnlyList<DischargePoint> curve, int count)
    {
        DischargePoint[] rising = [.. curve.OrderBy(p => p.StateOfCharge)];
        LinearSpline line = LinearSpline.InterpolateSorted([.. rising.Select(p => p.StateOfCharge)], [.. rising.Select(p => p.Volts)]);
        (double empty, double full) = (rising[0].StateOfCharge, rising[^1].StateOfCharge);
        return [.. Enumerable.Range(0, count).Select(k => line.Interpolate(full - ((full - empty) * (k + 0.5) / count)))];
    }

    /// <summary>The slices from full to empty.</summary>
    /// <param name="curve">The curve by falling state of charge.</param>
    /// <param name="count">How many from full to empty, about.</param>
    public static IEnumerable<DischargeSlice> Of(IReadOnlyList<DischargePoint> curve, int count)
    {
        if (curve.Count < 2 || Enumerable.Range(1, curve.Count - 1).Any(k => !(curve[k].StateOfCharge < curve[k - 1].StateOfCharge))
            || curve[0].StateOfCharge > 1 || curve[^1].StateOfCharge < 0 || curve.Any(p => !Guard.IsInRange(p.Volts, allowZero: false)))
        {
            throw new ArgumentException("Expected a discharge curve of at least two points by falling state of charge, within 1 to 0, and with positive voltages.", nameof(curve));
        }

        return Slices();

        IEnumerable<DischargeSlice> Slices()
        {
            for (int k = 1; k < curve.Count; k++)
            {
                (DischargePoint from, DischargePoint to) = (curve[k - 1], curve[k]);
                double width = from.StateOfCharge - to.StateOfCharge;
                int parts = Math.Max(1, (int)Math.Ceiling(count * width));
                for (int i = 0; i < parts; i++)
                {
                    yield return new(
                        from.StateOfCharge - (width * i / parts), width / parts, from.Volts + ((to.Volts - from.Volts) * (i + 0.5) / parts));
                }
            }
        }
    }
}
