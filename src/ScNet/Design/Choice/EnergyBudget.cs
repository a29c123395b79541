using ScNet.Design.Losses;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Choice;

/// <summary>What a candidate draws and loses over discharge and time, in the best mode at every point.</summary>
internal sealed class EnergyBudget
{
    private const int SourceTurns = 3;

    private const double SourceTolerance = 1e-7;

    private EnergyBudget(IReadOnlyList<LoadBudget> loads, double[] sourceAmperes, double outputWatts, double inputWatts, IReadOnlyList<double> sharesOfModes)
    {
        Loads = loads;
        SourceAmperesOfSlices = sourceAmperes;
        (OutputWatts, InputWatts, SharesOfModes) = (outputWatts, inputWatts, sharesOfModes);
    }

    /// <summary>Each state of the load, as in the requirement.</summary>
    public IReadOnlyList<LoadBudget> Loads { get; }

    /// <summary>The average current in amperes from the source in each slice of the discharge.</summary>
    public double[] SourceAmperesOfSlices { get; }

    /// <summary>Average power in watts into the load.</summary>
    public double OutputWatts { get; }

    /// <summary>Average power in watts into the converter.</summary>
    public double InputWatts { get; }

    /// <summary>The share of the time in each mode.</summary>
    public IReadOnlyList<double> SharesOfModes { get; }

    /// <summary>Hours that a charge lasts: each slice lasts its charge over its current.</summary>
    /// <param name="coulombs">The charge.</param>
    public double Hours(double coulombs) => SourceAmperesOfSlices.Sum(a => coulombs / SourceAmperesOfSlices.Length / a) / 3600;

    /// <summary>Asks the modes at every point; null where none of them holds one, with the reason.</summary>
    public static EnergyBudget? Try(Requirement requirement, IReadOnlyList<RegulatedMode> modes, IReadOnlyList<ProfilePoint> points, out string reason)
    {
        int slices = points.Max(p => p.Slice) + 1, loads = requirement.Loads.Count;
        double[] amperes = new double[slices], output = new double[loads], weights = new double[loads], shares = new double[modes.Count];
        double[][] watts = [.. requirement.Loads.Select(_ => new double[LossModel.KindCount])];
        List<(ProfilePoint Point, int Mode, RegulatedPoint Held)> served = [];
        reason = string.Empty;
        foreach (ProfilePoint point in points)
        {
            if (BestAt(requirement, modes, point) is not ({ } mode, { } held, { } volts))
            {
                reason = ReasonAt(modes, point);
                return null;
            }

            if (point.Slice < 0)
            {
                continue;
            }

            amperes[point.Slice] += point.Weight * slices * held.InputWatts / volts;
            served.Add((point, mode, held));
        }

        double[] lasting = Lasting(requirement, amperes);
        foreach ((ProfilePoint point, int mode, RegulatedPoint held) in served)
        {
            double time = point.Weight * lasting[point.Slice];
            shares[mode] += time;
            weights[point.Load] += time;
            output[point.Load] += time * held.OutputWatts;
            for (int k = 0; k < LossModel.KindCount; k++)
            {
                watts[point.Load][k] += time * held.LossOf((LossKind)k);
            }
        }

        double lost = watts.Sum(w => w.Sum());
        return new EnergyBudget(
            [.. requirement.Loads.Select((l, i) => new LoadBudget(l, output[i] / weights[i], [.. watts[i].Select(w => w / weights[i])]))],
            amperes, output.Sum(), output.Sum() + lost, [.. shares]);
    }

    // how long each slice lasts, one on average: slices of a discharge hold the same charge; without one all voltages count alike
    private static double[] Lasting(Requirement requirement, double[] amperes)
    {
        double average = amperes.Average(a => 1 / a);
        return requirement.Discharge.Count < 2 ? [.. amperes.Select(_ => 1.0)] : [.. amperes.Select(a => 1 / (a * average))];
    }

    /// <summary>The mode that draws least at a point, with the drop in the source; null where none holds it.</summary>
    public static (int Mode, RegulatedPoint Point, double InputVolts)? BestAt(Requirement requirement, IReadOnlyList<RegulatedMode> modes, ProfilePoint point)
    {
        (int, RegulatedPoint, double)? best = null;
        double least = double.PositiveInfinity;
        for (int m = 0; m < modes.Count; m++)
        {
            double volts = point.InputVolts;
            RegulatedPoint held = modes[m].Hold(volts, point.OutputVolts, point.LoadAmperes);

            // the ends of the range are voltages at the converter
            for (int turn = 0; turn < SourceTurns && held.IsHeld && point.Slice >= 0 && requirement.SourceOhms > 0; turn++)
            {
                double room = (point.InputVolts * point.InputVolts) - (4 * requirement.SourceOhms * held.InputWatts), before = volts;
                volts = (point.InputVolts + Math.Sqrt(Math.Max(0, room))) / 2;
                if (Math.Abs(volts - before) < SourceTolerance * volts)
                {
                    break;
                }

                held = modes[m].Hold(volts, point.OutputVolts, point.LoadAmperes);
            }

            if (held.IsHeld && held.InputWatts < least)
            {
                (least, best) = (held.InputWatts, (m, held, volts));
            }
        }

        return best;
    }

    /// <summary>Why no mode holds a point: the reason of the one with the largest ratio, which comes nearest.</summary>
    public static string ReasonAt(IReadOnlyList<RegulatedMode> modes, ProfilePoint point)
    {
        RegulatedMode nearest = modes.MaxBy(m => m.Ratio is { IsDetermined: true } ratio ? ratio.ToDouble() : 0)!;
        string mode = modes.Count > 1 ? $" in {nearest.Name}" : string.Empty;
        return $"{EngineeringNumber.Of(point.OutputVolts, "V")} at {EngineeringNumber.Of(point.LoadAmperes, "A")} from {EngineeringNumber.Of(point.InputVolts, "V")} is not held{mode}: {nearest.ReasonAt(point.InputVolts, point.OutputVolts, point.LoadAmperes)}";
    }
}
