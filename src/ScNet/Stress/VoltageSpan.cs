using Fractions;

namespace ScNet.Stress;

/// <summary>The bounds of one voltage and what they rest on. The default is undetermined.</summary>
[ShownAsText("Two ends fit in a line.")]
public readonly record struct VoltageSpan
{
    internal VoltageSpan(Interval<Fraction> perVoltOfInput, VoltageBasis basis)
    {
        PerVoltOfInput = perVoltOfInput.IsDetermined ? perVoltOfInput : default;
        Basis = perVoltOfInput.IsDetermined ? basis : VoltageBasis.Undetermined;
    }

    /// <summary>The bounds per volt of input: one value where the voltage is fixed, undetermined where nothing bounds it.</summary>
    public Interval<Fraction> PerVoltOfInput { get; }

    /// <summary>What the bounds rest on.</summary>
    public VoltageBasis Basis { get; }

    /// <summary>Whether there are bounds.</summary>
    public bool IsDetermined => PerVoltOfInput.IsDetermined;

    /// <summary>"1/3", "0 to 1/3 (floating)" or "?".</summary>
    public override string ToString() => Basis switch
    {
        VoltageBasis.Idle => $"{PerVoltOfInput} (idle)",
        VoltageBasis.Surge => $"{PerVoltOfInput} (surge)",
        VoltageBasis.Floating => $"{PerVoltOfInput} (floating)",
        _ => $"{PerVoltOfInput}",
    };

    internal static VoltageSpan Fixed(Fraction value) => new(Intervals.Point(value), VoltageBasis.Fixed);

    /// <summary>What holds both, undetermined where one of them is; of two bases the less certain one.</summary>
    internal VoltageSpan Hull(VoltageSpan other) => new(PerVoltOfInput.Hull(other.PerVoltOfInput), Basis > other.Basis ? Basis : other.Basis);
}
