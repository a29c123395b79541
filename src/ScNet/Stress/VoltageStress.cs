using Fractions;

namespace ScNet.Stress;

/// <summary>The voltages that the elements of one kind withstand at the ideal point, against a rating.</summary>
/// <remarks>
/// An exact voltage is compared with the rating exactly: a third of 3.6 V does not exceed 1.2 V. A number
/// exceeds it beyond a relative excess of 1e-9, so that rounding does not count. An undetermined voltage
/// is never taken as zero: its element is named in <see cref="Undetermined"/>, and the other figures speak
/// of what is determined, including the determined phases of that element.
/// </remarks>
public sealed class VoltageStress
{
    private const double RelativeTolerance = 1e-9;

    private VoltageStress(double? peakVolts, IReadOnlyList<string> peakElements, double maximumExcessVolts, IReadOnlyList<string> exceeding, IReadOnlyList<string> undetermined)
    {
        PeakVolts = peakVolts;
        PeakElements = peakElements;
        MaximumExcessVolts = maximumExcessVolts;
        Exceeding = exceeding;
        Undetermined = undetermined;
    }

    /// <summary>The peak of all determined voltages in volts (V), without sign; null where there is none.</summary>
    public double? PeakVolts { get; }

    /// <summary>The names of the elements at which the peak occurs.</summary>
    public IReadOnlyList<string> PeakElements { get; }

    /// <summary>By how many volts (V) the peak exceeds the rating; 0 where it does not.</summary>
    public double MaximumExcessVolts { get; }

    /// <summary>The names of the elements that exceed the rating.</summary>
    public IReadOnlyList<string> Exceeding { get; }

    /// <summary>The names of the elements with an undetermined voltage in at least one phase.</summary>
    public IReadOnlyList<string> Undetermined { get; }

    /// <summary>The peak voltage and what exceeds the rating.</summary>
    public override string ToString() =>
        $"{UnitText.Of(PeakVolts, "V")}{UnitText.Names(" at ", PeakElements)}{UnitText.Names("; ", Exceeding, $" over the rating by up to {UnitText.Of(MaximumExcessVolts, "V")}")}{UnitText.Names("; ", Undetermined, " undetermined")}";

    /// <summary>Rates the elements of one kind.</summary>
    /// <param name="elements">Each element's name and its voltages per volt of input, one or one per phase.</param>
    /// <param name="inputVolts">The input voltage in volts (V).</param>
    /// <param name="ratedVolts">The voltage in volts (V) that each element withstands.</param>
    internal static VoltageStress Of(IEnumerable<(string Name, IEnumerable<Quantity> Voltages)> elements, double inputVolts, double ratedVolts)
    {
        Fraction input = ExactDecimal.Of(inputVolts), rating = ExactDecimal.Of(ratedVolts);
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

            if (Excess(own) > 0)
            {
                exceeding.Add(name);
            }
        }

        return new VoltageStress(Volts(highest), [.. highestNames], Excess(highest), [.. exceeding], [.. undetermined]);

        double? Volts(Quantity voltage) => voltage.TryGetFraction(out Fraction exact) ? (exact * input).ToDouble()
            : voltage.IsDetermined ? voltage.ToDouble() * inputVolts
            : null;

        double Excess(Quantity voltage)
        {
            if (voltage.TryGetFraction(out Fraction exact))
            {
                Fraction excess = (exact * input) - rating;
                return excess.IsPositive ? excess.ToDouble() : 0;
            }

            double above = (Volts(voltage) ?? 0) - ratedVolts;
            return above > RelativeTolerance * ratedVolts ? above : 0;
        }
    }

    private static void Note(List<string> names, string name)
    {
        if (names.Count == 0 || names[^1] != name)
        {
            names.Add(name);
        }
    }
}
