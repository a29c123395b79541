namespace ScNet.Reporting.Drawings;

/// <summary>Places a <see cref="RowPlan"/> with its columns: rows as high and columns as far apart as symbols and texts need.</summary>
internal sealed class BlockLayout
{
    private const int Below = 12;
    private const int Above = 8;
    private const int LeastGap = 28;
    private const int LabelWidth = 120;
    private const int LabelWidthPerColumn = 40;

    private readonly Circuit _circuit;
    private readonly RowPlan _plan;
    private readonly int[] _column;
    private readonly int _arrow;
    private readonly ColumnSpacing _spacing;
    private readonly int[] _rowY;
    private readonly int[] _gapOf;
    private readonly (int Minimum, int Maximum)[] _reach;
    private readonly Dictionary<int, IReadOnlyList<SheetLabel>> _netLabels = [];
    private readonly List<(int Column, SheetLabel Label)> _labels = [];
    private readonly Sheet _sheet = new();

    private BlockLayout(Circuit circuit, RowPlan plan, int[] column, bool hasCharges)
    {
        _circuit = circuit;
        _plan = plan;
        _column = column;
        _arrow = hasCharges ? SymbolSize.Arrow : 0;
        _reach = [.. Enumerable.Range(0, plan.LineNet.Length).Select(Reach)];
        _spacing = new ColumnSpacing(column.Max() + 1);
        foreach (int net in plan.LineNet.Distinct())
        {
            _netLabels[net] = NetLabel.Lines(circuit.Nets[net], LabelWidth + (LabelWidthPerColumn * (_reach[PrimaryLine(net)].Maximum - _reach[PrimaryLine(net)].Minimum)));
        }

        _gapOf = SymbolGaps.Of(plan);
        _rowY = RowHeights();
    }

    public static Sheet Place(Circuit circuit, RowPlan plan, int[] column, bool hasCharges) => new BlockLayout(circuit, plan, column, hasCharges).Draw();

    private int Cell => SymbolSize.Body + _arrow;

    private int PrimaryLine(int net) => Array.IndexOf(_plan.LineNet, net);

    private (int, int) Reach(int line)
    {
        IEnumerable<int> columns = _plan.Parts.Select((p, i) => (p, i)).Where(x => x.p.First == line || x.p.Second == line).Select(x => _column[x.i]);
        return (columns.Min(), columns.Max());
    }

    private int[] RowHeights()
    {
        int rows = _plan.RowCount;
        int[] below = new int[rows];
        int[] above = new int[rows];
        Array.Fill(below, Below);
        Array.Fill(above, Above);
        foreach ((int net, IReadOnlyList<SheetLabel> lines) in _netLabels.Where(n => n.Key != 0))
        {
            int row = _plan.LineRow[PrimaryLine(net)];
            above[row] = Math.Max(above[row], (lines.Count * TextSize.Line) + 6);
        }

        bool[] hasSymbol = new bool[rows];
        for (int p = 0; p < _plan.Parts.Length; p++)
        {
            (int row, int bottom) = _plan.Rows(p);
            if (row == bottom)
            {
                above[row] = Math.Max(above[row], 12 + TextSize.Line + 4);
                below[row] = Math.Max(below[row], 8 + TextSize.Line + 4);
            }
            else if (_gapOf[p] >= 0)
            {
                hasSymbol[_gapOf[p]] = true;
            }
        }

        int[] y = new int[rows];
        y[0] = above[0];
        for (int r = 1; r < rows; r++)
        {
            y[r] = y[r - 1] + Math.Max(LeastGap, below[r - 1] + (hasSymbol[r - 1] ? Cell : 0) + above[r]);
        }

        _cellTop = [.. y.Select((at, r) => at + below[r])];
        bool hasRail = _plan.LineNet.Contains(0);
        _sheet.Height = y[^1] + (hasRail ? SymbolSize.EarthHeight + 8 : Below + 2);
        return y;
    }

    private int[] _cellTop = [];

