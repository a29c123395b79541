using static System.FormattableString;

namespace ScNet.Design.Requirements;

/// <summary>The rules that hold between the parts of a requirement, for objects and documents alike: the first fault of each, or null.</summary>
internal static class RequirementRules
{
    /// <summary>How far shares may be from adding up to 1, for those written as decimals.</summary>
    public const double ShareTolerance = 1e-9;

    /// <summary>A curve of at least two points runs from full to empty within the range of the input.</summary>
    public static RuleFault? Discharge(IReadOnlyList<DischargePoint> curve, Interval<double> inputVolts)
    {
        if (curve.Count == 1)
        {
            return new RuleFault(DiagnosticCodes.WrongValue, -1, "Expected at least two points of a discharge curve, but got one. Add the point where the cell counts as empty.");
        }

        for (int i = 0; i < curve.Count; i++)
        {
            (double charge, double volts) = curve[i];
            if (!(charge >= 0 && charge <= 1))
            {
                return new RuleFault(DiagnosticCodes.ValueOutOfRange, i, Invariant($"Expected a state of charge from 0 (empty) to 1 (full), but got {charge}."));
            }

            if (!Guard.IsInRange(volts, allowZero: false))
            {
                return new RuleFault(DiagnosticCodes.ValueOutOfRange, i, Invariant($"Expected a positive voltage of the cell, but got {volts} V."));
            }

            if (i > 0 && charge >= curve[i - 1].StateOfCharge)
            {
                return new RuleFault(DiagnosticCodes.DischargeNotFalling, i, Invariant($"Expected states of charge that fall from point to point, but {charge} comes after {curve[i - 1].StateOfCharge}. Write the curve from full to empty."));
            }

            if (i > 0 && volts > curve[i - 1].Volts)
            {
                return new RuleFault(DiagnosticCodes.DischargeNotFalling, i, Invariant($"Expected voltages that fall with the charge, or stay, but {volts} V comes after {curve[i - 1].Volts} V."));
            }

            if (inputVolts.IsDetermined && !inputVolts.Contains(volts))
            {
                return new RuleFault(DiagnosticCodes.OutsideRange, i, Invariant($"Expected a voltage of the cell within the input range, {inputVolts.ToString("V")}, but got {volts} V. Widen the range, or end the curve where the range ends."));
            }
        }

        return null;
    }

    /// <summary>Output voltages rise; a range has two.</summary>
    public static RuleFault? Outputs(IReadOnlyList<double> volts, bool isRange)
    {
        if (volts.Count == 0 || (isRange && volts.Count != 2))
        {
            return new RuleFault(DiagnosticCodes.WrongValue, -1, Invariant($"Expected {(isRange ? "both ends of the range of the output" : "at least one output voltage")}, but got {volts.Count}."));
        }

        for (int i = 0; i < volts.Count; i++)
        {
            if (!Guard.IsInRange(volts[i], allowZero: false))
            {
                return new RuleFault(DiagnosticCodes.ValueOutOfRange, i, Invariant($"Expected a positive output voltage, but got {volts[i]} V."));
            }

            if (i > 0 && volts[i] <= volts[i - 1])
            {
                return new RuleFault(DiagnosticCodes.WrongValue, i, Invariant($"Expected output voltages that rise, but {volts[i]} V comes after {volts[i - 1]} V."));
            }
        }

        return null;
    }

    /// <summary>Loads have different names and shares that add up to 1.</summary>
    public static RuleFault? Shares(IReadOnlyList<LoadShare> loads)
    {
        HashSet<string> names = [];
        for (int i = 0; i < loads.Count; i++)
        {
            if (!names.Add(loads[i].Name))
            {
                return new RuleFault(DiagnosticCodes.DuplicateName, i, $"Expected different names of loads, but {Quoted.Name(loads[i].Name)} is there twice. Rename one.");
            }
        }

        double sum = loads.Sum(l => l.Share);
        return loads.Count == 0 ? new RuleFault(DiagnosticCodes.MissingKey, -1, "Expected at least one load, but got none.")
            : Math.Abs(sum - 1) > ShareTolerance ? new RuleFault(DiagnosticCodes.ShareSum, -1, Invariant($"Expected shares of time that sum to 1, but those of {Quoted.List([.. loads.Select(l => l.Name)])} sum to {sum:G10}. {(sum < 1 ? "Add what the load does for the rest of the time." : "Make them smaller.")}"))
            : null;
    }

    /// <summary>Loads draw currents within the range that is told.</summary>
    public static RuleFault? Currents(IReadOnlyList<LoadShare> loads, Interval<double> rangeAmperes)
    {
        int outside = rangeAmperes.IsDetermined ? loads.ToList().FindIndex(l => !rangeAmperes.Contains(l.Amperes)) : -1;
        return outside < 0 ? null : new RuleFault(
            DiagnosticCodes.OutsideRange,
            outside,
            Invariant($"Expected a current within the range of the load, {rangeAmperes.ToString("A")}, but {Quoted.Name(loads[outside].Name)} draws {loads[outside].Amperes} A. Widen the range, or correct the current."));
    }

    /// <summary>Loads ask for output voltages that the requirement asks for.</summary>
    public static RuleFault? OutputsOfLoads(IReadOnlyList<LoadShare> loads, IReadOnlyList<double> outputVolts, bool isRange)
    {
        HashSet<double> asked = [.. outputVolts];
        int other = outputVolts.Count == 0 ? -1 : loads.ToList().FindIndex(l => l.OutputVolts is { } volts
            && !(isRange ? volts >= outputVolts[0] && volts <= outputVolts[^1] : asked.Contains(volts)));
        return other < 0 ? null : new RuleFault(
            DiagnosticCodes.OutsideRange,
            other,
            Invariant($"Expected {(isRange ? "a voltage within the range of the output" : "one of the output voltages")}, {string.Join(isRange ? " to " : ", ", outputVolts.Select(v => Invariant($"{v} V")))}, but {Quoted.Name(loads[other].Name)} asks for {loads[other].OutputVolts} V. Add it to the output, or correct it."));
    }

    /// <summary>Areas of kinds leave something of the total for the other kind.</summary>
    public static RuleFault? Areas(double? total, double? capacitors, double? switches) =>
        total is { } whole && (capacitors ?? 0) + (switches ?? 0) > whole * (1 + ShareTolerance)
            ? new RuleFault(DiagnosticCodes.OutsideRange, -1, Invariant($"Expected areas of capacitors and switches that sum to the total, {whole} m², or less, but they sum to {(capacitors ?? 0) + (switches ?? 0):G10} m²."))
            : null;
}
