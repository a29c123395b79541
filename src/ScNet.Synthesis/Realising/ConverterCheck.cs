using Fractions;
using ScNet.Analysis;
using ScNet.Stress;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis.Realising;

/// <summary>Holds a made converter to what was asked, by the ordinary analysis.</summary>
internal static class ConverterCheck
{
    /// <summary>The stress of a converter that does what was asked.</summary>
    /// <exception cref="InvalidOperationException">It does not: a mistake in this library.</exception>
    public static ConverterStress Of(Converter converter, SynthesisRequest request)
    {
        ConverterAnalysis analysis = ConverterAnalysis.Of(converter);
        for (int m = 0; m < request.Ratios.Count; m++)
        {
            Require(
                analysis.Modes[m].Analysis is { } mode && mode.Ratio.TryGetFraction(out Fraction ratio) && ratio == request.Ratios[m].Ratio,
                $"mode '{converter.Modes[m].Name}' makes {analysis.Modes[m].Analysis?.Ratio.ToString() ?? "nothing"}");
        }

        ConverterStress stress = ConverterStress.Of(
            analysis,
            Intervals.Point(request.Ratios[0].HighestInputVolts),
            inputVoltsOfModes: request.Ratios.Select((r, m) => (converter.Modes[m].Name, r)).ToDictionary(x => x.Name, x => Intervals.Point(x.r.HighestInputVolts)));
        DeviceSteps steps = DeviceSteps.Of(request);
        foreach (SwitchStress found in Asked(stress, request))
        {
            Require(found.IsDetermined && DevicesOf(found, steps) <= steps.Costs.Count, $"switch '{found.Switch.Name}' blocks {found}");
        }

        foreach (Switch @switch in converter.Switches)
        {
            SwitchStress[] open = [stress.Switches[@switch.Name], .. IncludesChanges(request) ? stress.Changes.Select(c => c.OpenSwitches[@switch.Name]) : []];
            Require(
                !request.BlocksOneWay || open.All(o => o.PeakPositive is null) || open.All(o => o.PeakNegative is null),
                $"switch '{@switch.Name}' blocks both ways");
        }

        foreach (CapacitorStress found in stress.Capacitors)
        {
            Require(
                request.CapacitorRatingVolts is not { } rating || (found.Peak is { } peak && peak.ExactVolts.Abs() <= ExactDecimal.Of(rating)),
                $"capacitor '{found.Capacitor.Name}' holds {found}");
        }

        return stress;
    }

    /// <summary>The devices of each switch.</summary>
    public static IEnumerable<int> Devices(ConverterStress stress, SynthesisRequest request, DeviceSteps steps) =>
        stress.Switches.Select(s => Asked(stress, request).Where(a => a.Switch == s.Switch).Max(a => DevicesOf(a, steps)));

    private static IEnumerable<SwitchStress> Asked(ConverterStress stress, SynthesisRequest request) =>
        IncludesChanges(request) ? stress.Switches.Concat(stress.SwitchesAtChanges) : stress.Switches;

    private static bool IncludesChanges(SynthesisRequest request) => request.HoldsAtChanges && request.Ratios.Count > 1;

    private static int DevicesOf(SwitchStress stress, DeviceSteps steps) => Math.Max(1, stress.Peak is { } peak ? steps.Devices(peak.ExactVolts) : 0);

    private static void Require(bool holds, string what)
    {
        if (!holds)
        {
            throw new InvalidOperationException($"The chosen converter is not what was asked for, which is a mistake of this library: {what}.");
        }
    }
}
