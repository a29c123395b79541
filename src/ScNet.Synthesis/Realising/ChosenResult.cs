using ScNet.Stress;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis.Realising;

/// <summary>A choice as a result, judged by the ordinary analysis.</summary>
internal static class ChosenResult
{
    /// <summary>The result.</summary>
    /// <param name="request">The request.</param>
    /// <param name="name">The name of the converter.</param>
    /// <param name="steps">How many devices switches need.</param>
    /// <param name="choice">The choice.</param>
    /// <param name="bound">What every converter costs at least.</param>
    /// <param name="allowed">What this one may cost; null where that was not settled.</param>
    /// <param name="effort">The work that was done.</param>
    /// <exception cref="InvalidOperationException">The converter is not what was asked for: a mistake in this library.</exception>
    public static SynthesisResult Of(SynthesisRequest request, string name, DeviceSteps steps, Choice choice, int bound, int? allowed, double effort)
    {
        Converter converter = ChosenConverter.Of(name, request, choice);
        ConverterStress stress = ConverterCheck.Of(converter, request);
        int[] devices = [.. ConverterCheck.Devices(stress, request, steps)];
        int cost = devices.Sum(d => steps.Costs.Take(d).Sum());
        if (cost < bound || cost > allowed)
        {
            throw new InvalidOperationException($"The converter costs {cost}, but the least cost is {bound}, which is a mistake of this library.");
        }

        return new SynthesisResult(request, cost == bound ? SynthesisOutcome.Proved : SynthesisOutcome.BoundReached, null, bound, effort)
        {
            Converter = converter,
            Cost = cost,
            Stress = stress,
            Devices = new NamedList<int>([.. devices], converter.Switches.Names),
            Wirings = Array.AsReadOnly<IReadOnlyList<Search.Wiring>>([.. choice.Modes.Select(m => Array.AsReadOnly<Search.Wiring>([.. m.Select(s => s.Wiring)]))]),
        };
    }
}
