using Fractions;

namespace ScNet.Search;

/// <summary>A switch of a searched network.</summary>
/// <param name="First">Its first terminal, see <see cref="Terminals"/>.</param>
/// <param name="Second">Its second terminal.</param>
/// <param name="ClosedPhases">The phases, from 1, in which it is closed.</param>
/// <param name="Charges">Per phase the charge from first to second terminal, per unit of charge to the output.</param>
/// <param name="Voltages">Per phase the voltage that it blocks, first less second terminal per volt of input; 0 where it is closed.</param>
public sealed record NetworkSwitch(
    int First, int Second, IReadOnlyList<int> ClosedPhases, IReadOnlyList<Fraction> Charges, IReadOnlyList<Fraction> Voltages)
{
    /// <summary>The largest magnitude of <see cref="Voltages"/>.</summary>
    public Fraction PeakVoltage => Voltages.Max(v => v.Abs());

    /// <summary>It blocks in one direction only.</summary>
    public bool BlocksOneWay => Voltages.All(v => !v.IsNegative) || Voltages.All(v => !v.IsPositive);
}