    private Sheet Draw()
    {
        for (int p = 0; p < _plan.Parts.Length; p++)
        {
            Reserve(p);
        }

        if (_plan.LineNet.Contains(0))
        {
            ReserveRail();
        }

        foreach (int net in _netLabels.Keys.Where(n => n != 0).OrderBy(n => _plan.LineRow[PrimaryLine(n)]))
        {
            PlaceNetLabel(net);
        }

        int[] x = _spacing.Positions();
        for (int p = 0; p < _plan.Parts.Length; p++)
        {
            PutPart(p, x);
        }

        for (int l = 0; l < _plan.LineNet.Length; l++)
        {
            PutLine(l, x);
        }

        JoinCrossings();
        _sheet.Labels.AddRange(_labels.Select(l => l.Label with { Box = l.Label.Box.Moved(x[l.Column], 0) }));
        _sheet.Width = _spacing.Width(x);
        return _sheet;
    }

    // all boxes are relative to the column's x
    private void Reserve(int p)
    {
        CircuitPart part = _plan.Parts[p].Part;
        (int top, int bottom) = _plan.Rows(p);
        if (top == bottom)
        {
            int half = Cell / 2;
            _spacing.Add(_column[p], new SheetBox(-half - 8, _rowY[top] - 9, half + 8, _rowY[top] + 7));
            Text(p, part.Name, LabelRole.Part, -TextSize.Width(part.Name) / 2, _rowY[top] - 11 - TextSize.Line);
            Text(p, part.Charge, LabelRole.Charge, -TextSize.Width(part.Charge) / 2, _rowY[top] + 8);
            return;
        }

        _spacing.Add(_column[p], new SheetBox(-2, _rowY[top], 2, _rowY[bottom]));
        if (part.Kind == PartKind.Wire)
        {
            return;
        }

        (int left, int right) = SymbolSize.Reach(part.Kind);
        int cell = _cellTop[_gapOf[p]];
        _spacing.Add(_column[p], new SheetBox(-left, cell + _arrow, right, cell + Cell));
        _spacing.Add(_column[p], new SheetBox(-SymbolSize.ArrowHalf, cell, SymbolSize.ArrowHalf, cell + _arrow));
        int middle = cell + _arrow + (SymbolSize.Body / 2);
        bool hasNote = part.Note.Length > 0;
        Text(p, part.Charge, LabelRole.Charge, SymbolSize.ArrowHalf + 4, cell);
        Text(p, part.Name, LabelRole.Part, right + 4, middle - (hasNote ? TextSize.Line : TextSize.Line / 2));
        Text(p, part.Note, LabelRole.Note, right + 4, middle);
    }

    private void Text(int p, string text, LabelRole role, int left, int top)
    {
        if (text.Length > 0)
        {
            SheetBox box = new(left, top, left + TextSize.Width(text, role), top + TextSize.Line);
            _spacing.Add(_column[p], box);
            _labels.Add((_column[p], new SheetLabel(box, text, role)));
        }
    }

    private void ReserveRail()
    {
        int line = PrimaryLine(0);
        int y = _rowY[_plan.LineRow[line]];
        int column = _reach[line].Minimum;
        _spacing.Add(column, new SheetBox(-SymbolSize.Earth, y, SymbolSize.Earth, y + SymbolSize.EarthHeight));
        int top = y + 6;
        foreach (SheetLabel text in _netLabels[0])
        {
            SheetBox box = text.Box.Moved(SymbolSize.Earth + 6, top);
            _spacing.Add(column, box);
            _labels.Add((column, text with { Box = box }));
            top += TextSize.Line;
            _sheet.Height = Math.Max(_sheet.Height, top + 4);
        }
    }

