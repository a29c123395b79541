using ScNet.Design.Requirements;
using ScNet.Design.Sizing;

namespace ScNet.Synthesis.Realising;

/// <summary>The points at which a request's losses count.</summary>
internal static class LossPoints
{
    // ends and middle of an input range, by the trapezoidal rule
    private static readonly (double Place, double Share)[] s_places = [(0, 0.25), (0.5, 0.5), (1, 0.25)];

    /// <summary>The points, their weights adding up to 1; the modes bear the names that <see cref="ChosenConverter"/> gives them.</summary>
    public static IReadOnlyList<SizingPoint> Of(SynthesisRequest request)
    {
        IReadOnlyList<LoadShare> loads = AskedPoints.Loads(request.LeastLoss!.Requirement);
        double weights = request.Ratios.Sum(r => r.Weight);
        return Array.AsReadOnly<SizingPoint>([..
            from wanted in request.Ratios
            from place in PlacesOf(wanted)
            from load in loads
            select new SizingPoint(ChosenConverter.NameOf(wanted), place.Volts, load.OutputVolts, load.Amperes, wanted.Weight / weights * place.Share * load.Share)]);
    }

    /// <summary>What the ratios lose at the points whatever makes them, in watts: the voltage that is left over, times the current.</summary>
    public static double LeastWatts(SynthesisRequest request, IReadOnlyList<SizingPoint> points) =>
        points.Sum(p => p.Weight * p.LoadAmperes * RoomVolts(request, p));

    /// <summary>The points whose output is above what the ratio makes even without load.</summary>
    public static IEnumerable<SizingPoint> Beyond(SynthesisRequest request, IReadOnlyList<SizingPoint> points) => points.Where(p => RoomVolts(request, p) <= 0);

    private static double RoomVolts(SynthesisRequest request, SizingPoint point) =>
        (Math.Abs(request.Ratios.First(r => ChosenConverter.NameOf(r) == point.Mode).Ratio.ToDouble()) * point.InputVolts) - point.OutputVolts!.Value;

    private static (double Volts, double Share)[] PlacesOf(WantedRatio wanted) => wanted.LowestInputVolts!.Value is var low && low < wanted.HighestInputVolts
        ? [.. s_places.Select(p => (low + (p.Place * (wanted.HighestInputVolts - low)), p.Share))]
        : [(low, 1)];
}
