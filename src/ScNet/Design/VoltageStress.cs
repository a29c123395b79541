using Fractions;

namespace ScNet.Design;

/// <summary>The voltages that the elements of one kind stand at the ideal point, against a rating.</summary>
/// <remarks>
/// An exact voltage is compared with the rating exactly: a third of 3.6 V does not exceed 1.2 V. A number
/// exceeds it from a relative excess of 1e-9 on, so that rounding does not count. An undetermined voltage
/// is never taken as zero: its element is named in <see cref="Undetermined"/>, and the other figures speak
/// of what is determined, including the determined phases of that element.
/// </remarks>
public sealed class VoltageStress
{
    private const double RelativeTolerance = 1e-9;

    private VoltageStress(double? highestVolts, string[] highest, double largestExcessVolts, string[] exceeding, string[] undetermined)
    {
        HighestVolts = highestVolts;
        Highest = highest;
        LargestExcessVolts = largestExcessVolts;
        Exceeding = exceeding;
        Undetermined = undetermined;
    }

    /// <summary>The highest determined voltage in volts (V), without sign; null where there is none.</summary>
    public double? HighestVolts { get; }

    /// <summary>The names of the elements that stand the highest voltage.</summary>
    public IReadOnlyList<string> Highest { get; }

    /// <summary>By how many volts (V) the highest voltage exceeds the rating; 0 where it does not.</summary>
    public double LargestExcessVolts { get; }

    /// <summary>The names of the elements that exceed the rating.</summary>
    public IReadOnlyList<string> Exceeding { get; }

    /// <summary>The names of the elements with an undetermined voltage in at least one phase.</summary>
    public IReadOnlyList<string> Undetermined { get; }

    /// <summary>The highest voltage and what exceeds the rating.</summary>
    public override string ToString() =>
        $"{UnitText.Of(HighestVolts, "V")}{UnitText.Names(" at ", Highest)}{UnitText.Names("; ", Exceeding, $" over the rating by up to {UnitText.Of(LargestExcessVolts, "V")}")}{UnitText.Names("; ", Undetermined, " undetermined")}";

    /// <summary>Rates the elements of one kind.</summary>
    /// <param name="elements">Each element's name and its voltages per volt of input, one or one per phase.</param>
    /// <param name="conditions">Input voltage and rating.</param>
    internal static VoltageStress Of(IEnumerable<(string Name, IEnumerable<Quantity> Voltages)> elements, ComparisonConditions conditions)
    {
        Quantity highest = Quantity.Undetermined;
        List<string> highestNames = [];
        List<string> exceeding = [];
        List<string> undetermined = [];
        foreach ((string name, IEnumerable<Quantity> voltages) in elements)
        {
            Quantity own = Quantity.Undetermined;
            foreach (Quantity voltage in voltages)
            {
                if (!voltage.IsDetermined)
                {
                    Note(undetermined, name);
                }
                else if (!own.IsDetermined || QuantityMagnitude.Compare(voltage, own) > 0)
                {
                    own = QuantityArithmetic.Abs(voltage);
                }
            }

            if (!own.IsDetermined)
            {
                continue;
            }

            int order = highest.IsDetermined ? QuantityMagnitude.Compare(own, highest) : 1;
            if (order > 0)
            {
                highest = own;
                highestNames.Clear();
            }

            if (order >= 0)
            {
                highestNames.Add(name);
            }

            if (Excess(own, conditions) > 0)
            {
                exceeding.Add(name);
            }
        }

        return new VoltageStress(
            conditions.Volts(highest), [.. highestNames], Excess(highest, conditions), [.. exceeding], [.. undetermined]);
    }

    private static void Note(List<string> names, string name)
    {
        if (names.Count == 0 || names[^1] != name)
        {
            names.Add(name);
        }
    }

    private static double Excess(Quantity voltage, ComparisonConditions conditions)
    {
        if (voltage.TryGetFraction(out Fraction exact))
        {
            Fraction excess = (exact * conditions.ExactInputVoltage) - conditions.ExactDeviceRating;
            return excess.IsPositive ? excess.ToDouble() : 0;
        }

        double above = (conditions.Volts(voltage) ?? 0) - conditions.DeviceRatingVolts;
        return above > RelativeTolerance * conditions.DeviceRatingVolts ? above : 0;
    }
}
