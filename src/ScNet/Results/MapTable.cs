using System.Text.Json;
using ScNet.Design.Losses;
using ScNet.Design.Maps;

namespace ScNet.Results;

/// <summary>The points of a map, the best mode of each and what it does, as a document for other programs.</summary>
internal static class MapTable
{
    private static readonly Figure<MapPoint>[] s_figures =
    [
        new("inputVolts", p => p.InputVolts),
        new("outputVolts", p => p.OutputVolts),
        new("loadAmperes", p => p.LoadAmperes),
        new("mode", p => p.BestMode?.Name),
        new("outcome", p => p.IsHeld ? Key(p.Best.Outcome) : null),
        new("hertz", p => p.IsHeld ? p.Best.FrequencyHz : null),
        new("duty", p => p.IsHeld && !double.IsNaN(p.Best.Duty) ? p.Best.Duty : null),
        new("efficiency", p => p.Efficiency),
        new("linearEfficiency", p => p.LinearEfficiency),
        new("idealEfficiency", p => p.IdealEfficiency),
        new("inputWatts", p => p.IsHeld ? p.Best.InputWatts : null),
        .. Enum.GetValues<LossKind>().Select(kind => new Figure<MapPoint>($"lossWatts.{Key(kind)}", p => p.IsHeld ? p.Best.LossOf(kind) : null)),
        new("stress.element", p => p.Stress?.Element),
        new("stress.volts", p => p.Stress?.Volts),
        new("stress.ratedVolts", p => p.Stress?.RatedVolts),
        new("usableModes", p => p.UsableModes.Select(m => m.Name), HasColumn: false),
    ];

    /// <summary>The columns of the CSV text.</summary>
    public static IReadOnlyList<string> Columns { get; } = ResultTable.OfAny([], s_figures, []).Columns;

    /// <summary>The table: a row per point, the load fastest, then the output voltage.</summary>
    /// <param name="map">The map.</param>
    public static ResultTable Of(OperatingMap map) => ResultTable.OfAny(
        [new("modes", map.Modes.Select(m => m.Name)), new("heldShare", map.HeldShare), new("averageEfficiency", map.AverageEfficiency)], s_figures, map.Points);

    private static string Key<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}
