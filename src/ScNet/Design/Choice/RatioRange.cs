using Fractions;
using ScNet.Design.Requirements;

namespace ScNet.Design.Choice;

/// <summary>The ratios of output to input voltage that a requirement asks for.</summary>
internal static class RatioRange
{
    /// <summary>From the least output at the highest input to the highest output at the least input.</summary>
    public static Interval<Fraction> Of(Requirement requirement)
    {
        double[] outputs = [.. requirement.OutputVolts, .. requirement.Loads.Select(l => l.OutputVolts).OfType<double>()];
        return new Interval<Fraction>(
            ExactDecimal.Of(outputs.Min()) / ExactDecimal.Of(requirement.InputVolts.Maximum!.Value),
            ExactDecimal.Of(outputs.Max()) / ExactDecimal.Of(requirement.InputVolts.Minimum!.Value));
    }

    /// <summary>A ratio as the name of a mode: "1/3".</summary>
    public static string Text(Fraction ratio) => Quantity.Exact(ratio).ToString();
}
