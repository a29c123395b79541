using Fractions;

namespace ScNet.Synthesis.Solving;

/// <summary>How many devices a switch needs, and what each one adds to the cost.</summary>
/// <param name="RatingVolts">What one device blocks; null where it blocks anything.</param>
/// <param name="Costs">What the first device of a stack adds to the cost, and each further one; there are no deeper stacks.</param>
internal sealed record DeviceSteps(Fraction? RatingVolts, IReadOnlyList<int> Costs)
{
    /// <summary>The devices that stand a voltage, one more than <see cref="Costs"/> has where none do; 0 where there is nothing to block.</summary>
    public int Devices(Fraction volts)
    {
        int devices = volts.IsZero ? 0 : 1;
        while (devices > 0 && devices <= Costs.Count && RatingVolts is { } rating && volts.Abs() > devices * rating)
        {
            devices++;
        }

        return devices;
    }

    /// <summary>The steps of a request.</summary>
    public static DeviceSteps Of(SynthesisRequest request) => new(
        request.SwitchRatingVolts is { } rating ? ExactDecimal.Of(rating) : null,
        [.. Enumerable.Range(0, request.SwitchRatingVolts is null ? 1 : request.LargestStack).Select(n => request.Cost switch
        {
            SynthesisCost.Switches => n == 0 ? 1 : 0,
            SynthesisCost.Devices => 1,
            _ => (2 * n) + 1,
        })]);
}
