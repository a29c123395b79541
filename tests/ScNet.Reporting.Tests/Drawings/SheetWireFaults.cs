using ScNet.Reporting.Drawings;

namespace ScNet.Reporting.Tests.Drawings;

/// <summary>What is wrong with the wires of a drawing: slants, wires along one another, joints without a dot, dots without a joint, torn nets.</summary>
internal static class SheetWireFaults
{
    public static IEnumerable<string> Of(Sheet sheet)
    {
        foreach (SheetWire wire in sheet.Wires)
        {
            if (wire.From == wire.To || (wire.From.X != wire.To.X && wire.From.Y != wire.To.Y))
            {
                yield return $"wire of net {wire.Net} is a point or slants";
            }
        }

        for (int i = 0; i < sheet.Wires.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (Meeting(sheet.Wires[i], sheet.Wires[j]) is { } fault)
                {
                    yield return fault;
                }
            }
        }

        foreach (string fault in Joints(sheet).Concat(Nets(sheet)))
        {
            yield return fault;
        }
    }

    private static string? Meeting(SheetWire a, SheetWire b)
    {
        bool isUpright = a.From.X == a.To.X;
        if (isUpright == (b.From.X == b.To.X))
        {
            (int lineA, int lineB) = isUpright ? (a.From.X, b.From.X) : (a.From.Y, b.From.Y);
            (int fromA, int toA) = Span(a, isUpright);
            (int fromB, int toB) = Span(b, isUpright);
            bool isAlong = lineA == lineB && (a.Net == b.Net ? fromA < toB && fromB < toA : fromA <= toB && fromB <= toA);
            return isAlong ? $"wires of nets {a.Net} and {b.Net} run along one another" : null;
        }

        (SheetWire up, SheetWire along) = isUpright ? (a, b) : (b, a);
        (int top, int bottom) = Span(up, isUpright: true);
        (int left, int right) = Span(along, isUpright: false);
        (int x, int y) = (up.From.X, along.From.Y);
        bool touches = x >= left && x <= right && y >= top && y <= bottom;
        bool crosses = x > left && x < right && y > top && y < bottom;
        return touches && !crosses && a.Net != b.Net ? $"wires of nets {a.Net} and {b.Net} touch" : null;
    }

    // at every point where wires of one net meet: the ways that lead from there
    private static IEnumerable<string> Joints(Sheet sheet)
    {
        HashSet<(int Net, SheetPoint At)> points = [.. sheet.Wires.SelectMany(w => new[] { (w.Net, w.From), (w.Net, w.To) })];
        foreach (SheetWire up in sheet.Wires.Where(w => w.From.X == w.To.X))
        {
            foreach (SheetWire along in sheet.Wires.Where(w => w.Net == up.Net && w.From.Y == w.To.Y))
            {
                SheetPoint at = new(up.From.X, along.From.Y);
                if (Holds(up, at) && Holds(along, at))
                {
                    points.Add((up.Net, at));
                }
            }
        }

        foreach ((int net, SheetPoint at) in points)
        {
            int ways = sheet.Wires.Where(w => w.Net == net && Holds(w, at)).Sum(w => w.From == at || w.To == at ? 1 : 2)
                + sheet.Symbols.Count(s => s.FirstEnd == at || s.SecondEnd == at) + sheet.References.Count(r => r == at);
            SheetDot[] dots = [.. sheet.Dots.Where(d => d.At == at)];
            if (dots.Any(d => d.Net != net) || dots.Length != (ways == 2 ? 0 : 1) || dots.Any(d => d.IsOpen != ways < 2))
            {
                yield return $"net {net} has {ways} ways and {dots.Length} dots at {at}";
            }
        }

        foreach (SheetDot dot in sheet.Dots.Where(d => sheet.Wires.Count > 0 && !d.IsOpen && !points.Contains((d.Net, d.At))))
        {
            yield return $"a dot at {dot.At} joins nothing";
        }
    }

    // every net is one piece, and every symbol hangs on the nets that its part is connected to
    private static IEnumerable<string> Nets(Sheet sheet)
    {
        foreach (SheetSymbol symbol in sheet.Symbols)
        {
            foreach ((SheetPoint end, int net) in new[] { (symbol.FirstEnd, symbol.Part.First), (symbol.SecondEnd, symbol.Part.Second) })
            {
                if (!sheet.Wires.Any(w => w.Net == net && (w.From == end || w.To == end)))
                {
                    yield return $"{symbol.Part.Name} does not touch net {net}";
                }
            }
        }

        foreach (IGrouping<int, SheetWire> net in sheet.Wires.GroupBy(w => w.Net))
        {
            List<SheetWire> rest = [.. net.Skip(1)];
            List<SheetWire> reached = [net.First()];
            for (int i = 0; i < reached.Count; i++)
            {
                SheetWire[] next = [.. rest.Where(w => Holds(w, reached[i].From) || Holds(w, reached[i].To) || Holds(reached[i], w.From) || Holds(reached[i], w.To))];
                reached.AddRange(next);
                rest.RemoveAll(next.Contains);
            }

            if (rest.Count > 0)
            {
                yield return $"net {net.Key} is torn";
            }
        }
    }

    private static (int From, int To) Span(SheetWire wire, bool isUpright) => isUpright
        ? (Math.Min(wire.From.Y, wire.To.Y), Math.Max(wire.From.Y, wire.To.Y))
        : (Math.Min(wire.From.X, wire.To.X), Math.Max(wire.From.X, wire.To.X));

    private static bool Holds(SheetWire wire, SheetPoint at) =>
        at.X >= Math.Min(wire.From.X, wire.To.X) && at.X <= Math.Max(wire.From.X, wire.To.X)
        && at.Y >= Math.Min(wire.From.Y, wire.To.Y) && at.Y <= Math.Max(wire.From.Y, wire.To.Y);
}
