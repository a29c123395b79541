using Fractions;

namespace ScNet.Stress;

/// <summary>The bounds of one voltage, per volt of input, and what they rest on. The default is undetermined.</summary>
public readonly struct VoltageSpan : IEquatable<VoltageSpan>
{
    private VoltageSpan(Quantity lowest, Quantity highest, VoltageBasis basis)
    {
        Lowest = lowest;
        Highest = highest;
        Basis = basis;
    }

    /// <summary>The lowest value, per volt of input; undetermined where nothing bounds it.</summary>
    public Quantity Lowest { get; }

    /// <summary>The highest value, per volt of input; undetermined where nothing bounds it.</summary>
    public Quantity Highest { get; }

    /// <summary>What the bounds rest on.</summary>
    public VoltageBasis Basis { get; }

    /// <summary>Whether there are bounds.</summary>
    public bool IsDetermined => Basis != VoltageBasis.Undetermined;

    /// <summary>Whether both bounds are one value.</summary>
    public bool IsPoint => IsDetermined && Lowest == Highest;

    /// <inheritdoc/>
    public bool Equals(VoltageSpan other) => Lowest == other.Lowest && Highest == other.Highest && Basis == other.Basis;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is VoltageSpan other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Lowest, Highest, Basis);

    /// <summary>Whether bounds and basis are equal.</summary>
    public static bool operator ==(VoltageSpan left, VoltageSpan right) => left.Equals(right);

    /// <summary>Whether bounds or basis differ.</summary>
    public static bool operator !=(VoltageSpan left, VoltageSpan right) => !left.Equals(right);

    /// <summary>"1/3", "0 to 1/3 (floating)" or "?".</summary>
    public override string ToString()
    {
        string text = IsPoint ? $"{Lowest}" : $"{Lowest} to {Highest}";
        return Basis switch
        {
            VoltageBasis.Undetermined => "?",
            VoltageBasis.Surge => $"{text} (surge)",
            VoltageBasis.Floating => $"{text} (floating)",
            _ => text,
        };
    }

    internal static VoltageSpan Of(Interval interval, VoltageBasis basis) => interval.IsBounded
        ? new VoltageSpan(Quantity.Exact(interval.Low), Quantity.Exact(interval.High), basis)
        : default;

    internal static VoltageSpan Fixed(Fraction value) => Of(Interval.Point(value), VoltageBasis.Fixed);

    internal Interval ToInterval() => IsDetermined ? Interval.Of(Lowest.ToFraction(), Highest.ToFraction()) : Interval.Unbounded;
}
