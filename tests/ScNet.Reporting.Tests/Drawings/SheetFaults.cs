using ScNet.Reporting.Drawings;

namespace ScNet.Reporting.Tests.Drawings;

/// <summary>What is wrong with the geometry of a drawing: overlaps, doubtful joints, nets that fall apart, things beside the page.</summary>
internal static class SheetFaults
{
    public static IReadOnlyList<string> Of(Sheet sheet) => [.. Overlaps(sheet), .. Through(sheet), .. SheetWireFaults.Of(sheet), .. Outside(sheet)];

    // everything that covers an area, by a name for messages
    private static List<(string Name, SheetBox Box)> Boxes(Sheet sheet) =>
    [
        .. sheet.Symbols.Select(s => ($"symbol {s.Part.Name}", s.Box)),
        .. sheet.Arrows.Select(a => ($"arrow of {a.Part.Name}", a.Box)),
        .. sheet.Labels.Select(l => ($"text '{l.Text} {l.Strong}'", l.Box)),
        .. sheet.References.Select(r => ("reference", Hanging(r))),
        .. sheet.Bars.Select(b => ("bar", b)),
        .. sheet.Dots.Select(d => ($"dot of net {d.Net}", new SheetBox(d.At.X - 3, d.At.Y - 3, d.At.X + 3, d.At.Y + 3))),
    ];

    // the reference touches the rail and its dot with its upper end alone
    private static SheetBox Hanging(SheetPoint at) => new(at.X - SymbolSize.Earth, at.Y + 4, at.X + SymbolSize.Earth, at.Y + SymbolSize.EarthHeight);

    private static IEnumerable<string> Overlaps(Sheet sheet)
    {
        List<(string Name, SheetBox Box)> boxes = Boxes(sheet);
        for (int i = 0; i < boxes.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (boxes[i].Box.Overlaps(boxes[j].Box))
                {
                    yield return $"{boxes[i].Name} lies on {boxes[j].Name}";
                }
            }
        }
    }

    private static IEnumerable<string> Through(Sheet sheet)
    {
        IEnumerable<(string Name, SheetWire Wire)> lines =
        [
            .. sheet.Wires.Select(w => ($"wire of net {w.Net}", w)),
            .. sheet.Rules.Select(r => ("rule", r)),
            .. sheet.Frames.SelectMany(Edges).Select(e => ("frame", e)),
        ];
        List<(string Name, SheetBox Box)> boxes = Boxes(sheet);
        foreach ((string name, SheetWire wire) in lines)
        {
            foreach ((string other, SheetBox box) in boxes.Where(b => Crosses(wire, b.Box)))
            {
                bool isOwn = other.StartsWith("arrow", StringComparison.Ordinal) ? IsThroughTheMiddle(wire, box)
                    : other.StartsWith("dot", StringComparison.Ordinal) ? other == $"dot of net {wire.Net}"
                    : other == "bar" && name == "rule";
                if (!isOwn)
                {
                    yield return $"{name} runs through {other}";
                }
            }
        }
    }

    private static IEnumerable<string> Outside(Sheet sheet)
    {
        SheetBox page = new(0, 0, sheet.Width, sheet.Height);
        foreach ((string name, SheetBox box) in Boxes(sheet).Concat(sheet.Frames.Select(f => ("frame", f))).Concat(sheet.Wires.Concat(sheet.Rules).Select(w => ("wire", Box(w)))))
        {
            if (box.Left < page.Left || box.Top < page.Top || box.Right > page.Right || box.Bottom > page.Bottom)
            {
                yield return $"{name} is beside the page";
            }
        }
    }

    private static IEnumerable<SheetWire> Edges(SheetBox box)
    {
        (SheetPoint a, SheetPoint b, SheetPoint c, SheetPoint d) = (new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom));
        return [new(-1, a, b), new(-1, b, c), new(-1, d, c), new(-1, a, d)];
    }

    private static SheetBox Box(SheetWire wire) => new(
        Math.Min(wire.From.X, wire.To.X), Math.Min(wire.From.Y, wire.To.Y), Math.Max(wire.From.X, wire.To.X), Math.Max(wire.From.Y, wire.To.Y));

    // whether some of the wire lies inside the box, more than on its edge
    private static bool Crosses(SheetWire wire, SheetBox box)
    {
        SheetBox own = Box(wire);
        return own.Left == own.Right
            ? own.Left > box.Left && own.Left < box.Right && own.Top < box.Bottom && box.Top < own.Bottom
            : own.Top > box.Top && own.Top < box.Bottom && own.Left < box.Right && box.Left < own.Right;
    }

    private static bool IsThroughTheMiddle(SheetWire wire, SheetBox box) => wire.From.X == wire.To.X
        ? 2 * wire.From.X == box.Left + box.Right && Box(wire).Top <= box.Top && Box(wire).Bottom >= box.Bottom
        : 2 * wire.From.Y == box.Top + box.Bottom && Box(wire).Left <= box.Left && Box(wire).Right >= box.Right;
}
