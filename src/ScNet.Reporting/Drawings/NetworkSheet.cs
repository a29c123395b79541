namespace ScNet.Reporting.Drawings;

/// <summary>A circuit as a sheet: what hangs together is one block, blocks without the reference stand in frames of their own.</summary>
internal static class NetworkSheet
{
    private const int FramePadding = 14;
    private const int Gap = 36;

    /// <summary>The sheet, without heading and notes.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="hasCharges">Whether charges stand on the parts.</param>
    public static Sheet Of(Circuit circuit, bool hasCharges)
    {
        Sheet sheet = new();
        foreach (int[] nets in Connected(circuit))
        {
            Sheet block = Block(circuit, nets, hasCharges);
            if (nets[0] == 0)
            {
                sheet.Add(block, 0, 0);
                continue;
            }

            const string Word = "floating";
            int left = sheet.Width + Gap;
            int inner = TextSize.Line + FramePadding;
            int width = Math.Max(block.Width, TextSize.Width(Word, LabelRole.Note)) + (2 * FramePadding);
            SheetBox frame = new(left, 0, left + width, inner + block.Height + FramePadding);
            sheet.Frames.Add(frame);
            sheet.Labels.Add(new SheetLabel(
                new SheetBox(left + FramePadding, 6, left + FramePadding + TextSize.Width(Word, LabelRole.Note), 6 + TextSize.Line), Word, LabelRole.Note));
            sheet.Add(block, left + FramePadding, inner);
            sheet.Width = frame.Right + 1;
            sheet.Height = Math.Max(sheet.Height, frame.Bottom + 1);
        }

        return sheet;
    }

    private static Sheet Block(Circuit circuit, int[] nets, bool hasCharges)
    {
        CircuitPart[] parts = [.. circuit.Parts.Where(p => nets.Contains(p.First))];
        if (parts.Length == 0)
        {
            return Lonely(circuit.Nets[nets[0]], nets[0]);
        }

        (RowPlan plan, int[] column, bool isSound) = Search(circuit, nets, liesLevel: true);
        if (!isSound)
        {
            (plan, column, _) = Search(circuit, nets, liesLevel: false);
        }

        return BlockDrawing.Of(circuit, plan, column, hasCharges);
    }

    private static (RowPlan Plan, int[] Column, bool IsSound) Search(Circuit circuit, int[] nets, bool liesLevel)
    {
        RowPlan plan = RowPlan.Of(circuit, nets, liesLevel);
        int[] distance = NetDistances.From(circuit, circuit.InputNet);
        int[] order = [.. Enumerable.Range(0, plan.Parts.Length)
            .OrderBy(p => plan.Parts[p].Part.Kind switch { PartKind.Source => 0, PartKind.Load => 3, PartKind.CurrentLoad => 2, _ => 1 })
            .ThenBy(p => Math.Min(Distance(plan.Parts[p].Part.First), Distance(plan.Parts[p].Part.Second)))
            .ThenBy(p => p)];
        return ColumnSearch.Find(plan, order);

        int Distance(int net) => net == 0 ? int.MaxValue : distance[net];
    }

    // a net that nothing but open switches touches
    private static Sheet Lonely(CircuitNet net, int number)
    {
        Sheet sheet = new();
        sheet.Dots.Add(new SheetDot(number, new(4, 8), IsOpen: true));
        int y = 1;
        foreach (SheetLabel line in NetLabel.Lines(net, 132))
        {
            sheet.Labels.Add(line with { Box = line.Box.Moved(14, y) });
            sheet.Width = Math.Max(sheet.Width, line.Box.Right + 14);
            y += TextSize.Line;
        }

        sheet.Height = y;
        return sheet;
    }

    // nets by what they hang together with, the reference's first
    private static IEnumerable<int[]> Connected(Circuit circuit)
    {
        int[] root = [.. Enumerable.Range(0, circuit.Nets.Count)];
        int Root(int net) => root[net] == net ? net : Root(root[net]);
        foreach (CircuitPart part in circuit.Parts)
        {
            (int first, int second) = (Root(part.First), Root(part.Second));
            root[Math.Max(first, second)] = Math.Min(first, second);
        }

        return Enumerable.Range(0, root.Length).GroupBy(Root).OrderBy(g => g.Key).Select(g => g.ToArray());
    }
}