    private void PlaceNetLabel(int net)
    {
        int line = PrimaryLine(net);
        IReadOnlyList<SheetLabel> texts = _netLabels[net];
        int width = texts.Max(t => t.Box.Width);
        int top = _rowY[_plan.LineRow[line]] - (texts.Count * TextSize.Line) - 3;
        SheetBox box = new(0, top, width, top + (texts.Count * TextSize.Line));
        (int minimum, int maximum) = _reach[line];
        int Wish(int column) => (column == maximum && minimum < maximum ? 12 : 0) + (net == _circuit.OutputNet ? maximum - column : column - minimum);
        (int column, int left, _) = Enumerable.Range(minimum, maximum - minimum + 1)
            .Where(c => c < maximum || minimum == maximum || !IsLevelAt(c))
            .Select(c => (Column: c, Left: LabelLeft(line, c, box)))
            .Select(c => (c.Column, c.Left, Push: _spacing.Push(c.Column, box.Moved(c.Left, 0)) + Wish(c.Column)))
            .MinBy(c => c.Push);
        for (int i = 0; i < texts.Count; i++)
        {
            _labels.Add((column, texts[i] with { Box = texts[i].Box.Moved(left, top + (i * TextSize.Line)) }));
        }

        _spacing.Add(column, box.Moved(left, 0));
    }

    private bool IsLevelAt(int column) => _plan.Parts.Where((_, p) => _column[p] == column && _plan.IsLevel(p)).Any();

    // right of the column's wire; in the column of a part along the row beside that part, on the side where the line is
    private int LabelLeft(int line, int column, SheetBox box)
    {
        const int Space = 6;
        if (!IsLevelAt(column))
        {
            return Space;
        }

        (int left, int right) = _spacing.Covered(column, box.Top, box.Bottom);
        int part = Enumerable.Range(0, _plan.Parts.Length).Single(p => _column[p] == column && _plan.IsLevel(p));
        bool isLeftEnd = line == (IsFirstLeft(part) ? _plan.Parts[part].First : _plan.Parts[part].Second);
        return isLeftEnd ? left - Space - box.Width : right + Space;
    }

    private bool IsFirstLeft(int part)
    {
        ((int minimum, int maximum), (int other, _)) = (_reach[_plan.Parts[part].First], _reach[_plan.Parts[part].Second]);
        return minimum < other || (minimum == other && maximum == _column[part]);
    }

    private void PutPart(int p, int[] x)
    {
        PlannedPart planned = _plan.Parts[p];
        int at = x[_column[p]];
        (int top, int bottom) = _plan.Rows(p);
        if (top == bottom)
        {
            int y = _rowY[top];
            SheetPoint left = new(at - (Cell / 2) + _arrow, y);
            SheetPoint right = new(left.X + SymbolSize.Body, y);
            bool isFirstLeft = IsFirstLeft(p);
            PutWire(new SheetWire(_plan.LineNet[isFirstLeft ? planned.First : planned.Second], new(at - (Cell / 2), y), left));
            _sheet.Symbols.Add(new SheetSymbol(planned.Part, new SheetBox(left.X, y - 8, right.X, y + 6), isFirstLeft ? left : right, isFirstLeft ? right : left));
            PutArrow(planned.Part, new SheetBox(left.X - 13, y - SymbolSize.ArrowHalf, left.X - 13 + SymbolSize.ArrowLength, y + SymbolSize.ArrowHalf), isFirstLeft ? ArrowWay.Right : ArrowWay.Left);
            return;
        }

        int net = _plan.LineNet[planned.First];
        bool isFirstTop = _plan.LineRow[planned.First] == top;
        if (planned.Part.Kind == PartKind.Wire)
        {
            _sheet.Wires.Add(new SheetWire(net, new(at, _rowY[top]), new(at, _rowY[bottom])));
            return;
        }

        (int reachLeft, int reachRight) = SymbolSize.Reach(planned.Part.Kind);
        SheetPoint upper = new(at, _cellTop[_gapOf[p]] + _arrow);
        SheetPoint lower = new(at, upper.Y + SymbolSize.Body);
        (int upperNet, int lowerNet) = isFirstTop ? (net, _plan.LineNet[planned.Second]) : (_plan.LineNet[planned.Second], net);
        _sheet.Wires.Add(new SheetWire(upperNet, new(at, _rowY[top]), upper));
        _sheet.Wires.Add(new SheetWire(lowerNet, lower, new(at, _rowY[bottom])));
        _sheet.Symbols.Add(new SheetSymbol(planned.Part, new SheetBox(at - reachLeft, upper.Y, at + reachRight, lower.Y), isFirstTop ? upper : lower, isFirstTop ? lower : upper));
        PutArrow(planned.Part, new SheetBox(at - SymbolSize.ArrowHalf, upper.Y - 13, at + SymbolSize.ArrowHalf, upper.Y - 13 + SymbolSize.ArrowLength), isFirstTop ? ArrowWay.Down : ArrowWay.Up);
    }

