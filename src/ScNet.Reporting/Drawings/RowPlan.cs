namespace ScNet.Reporting.Drawings;

/// <summary>A part of a drawing that stands upright in a column between two lines, or lies along one row between two.</summary>
/// <param name="Part">What it stands for.</param>
/// <param name="First">The line of its first terminal.</param>
/// <param name="Second">The line of its second terminal.</param>
internal readonly record struct PlannedPart(CircuitPart Part, int First, int Second);

/// <summary>
/// The level lines of a drawing, one or more per net, from the highest potential down to the reference, and the parts
/// between them: upright between lines of different rows, along the row between lines of the same one.
/// </summary>
internal sealed class RowPlan
{
    private RowPlan(int[] lineNet, int[] lineRow, double[] rowLevel, PlannedPart[] parts)
    {
        LineNet = lineNet;
        LineRow = lineRow;
        RowLevel = rowLevel;
        Parts = parts;
    }

    /// <summary>The net of each line.</summary>
    public int[] LineNet { get; }

    /// <summary>The row of each line; row 0 is the uppermost.</summary>
    public int[] LineRow { get; }

    /// <summary>The level of each row; rows of equal level may change places.</summary>
    public double[] RowLevel { get; }

    /// <summary>The parts; wires that join lines of a net come last.</summary>
    public PlannedPart[] Parts { get; }

    public int RowCount => RowLevel.Length;

    /// <summary>Whether a part lies along a row.</summary>
    public bool IsLevel(int part) => LineRow[Parts[part].First] == LineRow[Parts[part].Second];

    /// <summary>The upper and the lower row of a part.</summary>
    public (int Top, int Bottom) Rows(int part)
    {
        int first = LineRow[Parts[part].First];
        int second = LineRow[Parts[part].Second];
        return (Math.Min(first, second), Math.Max(first, second));
    }

    /// <summary>The same with two rows in each other's place.</summary>
    public RowPlan WithSwapped(int row, int other)
    {
        int[] rows = Array.ConvertAll(LineRow, r => r == row ? other : r == other ? row : r);
        return new RowPlan(LineNet, rows, RowLevel, Parts);
    }

    /// <summary>Plans the rows of some of the nets and the parts between them.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="nets">The nets, connected with one another.</param>
    /// <param name="liesLevel">Whether inductors may lie along a row.</param>
    public static RowPlan Of(Circuit circuit, IReadOnlyList<int> nets, bool liesLevel) => new RowPlanner(circuit, nets, liesLevel).Plan();

    internal static RowPlan Of(int[] lineNet, int[] lineRow, double[] rowLevel, PlannedPart[] parts) => new(lineNet, lineRow, rowLevel, parts);
}
