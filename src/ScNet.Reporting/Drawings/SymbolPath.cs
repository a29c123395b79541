using static System.FormattableString;

namespace ScNet.Reporting.Drawings;

/// <summary>The lines of symbols after IEC 60617 (from memory), as path data of SVG.</summary>
internal static class SymbolPath
{
    /// <summary>The symbol with the wires from its body to its ends.</summary>
    public static string Of(SheetSymbol symbol) => symbol.IsLevel ? Level(symbol) : Upright(symbol);

    /// <summary>The symbol of the reference, hanging from a wire.</summary>
    public static string Reference(SheetPoint at) =>
        Invariant($"M{at.X} {at.Y}v9M{at.X - 10} {at.Y + 9}h20M{at.X - 6} {at.Y + 13}h12M{at.X - 2} {at.Y + 17}h4");

    /// <summary>An arrow head.</summary>
    public static string Arrow(SheetArrow arrow)
    {
        (int x, int y) = ((arrow.Box.Left + arrow.Box.Right) / 2, (arrow.Box.Top + arrow.Box.Bottom) / 2);
        return arrow.Way switch
        {
            ArrowWay.Up => Invariant($"M{x} {y - 5}l-4.5 10h9z"),
            ArrowWay.Down => Invariant($"M{x} {y + 5}l-4.5 -10h9z"),
            ArrowWay.Left => Invariant($"M{x - 5} {y}l10 -4.5v9z"),
            _ => Invariant($"M{x + 5} {y}l-10 -4.5v9z"),
        };
    }

    private static string Level(SheetSymbol symbol)
    {
        int y = symbol.FirstEnd.Y;
        int left = symbol.Box.Left + 2;
        return Invariant($"M{symbol.Box.Left} {y}H{left}a5 5 0 0 1 10 0a5 5 0 0 1 10 0a5 5 0 0 1 10 0a5 5 0 0 1 10 0H{symbol.Box.Right}");
    }

    private static string Upright(SheetSymbol symbol)
    {
        int x = symbol.FirstEnd.X;
        int top = symbol.Box.Top;
        int bottom = symbol.Box.Bottom;
        int middle = top + (SymbolSize.Body / 2);
        bool isFirstUp = symbol.FirstEnd.Y < symbol.SecondEnd.Y;
        return symbol.Part.Kind switch
        {
            PartKind.Capacitor => Invariant($"M{x} {top}V{middle - 3}M{x - 14} {middle - 3}h28M{x - 14} {middle + 3}h28M{x} {middle + 3}V{bottom}") + Plus(x - 9, isFirstUp ? middle - 9 : middle + 9),
            PartKind.Parasitic => Invariant($"M{x} {top}V{middle - 3}M{x - 9} {middle - 3}h18M{x - 9} {middle + 3}h18M{x} {middle + 3}V{bottom}"),
            PartKind.Inductor => Invariant($"M{x} {top}V{middle - 20}a5 5 0 0 1 0 10a5 5 0 0 1 0 10a5 5 0 0 1 0 10a5 5 0 0 1 0 10V{bottom}"),
            PartKind.Source => Invariant($"M{x} {top}V{bottom}") + Circle(x, middle) + Plus(x - 11, isFirstUp ? middle - 16 : middle + 16),
            PartKind.CurrentLoad => Invariant($"M{x} {top}V{middle - 14}M{x} {middle + 14}V{bottom}M{x - 14} {middle}h28") + Circle(x, middle),
            PartKind.Load => Invariant($"M{x} {top}V{middle - 17}M{x - 6} {middle - 17}h12v34h-12zM{x} {middle + 17}V{bottom}"),
            _ => Invariant($"M{x} {top}V{middle - 11}M{x} {bottom}V{middle + 11}L{x - 10} {middle - 10}"),
        };
    }

    private static string Circle(int x, int y) => Invariant($"M{x - 14} {y}a14 14 0 0 1 28 0a14 14 0 0 1 -28 0");

    private static string Plus(int x, int y) => Invariant($"M{x - 3} {y}h6M{x} {y - 3}v6");
}
