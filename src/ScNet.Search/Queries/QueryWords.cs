using Fractions;

namespace ScNet.Search.Queries;

/// <summary>A query in words.</summary>
internal static class QueryWords
{
    /// <summary>Ratio, size and ratings.</summary>
    public static string Of(AtlasQuery query) => string.Join(", ", [
        $"{Ratios(query.Ratios)} by {Size(query.CapacitorCount)}{(query.PhaseCount == 2 ? string.Empty : " in two or three phases")}",
        .. Rating.Of(query).Select(r => r.ToString()),
    ]);

    /// <summary><c>2/5</c>, or <c>1/3 to 1/2</c>.</summary>
    public static string Ratios(Interval<Fraction> ratios) => ratios.ToString();

    /// <summary><c>up to 3 flying capacitors</c>.</summary>
    public static string Size(int capacitors) => capacitors == 1 ? "one flying capacitor" : FormattableString.Invariant($"up to {capacitors} flying capacitors");

    /// <summary><c>two-phase networks of up to 3 flying capacitors</c>, or <c>networks of two or three phases and up to 3 flying capacitors</c>.</summary>
    public static string Networks(AtlasQuery query, bool isOne) => query.PhaseCount == 2
        ? $"two-phase {(isOne ? "network" : "networks")} of {Size(query.CapacitorCount)}"
        : $"{(isOne ? "network" : "networks")} of two or three phases and {Size(query.CapacitorCount)}";

    /// <summary>A measure in words.</summary>
    public static string Of(NetworkMeasure measure) => measure switch
    {
        NetworkMeasure.CapacitorChargeVoltage => "charge–voltage product of the capacitors",
        NetworkMeasure.SwitchChargeVoltage => "charge–voltage product of the switches",
        NetworkMeasure.SwitchCount => "number of switches",
        NetworkMeasure.HighestCapacitorVoltage => "highest capacitor voltage",
        NetworkMeasure.HighestSwitchVoltage => "highest switch voltage",
        NetworkMeasure.PlateSwing => "plate swing",
        NetworkMeasure.CapacitorCharge => "charge of the capacitors",
        _ => "charge of the switches",
    };
}
