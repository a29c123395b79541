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

        Converter plain = task.Converter.WithValues(
            [.. rounded.Converter.Capacitors.Select(c => c.Farads)], [.. rounded.Converter.Switches.Select(s => s.Ohms)], [.. rounded.Converter.Capacitors.Select(c => c.EsrOhms)]);
        SizedMode[] modes = [.. task.Modes.Select(m => SizedMode.Of(m, plain, task.FrequencyHz, task.Process.WiringOhms))];
        List<SizedPoint> kept = [];
        List<UnreachablePoint> lost = [];
        foreach (SizedPoint point in design.Points)
        {
            SizedMode mode = modes[task.ModeOf(point.Point)];
            double needed = task.NeededOhms(point.Point);
            double frequency = point.Point.OutputVolts is null ? point.FrequencyHz : mode.FrequencyOf(needed);
            double ohms = mode.Ohms(frequency);
            if (ohms > needed * (1 + 1e-9))
            {
                lost.Add(new UnreachablePoint(point.Point, needed, ohms, isAlone: false));
                continue;
            }

            kept.AddRange(SizedDesign.Serve(task, rounded, [point.Point], modes, [frequency]));
        }

        return new SizedDesign(task, rounded, [.. kept], [.. design.Unreachable, .. lost], null);
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
            [.. from.Capacitors.Select(c => new ElementOption<CapacitorDevice>(c.Device, c.Count))],
            [.. from.Switches.Select(s => new ElementOption<SwitchDevice>(s.Device, s.Count))],
            farads,
            ohms,
            task.Inductors);
    }
}
