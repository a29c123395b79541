using System.Globalization;

namespace ScNet.SteadyState;

/// <summary>The least and the greatest output impedance that tolerances allow.</summary>
/// <param name="LeastOhms">The least impedance in ohms (Ω).</param>
/// <param name="GreatestOhms">The greatest impedance in ohms (Ω).</param>
public readonly record struct ImpedanceRange(double LeastOhms, double GreatestOhms)
{
    /// <summary>Both ends in ohms.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{LeastOhms:G6} Ω to {GreatestOhms:G6} Ω");
}
