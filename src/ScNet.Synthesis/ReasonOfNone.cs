using System.Globalization;
using Fractions;
using ScNet.Synthesis.Candidates;
using ScNet.Synthesis.Realising;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis;

/// <summary>Says why no converter does what was asked.</summary>
internal static class ReasonOfNone
{
    /// <summary>A ratio that no network of so many capacitors makes; null where all are made.</summary>
    public static string? Without(SynthesisRequest request, ModeCandidates[] modes, RatioCandidates[] found)
    {
        string[] missing = [.. modes.Where(m => m.Pairs.Count == 0).Select(m => Quantity.Exact(m.Wanted.Ratio).ToString())];
        return missing.Length == 0
            ? null
            : $"no network of {Capacitors(request)} makes {string.Join(" or ", missing)} in two phases: of so many, no ratio has a numerator or denominator above {found[0].LargestTerm}";
    }

    /// <summary>Why a ratio that networks make cannot be made within the ratings even alone.</summary>
    public static string Alone(SynthesisRequest request, ModeCandidates mode, CancellationToken cancellation)
    {
        string network = $"network of {Capacitors(request)} that makes {mode.Wanted.Ratio} from {Volts(mode.Wanted.HighestInputVolts)}";
        if (mode.Pairs.Count == 0)
        {
            return $"every {network} has a capacitor above {Volts(request.CapacitorRatingVolts!.Value)}";
        }

        ModeCandidates kinds = mode.OneOfEachKind();
        if (LowestPeak(request, kinds, cancellation) is not { } lowest)
        {
            return $"every {network} has a switch that blocks both ways";
        }

        string stack = request.LargestStack == 1 ? "one device" : $"a stack of {request.LargestStack.ToString(CultureInfo.InvariantCulture)} devices";
        return $"every {network} has a switch that blocks {Volts(lowest.ToDouble())} or more{(request.BlocksOneWay ? " if all block one way" : "")}, and {stack} blocks {Volts(request.LargestStack * request.SwitchRatingVolts!.Value)}";
    }

    /// <summary>Why ratios that are made alone cannot be made together.</summary>
    public static string Together(SynthesisRequest request) =>
        $"each ratio alone can be made with {Capacitors(request)}, but no set of switches within the limits makes all of them{(request.HoldsAtChanges ? " and holds at changes between them" : "")}";

    /// <summary>A ratio whose output is too low even without load where losses count; null where none is.</summary>
    public static string? Beyond(SynthesisRequest request) => LossPoints.Beyond(request, LossPoints.Of(request)).FirstOrDefault() is { } point
        ? $"{point.Mode} makes no {Volts(point.OutputVolts!.Value)} from {Volts(point.InputVolts)}, even without load"
        : null;

    /// <summary>Why none of the converters that cost little enough does, with an example.</summary>
    public static string Held(SynthesisRequest request, int count, int allowed, string example) =>
        $"{(count == 1 ? "the only converter" : $"none of {UnitText.Count(count, "converter", "converters")}")} of at most {CostText.Of(request.Cost, allowed)} {(count == 1 ? "does not hold the output at every point, for this reason" : "holds the output at every point, one of them for this reason")}: {example}";

    // the lowest highest voltage of a switch, by halving among all voltages that occur
    private static Fraction? LowestPeak(SynthesisRequest request, ModeCandidates mode, CancellationToken cancellation)
    {
        Fraction[] levels = [..
            (from pair in mode.Pairs
             from state in mode.Groups[pair.First].States.Concat(mode.Groups[pair.Second].States)
             from place in SwitchPlace.All(request.CapacitorCount)
             select mode.Volts(state, place.First, place.Second).Abs()).Where(v => !v.IsZero).Distinct().Order()];
        if (!IsPossible(request, mode, null, cancellation))
        {
            return null;
        }

        int low = 0, high = levels.Length - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = IsPossible(request, mode, levels[middle], cancellation) ? (low, middle) : (middle + 1, high);
        }

        return levels[low];
    }

    private static bool IsPossible(SynthesisRequest request, ModeCandidates mode, Fraction? ratingVolts, CancellationToken cancellation) =>
        SolvedModel.Of(SynthesisModel.Of(request.CapacitorCount, [mode], new DeviceSteps(ratingVolts, [0]), request.BlocksOneWay), 0, request.LargestEffort, cancellation).Choice is not null;

    private static string Capacitors(SynthesisRequest request) => UnitText.Count(request.CapacitorCount, "flying capacitor", "flying capacitors");

    private static string Volts(double volts) => UnitText.Of(volts, "V");
}
