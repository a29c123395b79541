using System.Globalization;
using ScNet.Design.Losses;
using ScNet.Design.Maps;

namespace ScNet.Results.Pages;

/// <summary>An operating map as a page: a table per output voltage and load, then what it comes to over the discharge.</summary>
public static class MapPage
{
    private const string None = "-";

    /// <summary>The columns of each table.</summary>
    public static IReadOnlyList<PageColumn> Columns { get; } =
    [
        new("input", true, "inputVolts"), new("best mode", false, "mode"), new("frequency", true, "hertz"), new("duty", true, "duty"), new("efficiency", true, "efficiency"),
        new("linear", true, "linearEfficiency", "output over input voltage"),
        new("ideal", true, "idealEfficiency", "the lowest sufficient ratio of the modes without any other loss"),
        new("largest loss", false, "lossWatts"),
        new("stress", false, "stress.volts", "voltage of the element that is loaded most for its rating, without ripple"),
    ];

    /// <summary>The page.</summary>
    /// <param name="name">What is mapped: the name of the candidate.</param>
    /// <param name="map">The map.</param>
    /// <param name="life">What it comes to over a discharge; null where that is not asked for.</param>
    /// <param name="order">The positions of <see cref="OperatingMap.Points"/> in the order of the rows of each table; null for rising input voltages.</param>
    public static Page Of(string name, OperatingMap map, LifeEstimate? life = null, IReadOnlyList<int>? order = null)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(map);
        List<PageBlock> blocks = [];
        for (int o = 0; o < map.OutputVolts.Count; o++)
        {
            for (int l = 0; l < map.LoadAmperes.Count; l++)
            {
                bool isLast = (o, l) == (map.OutputVolts.Count - 1, map.LoadAmperes.Count - 1);
                blocks.Add(new PageHeading($"{EngineeringNumber.Of(map.OutputVolts[o], "V")} at {EngineeringNumber.Of(map.LoadAmperes[l], "A")}"));
                blocks.Add(new PageTable(string.Empty, Columns, PointsAt(map, o, l, order).Select(p => Row(p, name)), hasLegend: isLast));
            }
        }

        blocks.Add(new PageHeading("Over the map"));
        blocks.Add(new PageRemarks([
            $"{Cells.Percent(map.HeldShare).Text} of the points are held, {MissingModes.Of(map)}",
            .. GearCounts.Of(map).Select(count => $"best {count}"),
            .. life is null ? Array.Empty<string>() : [$"over the discharge: {life}"],
        ]));
        return new Page(name, blocks);
    }

    // of the points the load is fastest, then the output voltage
    private static IEnumerable<MapPoint> PointsAt(OperatingMap map, int output, int load, IReadOnlyList<int>? order) =>
        (order ?? [.. Enumerable.Range(0, map.Count)])
            .Where(k => k % map.LoadAmperes.Count == load && k / map.LoadAmperes.Count % map.OutputVolts.Count == output)
            .Select(k => map.At(k / map.LoadAmperes.Count / map.OutputVolts.Count, output, load));

    private static IEnumerable<PageCell> Row(MapPoint point, string name)
    {
        LossKind largest = Enum.GetValues<LossKind>().MaxBy(point.Best.LossOf);
        return
        [
            Cells.Of(point.InputVolts, "V"),
            ModeOf(point, name),
            point is { IsHeld: true, Best.FrequencyHz: > 0 } ? Cells.Of(point.Best.FrequencyHz, "Hz") : None,
            point.IsHeld && !double.IsNaN(point.Best.Duty) ? new PageCell(point.Best.Duty.ToString("F3", CultureInfo.InvariantCulture), point.Best.Duty) : None,
            Cells.Percent(point.Efficiency),
            Cells.Percent(point.LinearEfficiency),
            Cells.Percent(point.IdealEfficiency),
            point.IsHeld ? $"{LossPage.NameOf(largest)} {EngineeringNumber.Of(point.Best.LossOf(largest), "W")}" : None,
            point.Stress is { } stress ? new PageCell($"{stress.Element} {EngineeringNumber.Of(stress.Volts, "V")} of {EngineeringNumber.Of(stress.RatedVolts, "V")}", stress.Volts) : None,
        ];
    }

    // the name of the candidate stands above
    private static string ModeOf(MapPoint point, string name) => point.BestMode is not { } mode ? "none"
        : mode.Name.StartsWith(name + ", ", StringComparison.Ordinal) ? mode.Name[(name.Length + 2)..]
        : mode.Name;
}
