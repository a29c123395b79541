namespace ScNet.Reporting.Drawings;

/// <summary>Gives symbols and texts of a block their room beside the columns' wires, and texts of nets a place where they are in nobody's way.</summary>
internal sealed class BlockRoom
{
    private readonly BlockPlan _block;
    private readonly ColumnSpacing _spacing;
    private readonly List<(int Column, SheetLabel Label)> _labels = [];

    public BlockRoom(BlockPlan block)
    {
        _block = block;
        _spacing = new ColumnSpacing(block.Column.Max() + 1);
        Height = block.Height;
        for (int p = 0; p < block.Plan.Parts.Length; p++)
        {
            Reserve(p);
        }

        if (block.Plan.LineNet.Contains(0))
        {
            ReserveRail();
        }

        foreach (int net in block.NetLabels.Keys.Where(n => n != 0).OrderBy(n => block.Plan.LineRow[block.PrimaryLine(n)]))
        {
            PlaceNetLabel(net);
        }

        ColumnX = _spacing.Positions();
        Width = _spacing.Width(ColumnX);
    }

    /// <summary>The x of each column.</summary>
    public int[] ColumnX { get; }

    /// <summary>The width of all (px).</summary>
    public int Width { get; }

    /// <summary>The height of all (px).</summary>
    public int Height { get; private set; }

    /// <summary>The texts in their places.</summary>
    public IEnumerable<SheetLabel> Labels => _labels.Select(l => l.Label with { Box = l.Label.Box.Moved(ColumnX[l.Column], 0) });

    // all boxes are relative to the column's x
    private void Reserve(int p)
    {
        CircuitPart part = _block.Plan.Parts[p].Part;
        (int top, int bottom) = _block.Plan.Rows(p);
        if (top == bottom)
        {
            int half = _block.Cell / 2;
            _spacing.Add(_block.Column[p], new SheetBox(-half - 8, _block.RowY[top] - 9, half + 8, _block.RowY[top] + 7));
            string name = TextSize.Fitting(part.Name), below = part.Charge.Length > 0 ? part.Charge : part.Note;
            Text(p, name, LabelRole.Part, -TextSize.Width(name) / 2, _block.RowY[top] - 11 - TextSize.Line);
            Text(p, below, part.Charge.Length > 0 ? LabelRole.Charge : LabelRole.Note, -TextSize.Width(below) / 2, _block.RowY[top] + 8);
            return;
        }

        _spacing.Add(_block.Column[p], new SheetBox(-2, _block.RowY[top], 2, _block.RowY[bottom]));
        if (part.Kind == PartKind.Wire)
        {
            return;
        }

        (int left, int right) = SymbolSize.Reach(part.Kind);
        int cell = _block.CellTop[_block.GapOf[p]];
        _spacing.Add(_block.Column[p], new SheetBox(-left, cell + _block.Arrow, right, cell + _block.Cell));
        _spacing.Add(_block.Column[p], new SheetBox(-SymbolSize.ArrowHalf, cell, SymbolSize.ArrowHalf, cell + _block.Arrow));
        int middle = cell + _block.Arrow + (SymbolSize.Body / 2);
        bool hasNote = part.Note.Length > 0;
        Text(p, part.Charge, LabelRole.Charge, SymbolSize.ArrowHalf + 4, cell);
        Text(p, TextSize.Fitting(part.Name), part.Kind == PartKind.Parasitic ? LabelRole.Note : LabelRole.Part, right + 4, middle - (hasNote ? TextSize.Line : TextSize.Line / 2));
        Text(p, part.Note, LabelRole.Note, right + 4, middle);
    }

    private void Text(int p, string text, LabelRole role, int left, int top)
    {
        if (text.Length > 0)
        {
            SheetBox box = new(left, top, left + TextSize.Width(text, role), top + TextSize.Line);
            _spacing.Add(_block.Column[p], box);
            _labels.Add((_block.Column[p], new SheetLabel(box, text, role)));
        }
    }

    private void ReserveRail()
    {
        int line = _block.PrimaryLine(0);
        int y = _block.RowY[_block.Plan.LineRow[line]];
        int column = _block.Reach[line].Minimum;
        _spacing.Add(column, new SheetBox(-SymbolSize.Earth, y, SymbolSize.Earth, y + SymbolSize.EarthHeight));
        int top = y + 6;
        foreach (SheetLabel text in _block.NetLabels[0])
        {
            SheetBox box = text.Box.Moved(SymbolSize.Earth + 6, top);
            _spacing.Add(column, box);
            _labels.Add((column, text with { Box = box }));
            top += TextSize.Line;
            Height = Math.Max(Height, top + 4);
        }
    }

    private void PlaceNetLabel(int net)
    {
        int line = _block.PrimaryLine(net);
        IReadOnlyList<SheetLabel> texts = _block.NetLabels[net];
        int width = texts.Max(t => t.Box.Width);
        int top = _block.RowY[_block.Plan.LineRow[line]] - (texts.Count * TextSize.Line) - 3;
        SheetBox box = new(0, top, width, top + (texts.Count * TextSize.Line));
        (int minimum, int maximum) = _block.Reach[line];
        int Wish(int column) => (column == maximum && minimum < maximum ? 12 : 0) + (net == _block.Circuit.OutputNet ? maximum - column : column - minimum);
        (int column, int left, _) = Enumerable.Range(minimum, maximum - minimum + 1)
            .Where(c => c < maximum || minimum == maximum || !_block.IsLevelAt(c))
            .Select(c => (Column: c, Left: LabelLeft(line, c, box)))
            .Select(c => (c.Column, c.Left, Push: _spacing.Push(c.Column, box.Moved(c.Left, 0)) + Wish(c.Column)))
            .MinBy(c => c.Push);
        for (int i = 0; i < texts.Count; i++)
        {
            _labels.Add((column, texts[i] with { Box = texts[i].Box.Moved(left, top + (i * TextSize.Line)) }));
        }

        _spacing.Add(column, box.Moved(left, 0));
    }

    // right of the column's wire; in the column of a part along the row beside that part, on the side where the line is
    private int LabelLeft(int line, int column, SheetBox box)
    {
        const int Space = 6;
        if (!_block.IsLevelAt(column))
        {
            return Space;
        }

        (int left, int right) = _spacing.Covered(column, box.Top, box.Bottom);
        int part = Enumerable.Range(0, _block.Plan.Parts.Length).Single(p => _block.Column[p] == column && _block.Plan.IsLevel(p));
        bool isLeftEnd = line == (_block.IsFirstLeft(part) ? _block.Plan.Parts[part].First : _block.Plan.Parts[part].Second);
        return isLeftEnd ? left - Space - box.Width : right + Space;
    }
}
