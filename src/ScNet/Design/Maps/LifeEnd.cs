using ScNet.Design.Regulation;
using ScNet.Design.Requirements;

namespace ScNet.Design.Maps;

/// <summary>Where a state of the load is not held any longer.</summary>
/// <param name="StateOfCharge">The share of the charge that is left.</param>
/// <param name="OpenVolts">Open voltage of the cell in volts (V).</param>
/// <param name="Load">The state of the load that is lost first, in the order given.</param>
/// <param name="Reasons">Why each mode does not hold it, by the order of the modes, at the open voltage or, where it would do there, for want of current from the source.</param>
public sealed record LifeEnd(double StateOfCharge, double OpenVolts, LoadShare Load, IReadOnlyList<string> Reasons)
{
    /// <summary>The state of the load that is lost first, in the order given.</summary>
    public LoadShare Load { get; init => field = Guard.Given(value, nameof(Load)); } = Guard.Given(Load, nameof(Load));

    /// <summary>The voltage and the load.</summary>
    public override string ToString() =>
        $"'{Load.Name}' is lost at {EngineeringNumber.Of(OpenVolts, "V")} with {UnitText.Percent(StateOfCharge)} of the charge left";

    internal static LifeEnd Of(DischargeSlice slice, LoadShare load, IReadOnlyList<RegulatedMode> modes) => new(
        slice.StateOfCharge, slice.OpenVolts, load, [.. modes.Select(m => m.ReasonAt(slice.OpenVolts, load.OutputVolts!.Value, load.Amperes) is { Length: > 0 } reason
            ? reason : "the resistance of the source takes too much")]);
}
