using ScNet.Design.Sizing;

namespace ScNet.Synthesis;

/// <summary>Refuses requests that make no sense.</summary>
internal static class RequestCheck
{
    public static void Of(SynthesisRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Ratios is not { Count: > 0 } || request.Ratios.Any(r => r is null) || request.Ratios.Select(r => r.Ratio).Distinct().Count() != request.Ratios.Count
            || request.Ratios.Any(r => r.Ratio.IsZero || r.Ratio.IsNaN || r.Ratio.IsInfinity))
        {
            throw new ArgumentException("Expected at least one ratio, each once, finite and not zero.", nameof(request));
        }

        InRange(nameof(request), request.CapacitorCount is >= 1 and <= SynthesisRequest.MostCapacitors, $"1 to {SynthesisRequest.MostCapacitors} capacitors", request.CapacitorCount);
        InRange(nameof(request), request.LargestStack is >= 1 and <= SynthesisRequest.DeepestStack, $"1 to {SynthesisRequest.DeepestStack} devices in a stack", request.LargestStack);
        InRange(nameof(request), double.IsFinite(request.LargestEffort) && request.LargestEffort > 0, "a positive effort", request.LargestEffort);
        InRange(nameof(request), Enum.IsDefined(request.Cost), "a known cost", request.Cost);
        foreach (WantedRatio wanted in request.Ratios)
        {
            InRange(nameof(request), IsVoltage(wanted.HighestInputVolts), "a positive input voltage", wanted.HighestInputVolts);
        }

        InRange(nameof(request), request.SwitchRatingVolts is not { } switches || IsVoltage(switches), "a positive rating of switches", request.SwitchRatingVolts);
        InRange(nameof(request), request.CapacitorRatingVolts is not { } capacitors || IsVoltage(capacitors), "a positive rating of capacitors", request.CapacitorRatingVolts);
        if (request.LeastLoss is { } aim)
        {
            Of(request, aim);
        }

        if (request.SwitchRatingVolts is null && (request.Cost != SynthesisCost.Switches || request.LargestStack != 1))
        {
            throw new ArgumentException("Expected a rating of switches, as devices are to be stacked or counted.", nameof(request));
        }
    }

    private static void Of(SynthesisRequest request, LossAim aim)
    {
        InRange(nameof(request), aim.FurtherCost is >= 0 and <= LossAim.MostFurtherCost, $"a further cost of 0 to {LossAim.MostFurtherCost}", aim.FurtherCost);
        foreach (WantedRatio wanted in request.Ratios)
        {
            InRange(nameof(request), wanted.LowestInputVolts is { } lowest && IsVoltage(lowest) && lowest <= wanted.HighestInputVolts, "a range of the input voltage for every ratio, as losses count", wanted.LowestInputVolts);
            InRange(nameof(request), double.IsFinite(wanted.Weight) && wanted.Weight is >= 1e-60 and <= 1e60, "a positive weight", wanted.Weight);
        }

        if (aim.Requirement is not { Contradictions: [] })
        {
            throw new ArgumentException("Expected a requirement without contradictions.", nameof(request));
        }

        if (!AreaBudget.Of(aim.Requirement).IsBounded)
        {
            throw new ArgumentException("Expected a requirement with an area for capacitors and switches, as sizes are to be found.", nameof(request));
        }

        if (request.HoldsAtChanges)
        {
            throw new ArgumentException("Expected either ratings that hold at changes of ratio or least loss, as both together are not searched.", nameof(request));
        }
    }

    private static bool IsVoltage(double volts) => volts is >= 1e-60 and <= 1e60;

    private static void InRange(string parameter, bool holds, string expected, object? actual)
    {
        if (!holds)
        {
            throw new ArgumentOutOfRangeException(parameter, actual, $"Expected {expected}.");
        }
    }
}
