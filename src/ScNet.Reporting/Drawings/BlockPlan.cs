namespace ScNet.Reporting.Drawings;

/// <summary>Parts of a drawing in their columns, with the rows as far apart as symbols and texts need.</summary>
internal sealed class BlockPlan
{
    private const int Below = 12;
    private const int Above = 8;
    private const int LeastGap = 28;
    private const int LabelWidth = 120;
    private const int LabelWidthPerColumn = 40;

    public BlockPlan(Circuit circuit, RowPlan plan, int[] column, bool hasCharges)
    {
        Circuit = circuit;
        Plan = plan;
        Column = column;
        Arrow = hasCharges ? SymbolSize.Arrow : 0;
        Reach = [.. Enumerable.Range(0, plan.LineNet.Length).Select(ReachOf)];
        foreach (int net in plan.LineNet.Distinct())
        {
            (int minimum, int maximum) = Reach[PrimaryLine(net)];
            NetLabels[net] = NetLabel.Lines(circuit.Nets[net], LabelWidth + (LabelWidthPerColumn * (maximum - minimum)));
        }

        GapOf = SymbolGaps.Of(plan);
        (RowY, CellTop) = Rows();
        Height = RowY[^1] + (plan.LineNet.Contains(0) ? SymbolSize.EarthHeight + 8 : Below + 2);
    }

    public Circuit Circuit { get; }

    public RowPlan Plan { get; }

    /// <summary>The column of each part.</summary>
    public int[] Column { get; }

    /// <summary>The length of the wire that carries an arrow; 0 without charges.</summary>
    public int Arrow { get; }

    /// <summary>The first and the last column that each line reaches.</summary>
    public (int Minimum, int Maximum)[] Reach { get; }

    /// <summary>The y of each row.</summary>
    public int[] RowY { get; }

    /// <summary>Where the symbols below each row begin.</summary>
    public int[] CellTop { get; }

    /// <summary>The row above the symbol of each part, as <see cref="SymbolGaps"/> has it.</summary>
    public int[] GapOf { get; }

    /// <summary>The text of each net.</summary>
    public Dictionary<int, IReadOnlyList<SheetLabel>> NetLabels { get; } = [];

    /// <summary>The height of all (px).</summary>
    public int Height { get; }

    /// <summary>The length of a symbol with its arrow.</summary>
    public int Cell => SymbolSize.Body + Arrow;

    /// <summary>The line of a net that carries its text.</summary>
    public int PrimaryLine(int net) => Array.IndexOf(Plan.LineNet, net);

    /// <summary>Whether the part of a column lies along a row.</summary>
    public bool IsLevelAt(int column) => Plan.Parts.Where((_, p) => Column[p] == column && Plan.IsLevel(p)).Any();

    /// <summary>Whether the first terminal of a part along a row is its left one.</summary>
    public bool IsFirstLeft(int part)
    {
        ((int minimum, int maximum), (int other, _)) = (Reach[Plan.Parts[part].First], Reach[Plan.Parts[part].Second]);
        return minimum < other || (minimum == other && maximum == Column[part]);
    }

    private (int, int) ReachOf(int line)
    {
        IEnumerable<int> columns = Plan.Parts.Select((p, i) => (p, i)).Where(x => x.p.First == line || x.p.Second == line).Select(x => Column[x.i]);
        return (columns.Min(), columns.Max());
    }

    private (int[] Y, int[] CellTop) Rows()
    {
        int rows = Plan.RowCount;
        int[] below = new int[rows];
        int[] above = new int[rows];
        Array.Fill(below, Below);
        Array.Fill(above, Above);
        foreach ((int net, IReadOnlyList<SheetLabel> lines) in NetLabels.Where(n => n.Key != 0))
        {
            int row = Plan.LineRow[PrimaryLine(net)];
            above[row] = Math.Max(above[row], (lines.Count * TextSize.Line) + 6);
        }

        bool[] hasSymbol = new bool[rows];
        for (int p = 0; p < Plan.Parts.Length; p++)
        {
            (int row, int bottom) = Plan.Rows(p);
            if (row == bottom)
            {
                above[row] = Math.Max(above[row], 12 + TextSize.Line + 4);
                below[row] = Math.Max(below[row], 8 + TextSize.Line + 4);
            }
            else if (GapOf[p] >= 0)
            {
                hasSymbol[GapOf[p]] = true;
            }
        }

        int[] y = new int[rows];
        y[0] = above[0];
        for (int r = 1; r < rows; r++)
        {
            y[r] = y[r - 1] + Math.Max(LeastGap, below[r - 1] + (hasSymbol[r - 1] ? Cell : 0) + above[r]);
        }

        return (y, [.. y.Select((at, row) => at + below[row])]);
    }
}
