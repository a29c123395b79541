namespace ScNet.Reporting.Drawings;

/// <summary>In which phases each switch is closed: a line per switch, a bar where it is closed, lengths to the scale of the duties.</summary>
internal static class TimingStrip
{
    private const int Row = 20;
    private const int Bar = 10;
    private const int LeastWidth = 180;
    private const int MostWidth = 420;

    public static Sheet Of(Converter converter, Mode mode)
    {
        Sheet sheet = new();
        int left = converter.Switches.Max(s => TextSize.Width(TextSize.Fitting(s.Name))) + 10;
        string[] names = [.. converter.Phases.Select(NetworkWords.Short)];
        double[] duties = [.. converter.Phases.Select(p => p.Duty.ToDouble())];
        int width = Math.Clamp((int)Math.Ceiling(names.Select((n, j) => (TextSize.Width(n) + 10) / duties[j]).Max()), LeastWidth, MostWidth);
        int[] edges = new int[names.Length + 1];
        double sum = 0;
        edges[0] = left;
        for (int j = 0; j < names.Length; j++)
        {
            sum += duties[j];
            edges[j + 1] = Math.Max(edges[j] + 2, left + (int)Math.Round(sum * width));
        }

        int top = Names(sheet, names, edges);
        int bottom = top + (converter.Switches.Count * Row);
        foreach (int edge in edges)
        {
            sheet.Rules.Add(new SheetWire(-1, new(edge, top), new(edge, bottom)));
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            string name = TextSize.Fitting(converter.Switches[s].Name);
            int y = top + (s * Row) + (Row / 2);
            int textWidth = TextSize.Width(name);
            sheet.Labels.Add(new SheetLabel(new SheetBox(left - 8 - textWidth, y - (TextSize.Line / 2), left - 8, y + (TextSize.Line / 2)), name, LabelRole.Part));
            int[] closed = [.. mode.ClosedPhases[s]];
            for (int i = 0; i < closed.Length; i++)
            {
                int first = closed[i];
                while (i + 1 < closed.Length && closed[i + 1] == closed[i] + 1)
                {
                    i++;
                }

                sheet.Bars.Add(new SheetBox(edges[first - 1], y - (Bar / 2), edges[closed[i]], y + (Bar / 2)));
            }
        }

        sheet.Width = Math.Max(sheet.Width, edges[^1] + 1);
        sheet.Height = bottom + 1;
        return sheet;
    }

    // above its phase where it fits; else with a line down to where the phase begins, later ones lower
    private static int Names(Sheet sheet, string[] names, int[] edges)
    {
        int[] level = new int[names.Length];
        int[] start = new int[names.Length];
        bool[] fits = new bool[names.Length];
        for (int j = names.Length - 1; j >= 0; j--)
        {
            int width = TextSize.Width(names[j]);
            fits[j] = width + 6 <= edges[j + 1] - edges[j];
            start[j] = fits[j] ? edges[j] + ((edges[j + 1] - edges[j] - width) / 2) : edges[j] + 4;
            for (int k = j + 1; k < names.Length; k++)
            {
                if (Math.Min(start[k], edges[k]) < start[j] + width + 8)
                {
                    level[j] = Math.Max(level[j], level[k] + 1);
                }
            }
        }

        int top = (level.Max() + 1) * (TextSize.Line + 2) + 2;
        for (int j = 0; j < names.Length; j++)
        {
            int y = top - 2 - ((level[j] + 1) * (TextSize.Line + 2));
            int right = start[j] + TextSize.Width(names[j]);
            sheet.Labels.Add(new SheetLabel(new SheetBox(start[j], y, right, y + TextSize.Line), names[j], LabelRole.Note));
            sheet.Width = Math.Max(sheet.Width, right + 1);
            if (!fits[j])
            {
                sheet.Rules.Add(new SheetWire(-1, new(edges[j], y), new(edges[j], top)));
            }
        }

        return top;
    }
}
