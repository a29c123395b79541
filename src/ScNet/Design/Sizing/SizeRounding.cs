using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>Brings sizes to whole numbers of steps.</summary>
internal static class SizeRounding
{
    /// <summary>The rounded design.</summary>
    public static SizedDesign Of(SizingTask task, SizedDesign design, SizeGrid grid)
    {
        SizedConverter from = design.Converter;
        double[] exact = [.. from.Capacitors.Select(c => c.AreaOfEachSquareMetres / grid.CapacitorSquareMetres), .. from.Switches.Select(s => s.WidthOfEachMicrometres / grid.WidthMicrometres)];
        double[] steps = [.. exact.Select(s => Math.Max(1, Math.Round(s)))];
        SizedConverter rounded = Build(task, from, steps, grid);
        for (Queue<int> gained = new(Enumerable.Range(0, steps.Length).Where(e => steps[e] > exact[e] && steps[e] > 1).OrderByDescending(e => steps[e] - exact[e]));
            gained.Count > 0 && IsTooLarge(rounded, task.Area);)
        {
            steps[gained.Dequeue()]--;
            rounded = Build(task, from, steps, grid);
        }

        List<UnreachablePoint> lost = [.. design.Unreachable];
        SizedPoint[] points = SizedDesign.Serve(task, rounded, design.Points.Select(p => (p.Point, p.FrequencyHz)), lost);
        return new SizedDesign(task, rounded, points, lost, null);
    }

    private static bool IsTooLarge(SizedConverter sized, AreaBudget area)
    {
        double capacitors = sized.Capacitors.Sum(c => c.AreaSquareMetres), switches = sized.Switches.Sum(s => s.AreaSquareMetres);
        return sized.AreaSquareMetres > area.TotalSquareMetres || capacitors > area.CapacitorSquareMetres || switches > area.SwitchSquareMetres;
    }

    private static SizedConverter Build(SizingTask task, SizedConverter from, double[] steps, SizeGrid grid)
    {
        double[] farads = [.. from.Capacitors.Select((c, i) => c.Farads * (steps[i] * grid.CapacitorSquareMetres / c.AreaOfEachSquareMetres))];
        double[] ohms = [.. from.Switches.Select((s, i) => s.Ohms * (s.WidthOfEachMicrometres / (steps[from.Capacitors.Count + i] * grid.WidthMicrometres)))];
        return SizedValues.Build(
            task.Analysis.Converter,
            task.Process,
            [.. from.Capacitors.Select(c => new ElementOption<CapacitorDevice>(c.Device, c.Count, c.HeldVolts))],
            [.. from.Switches.Select(s => new ElementOption<SwitchDevice>(s.Device, s.Count))],
            farads,
            ohms,
            []);
    }
}