    // two lines of one net: where a wire between them crosses a third one of that net, they join there too
    private void JoinCrossings()
    {
        foreach (SheetWire up in _sheet.Wires.Where(w => w.From.X == w.To.X).ToArray())
        {
            foreach (SheetWire along in _sheet.Wires.Where(w => w.Net == up.Net && w.From.Y == w.To.Y && w.From.Y > up.From.Y && w.From.Y < up.To.Y && w.From.X < up.From.X && w.To.X > up.From.X).ToArray())
            {
                _sheet.Dots.Add(new SheetDot(up.Net, new(up.From.X, along.From.Y), IsOpen: false));
            }
        }
    }

    private void PutWire(SheetWire wire)
    {
        if (wire.From != wire.To)
        {
            _sheet.Wires.Add(wire);
        }
    }

    // ways come in pairs, so that the opposite one differs in the last bit
    private void PutArrow(CircuitPart part, SheetBox box, ArrowWay firstToSecond)
    {
        if (part.Flow != 0 && _arrow > 0)
        {
            _sheet.Arrows.Add(new SheetArrow(part, box, part.Flow > 0 ? firstToSecond : firstToSecond ^ (ArrowWay)1));
        }
    }

    // the end of a part along a row that nothing else touches
    private void PutStub(int net, int p, int line, int x, int y)
    {
        SheetSymbol symbol = _sheet.Symbols.Single(s => ReferenceEquals(s.Part, _plan.Parts[p].Part));
        SheetPoint end = _plan.Parts[p].First == line ? symbol.FirstEnd : symbol.SecondEnd;
        if (end.X > x)
        {
            PutWire(new SheetWire(net, end, new(end.X + 6, y)));
        }

        _sheet.Dots.Add(new SheetDot(net, new(end.X > x ? end.X + 6 : end.X - _arrow, y), IsOpen: true));
    }

    private void PutLine(int line, int[] x)
    {
        (int minimum, int maximum) = _reach[line];
        int row = _plan.LineRow[line];
        int net = _plan.LineNet[line];
        int y = _rowY[row];
        int[] own = [.. Enumerable.Range(0, _plan.Parts.Length).Where(p => _plan.Parts[p].First == line || _plan.Parts[p].Second == line)];
        int[] level = [.. own.Where(_plan.IsLevel)];
        bool EndsAt(int column) => level.Any(p => _column[p] == column);
        int from = x[minimum] + (EndsAt(minimum) ? Cell - (Cell / 2) : 0);
        int to = x[maximum] - (EndsAt(maximum) ? Cell / 2 : 0);
        if (minimum == maximum && level.Length > 0)
        {
            PutStub(net, level[0], line, x[minimum], y);
            return;
        }

        if (from < to)
        {
            _sheet.Wires.Add(new SheetWire(net, new(from, y), new(to, y)));
        }

        bool isRail = net == 0 && line == PrimaryLine(0);
        foreach (int column in own.Except(level).Select(p => _column[p]).Distinct().Order())
        {
            bool hasEarth = isRail && column == minimum;
            int ways = own.Except(level).Count(p => _column[p] == column) + (column > minimum ? 1 : 0) + (column < maximum ? 1 : 0) + (hasEarth ? 1 : 0);
            if (hasEarth)
            {
                _sheet.References.Add(new(x[column], y));
            }

            if (ways != 2)
            {
                _sheet.Dots.Add(new SheetDot(net, new(x[column], y), IsOpen: ways < 2));
            }
        }
    }
}
