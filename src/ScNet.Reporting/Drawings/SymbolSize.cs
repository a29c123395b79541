namespace ScNet.Reporting.Drawings;

/// <summary>The proportions of symbols, after IEC 60617 (from memory), in pixels.</summary>
internal static class SymbolSize
{
    /// <summary>The length of a symbol from one end to the other.</summary>
    public const int Body = 44;

    /// <summary>The piece of wire above or left of a symbol that carries the arrow of the charge.</summary>
    public const int Arrow = 16;

    /// <summary>Half the width of an arrow head.</summary>
    public const int ArrowHalf = 5;

    /// <summary>The length of an arrow head.</summary>
    public const int ArrowLength = 10;

    /// <summary>Half the length of a capacitor's plates.</summary>
    public const int Plate = 14;

    /// <summary>Half the distance of the plates.</summary>
    public const int PlateGap = 3;

    /// <summary>The radius of a source.</summary>
    public const int Circle = 14;

    /// <summary>The radius of one of the four arcs of an inductor.</summary>
    public const int Arc = 5;

    /// <summary>Half the width of a resistor.</summary>
    public const int Resistor = 6;

    /// <summary>Half the length of a resistor.</summary>
    public const int ResistorLength = 17;

    /// <summary>How far the open blade of a switch leans aside.</summary>
    public const int Blade = 10;

    /// <summary>Half the length of the gap that a switch's blade spans.</summary>
    public const int Contact = 11;

    /// <summary>Half the width of the reference symbol.</summary>
    public const int Earth = 10;

    /// <summary>The height of the reference symbol.</summary>
    public const int EarthHeight = 18;

    /// <summary>How far an upright symbol reaches to the left and to the right of its wire.</summary>
    public static (int Left, int Right) Reach(PartKind kind) => kind switch
    {
        PartKind.Capacitor or PartKind.Parasitic => (Plate + 1, Plate + 1),
        PartKind.Source or PartKind.CurrentLoad => (Circle + 1, Circle + 1),
        PartKind.Load => (Resistor + 1, Resistor + 1),
        PartKind.Inductor => (6, Arc + 2),
        PartKind.Switch => (Blade + 2, 5),
        _ => (0, 0),
    };
}
