namespace ScNet.Reporting.Drawings;

/// <summary>A drawing as geometry: everything on it with its place, in whole pixels, x to the right and y downwards.</summary>
internal sealed class Sheet
{
    /// <summary>The symbols of parts.</summary>
    public List<SheetSymbol> Symbols { get; } = [];

    /// <summary>The wires.</summary>
    public List<SheetWire> Wires { get; } = [];

    /// <summary>The arrows on wires that show where charge flows.</summary>
    public List<SheetArrow> Arrows { get; } = [];

    /// <summary>Where wires join, or where one ends openly.</summary>
    public List<SheetDot> Dots { get; } = [];

    /// <summary>The lines of text.</summary>
    public List<SheetLabel> Labels { get; } = [];

    /// <summary>Dashed frames round floating parts.</summary>
    public List<SheetBox> Frames { get; } = [];

    /// <summary>The symbols of the reference below the rail: where they touch the wire.</summary>
    public List<SheetPoint> References { get; } = [];

    /// <summary>The bars of a timing strip.</summary>
    public List<SheetBox> Bars { get; } = [];

    /// <summary>Thin lines of a timing strip.</summary>
    public List<SheetWire> Rules { get; } = [];

    /// <summary>The width of the drawing (px).</summary>
    public int Width { get; set; }

    /// <summary>The height of the drawing (px).</summary>
    public int Height { get; set; }

    /// <summary>Puts another sheet onto this one.</summary>
    /// <param name="other">The other sheet.</param>
    /// <param name="x">Where its left edge comes to lie.</param>
    /// <param name="y">Where its upper edge comes to lie.</param>
    public void Add(Sheet other, int x, int y)
    {
        Symbols.AddRange(other.Symbols.Select(s => s with { Box = s.Box.Moved(x, y), FirstEnd = s.FirstEnd.Moved(x, y), SecondEnd = s.SecondEnd.Moved(x, y) }));
        Wires.AddRange(other.Wires.Select(w => w.Moved(x, y)));
        Arrows.AddRange(other.Arrows.Select(a => a with { Box = a.Box.Moved(x, y) }));
        Dots.AddRange(other.Dots.Select(d => d with { At = d.At.Moved(x, y) }));
        Labels.AddRange(other.Labels.Select(l => l with { Box = l.Box.Moved(x, y) }));
        Frames.AddRange(other.Frames.Select(f => f.Moved(x, y)));
        References.AddRange(other.References.Select(r => r.Moved(x, y)));
        Bars.AddRange(other.Bars.Select(b => b.Moved(x, y)));
        Rules.AddRange(other.Rules.Select(r => r.Moved(x, y)));
        Width = Math.Max(Width, x + other.Width);
        Height = Math.Max(Height, y + other.Height);
    }
}

/// <summary>A point.</summary>
internal readonly record struct SheetPoint(int X, int Y)
{
    public SheetPoint Moved(int x, int y) => new(X + x, Y + y);
}

/// <summary>A rectangle; its right and lower edges are outside of it.</summary>
internal readonly record struct SheetBox(int Left, int Top, int Right, int Bottom)
{
    public int Width => Right - Left;

    public int Height => Bottom - Top;

    public SheetBox Moved(int x, int y) => new(Left + x, Top + y, Right + x, Bottom + y);

    /// <summary>Whether the two have an inner point in common.</summary>
    public bool Overlaps(SheetBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}

/// <summary>A piece of wire, level or upright.</summary>
internal readonly record struct SheetWire(int Net, SheetPoint From, SheetPoint To)
{
    public SheetWire Moved(int x, int y) => new(Net, From.Moved(x, y), To.Moved(x, y));
}

/// <summary>A symbol. Its ends touch wires; nothing else touches its box.</summary>
/// <param name="Part">What it stands for.</param>
/// <param name="Box">What it covers.</param>
/// <param name="FirstEnd">Where the first terminal touches a wire.</param>
/// <param name="SecondEnd">Where the second terminal touches a wire.</param>
internal sealed record SheetSymbol(CircuitPart Part, SheetBox Box, SheetPoint FirstEnd, SheetPoint SecondEnd)
{
    /// <summary>Whether it lies along the page.</summary>
    public bool IsLevel => FirstEnd.Y == SecondEnd.Y;
}

/// <summary>An arrow head on the wire of a part.</summary>
/// <param name="Part">The part whose charge it is.</param>
/// <param name="Box">What it covers; the wire runs through its middle.</param>
/// <param name="Way">Where it points.</param>
internal readonly record struct SheetArrow(CircuitPart Part, SheetBox Box, ArrowWay Way);

/// <summary>Where an arrow points.</summary>
internal enum ArrowWay
{
    /// <summary>Up the page.</summary>
    Up,

    /// <summary>Down the page.</summary>
    Down,

    /// <summary>To the left.</summary>
    Left,

    /// <summary>To the right.</summary>
    Right,
}

/// <summary>A mark on a wire: filled where three or more pieces join, a small ring where the wire ends openly.</summary>
internal readonly record struct SheetDot(int Net, SheetPoint At, bool IsOpen);

/// <summary>One line of text.</summary>
/// <param name="Box">What it covers.</param>
/// <param name="Text">The text.</param>
/// <param name="Role">What it tells.</param>
/// <param name="Strong">What follows the text in bold; mostly empty.</param>
internal sealed record SheetLabel(SheetBox Box, string Text, LabelRole Role, string Strong = "");

/// <summary>What a line of text tells.</summary>
internal enum LabelRole
{
    /// <summary>The heading of the drawing.</summary>
    Heading,

    /// <summary>The name of a part.</summary>
    Part,

    /// <summary>The nodes of a net.</summary>
    Node,

    /// <summary>The charge through a part.</summary>
    Charge,

    /// <summary>Something secondary.</summary>
    Note,
}
