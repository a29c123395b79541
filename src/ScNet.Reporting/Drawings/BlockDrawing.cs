namespace ScNet.Reporting.Drawings;

/// <summary>Draws a block: symbols, wires, arrows and dots at the places that rows and columns give them.</summary>
internal sealed class BlockDrawing
{
    private readonly BlockPlan _block;
    private readonly Sheet _sheet = new();

    private BlockDrawing(BlockPlan block) => _block = block;

    /// <summary>The sheet of some parts.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="plan">The rows.</param>
    /// <param name="column">The column of each part.</param>
    /// <param name="hasCharges">Whether charges stand on the parts.</param>
    public static Sheet Of(Circuit circuit, RowPlan plan, int[] column, bool hasCharges) => new BlockDrawing(new BlockPlan(circuit, plan, column, hasCharges)).Draw();

    private Sheet Draw()
    {
        BlockRoom room = new(_block);
        for (int p = 0; p < _block.Plan.Parts.Length; p++)
        {
            PutPart(p, room.ColumnX);
        }

        for (int l = 0; l < _block.Plan.LineNet.Length; l++)
        {
            PutLine(l, room.ColumnX);
        }

        JoinCrossings();
        _sheet.Labels.AddRange(room.Labels);
        (_sheet.Width, _sheet.Height) = (room.Width, room.Height);
        return _sheet;
    }

    private void PutPart(int p, int[] x)
    {
        PlannedPart planned = _block.Plan.Parts[p];
        int at = x[_block.Column[p]];
        (int top, int bottom) = _block.Plan.Rows(p);
        if (top == bottom)
        {
            int y = _block.RowY[top];
            SheetPoint left = new(at - (_block.Cell / 2) + _block.Arrow, y);
            SheetPoint right = new(left.X + SymbolSize.Body, y);
            bool isFirstLeft = _block.IsFirstLeft(p);
            PutWire(new SheetWire(_block.Plan.LineNet[isFirstLeft ? planned.First : planned.Second], new(at - (_block.Cell / 2), y), left));
            _sheet.Symbols.Add(new SheetSymbol(planned.Part, new SheetBox(left.X, y - 8, right.X, y + 6), isFirstLeft ? left : right, isFirstLeft ? right : left));
            PutArrow(planned.Part, new SheetBox(left.X - 13, y - SymbolSize.ArrowHalf, left.X - 13 + SymbolSize.ArrowLength, y + SymbolSize.ArrowHalf), isFirstLeft ? ArrowWay.Right : ArrowWay.Left);
            return;
        }

        int net = _block.Plan.LineNet[planned.First];
        bool isFirstTop = _block.Plan.LineRow[planned.First] == top;
        if (planned.Part.Kind == PartKind.Wire)
        {
            _sheet.Wires.Add(new SheetWire(net, new(at, _block.RowY[top]), new(at, _block.RowY[bottom])));
            return;
        }

        (int reachLeft, int reachRight) = SymbolSize.Reach(planned.Part.Kind);
        SheetPoint upper = new(at, _block.CellTop[_block.GapOf[p]] + _block.Arrow);
        SheetPoint lower = new(at, upper.Y + SymbolSize.Body);
        (int upperNet, int lowerNet) = isFirstTop ? (net, _block.Plan.LineNet[planned.Second]) : (_block.Plan.LineNet[planned.Second], net);
        _sheet.Wires.Add(new SheetWire(upperNet, new(at, _block.RowY[top]), upper));
        _sheet.Wires.Add(new SheetWire(lowerNet, lower, new(at, _block.RowY[bottom])));
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
        if (part.Flow != 0 && _block.Arrow > 0)
        {
            _sheet.Arrows.Add(new SheetArrow(part, box, part.Flow > 0 ? firstToSecond : firstToSecond ^ (ArrowWay)1));
        }
    }

    // the end of a part along a row that nothing else touches
    private void PutStub(int net, int p, int line, int x, int y)
    {
        SheetSymbol symbol = _sheet.Symbols.Single(s => ReferenceEquals(s.Part, _block.Plan.Parts[p].Part));
        SheetPoint end = _block.Plan.Parts[p].First == line ? symbol.FirstEnd : symbol.SecondEnd;
        if (end.X > x)
        {
            PutWire(new SheetWire(net, end, new(end.X + 6, y)));
        }

        _sheet.Dots.Add(new SheetDot(net, new(end.X > x ? end.X + 6 : end.X - _block.Arrow, y), IsOpen: true));
    }

    private void PutLine(int line, int[] x)
    {
        (int minimum, int maximum) = _block.Reach[line];
        int row = _block.Plan.LineRow[line];
        int net = _block.Plan.LineNet[line];
        int y = _block.RowY[row];
        int[] own = [.. Enumerable.Range(0, _block.Plan.Parts.Length).Where(p => _block.Plan.Parts[p].First == line || _block.Plan.Parts[p].Second == line)];
        int[] level = [.. own.Where(_block.Plan.IsLevel)];
        bool EndsAt(int column) => level.Any(p => _block.Column[p] == column);
        int from = x[minimum] + (EndsAt(minimum) ? _block.Cell - (_block.Cell / 2) : 0);
        int to = x[maximum] - (EndsAt(maximum) ? _block.Cell / 2 : 0);
        if (minimum == maximum && level.Length > 0)
        {
            PutStub(net, level[0], line, x[minimum], y);
            return;
        }

        if (from < to)
        {
            _sheet.Wires.Add(new SheetWire(net, new(from, y), new(to, y)));
        }

        bool isRail = net == 0 && line == _block.PrimaryLine(0);
        foreach (int column in own.Except(level).Select(p => _block.Column[p]).Distinct().Order())
        {
            bool hasEarth = isRail && column == minimum;
            int ways = own.Except(level).Count(p => _block.Column[p] == column) + (column > minimum ? 1 : 0) + (column < maximum ? 1 : 0) + (hasEarth ? 1 : 0);
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
