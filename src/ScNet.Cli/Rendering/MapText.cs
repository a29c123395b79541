using System.Globalization;
using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>An operating map for people: a table per output voltage and load, then what it comes to over the discharge.</summary>
internal static class MapText
{
    public static void Write(TextWriter output, string name, OperatingMap map, LifeEstimate life)
    {
        output.WriteLine(Printable.Of(name));
        for (int o = 0; o < map.OutputVolts.Count; o++)
        {
            for (int l = 0; l < map.LoadAmperes.Count; l++)
            {
                output.WriteLine();
                output.WriteLine($"{EngineeringNumber.Of(map.OutputVolts[o], "V")} at {EngineeringNumber.Of(map.LoadAmperes[l], "A")}");
                TextTable table = new TextTable("  ").Figures("input").Words("best mode").Figures("frequency").Figures("duty").Figures("efficiency")
                    .Figures("linear").Figures("ideal").Words("largest loss").Words("stress");
                for (int i = 0; i < map.InputVolts.Count; i++)
                {
                    table.Row(Cells(map.At(i, o, l), name));
                }

                table.Write(output);
            }
        }

        output.WriteLine();
        output.WriteLine(Printable.Of($"{Percent(map.HeldShare)} of the points are held, {MissingModes.Of(map)}"));
        foreach (GearCount count in GearCounts.Of(map))
        {
            output.WriteLine(Printable.Of($"best {count}"));
        }

        output.WriteLine(Printable.Of($"over the discharge: {life}"));
        output.WriteLine();
        output.WriteLine("ideal         the lowest sufficient ratio of the modes without any other loss; linear: output over input voltage");
        output.WriteLine("stress        voltage of the element that is loaded most for its rating, without ripple");
    }

    private static IEnumerable<string> Cells(MapPoint point, string name)
    {
        LossKind largest = Enum.GetValues<LossKind>().MaxBy(point.Best.LossOf);
        return
        [
            EngineeringNumber.Of(point.InputVolts, "V"),
            Printable.Of(ModeOf(point, name)),
            point is { IsHeld: true, Best.FrequencyHz: > 0 } ? EngineeringNumber.Of(point.Best.FrequencyHz, "Hz") : "–",
            point.IsHeld && !double.IsNaN(point.Best.Duty) ? point.Best.Duty.ToString("F3", CultureInfo.InvariantCulture) : "–",
            Percent(point.Efficiency),
            Percent(point.LinearEfficiency),
            Percent(point.IdealEfficiency),
            point.IsHeld ? $"{LossText.NameOf(largest)} {EngineeringNumber.Of(point.Best.LossOf(largest), "W")}" : "–",
            Printable.Of(point.Stress is { } stress ? $"{stress.Element} {EngineeringNumber.Of(stress.Volts, "V")} of {EngineeringNumber.Of(stress.RatedVolts, "V")}" : "–"),
        ];
    }

    // the name of the candidate stands above
    private static string ModeOf(MapPoint point, string name) => point.BestMode is not { } mode ? "none"
        : mode.Name.StartsWith(name + ", ", StringComparison.Ordinal) ? mode.Name[(name.Length + 2)..]
        : mode.Name;

    private static string Percent(double? fraction) => fraction is { } share ? string.Create(CultureInfo.InvariantCulture, $"{share * 100:F1} %") : "–";
}
