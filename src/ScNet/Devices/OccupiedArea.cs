namespace ScNet.Devices;

/// <summary>The area that devices of one sort take, beyond what is active of them.</summary>
/// <remarks>
/// A device counts as a square of side √A that keeps a spacing s to its neighbours, half of which is its own: it takes
/// (√A + s)². In a stack each has A times the factor for wells of their own. Derived in docs/theory/devices.md.
/// </remarks>
internal static class OccupiedArea
{
    /// <summary>The area that all devices of a stack take.</summary>
    /// <param name="activeSquareMetres">Active area of each in square metres (m²).</param>
    /// <param name="count">The devices in series.</param>
    /// <param name="stackFactor">Factor on the area of each where there is more than one.</param>
    /// <param name="guardMetres">The spacing in metres (m).</param>
    public static double Of(double activeSquareMetres, int count, double stackFactor, double guardMetres)
    {
        double own = activeSquareMetres * (count > 1 ? stackFactor : 1);

        // the square root costs an exact product where there is no spacing
        double each = guardMetres == 0 ? own : own + (2 * guardMetres * Math.Sqrt(own)) + (guardMetres * guardMetres);
        return count * each;
    }

    /// <summary>The active area of each device of a stack that takes a given area; zero where the spacing leaves nothing.</summary>
    public static double ActiveOf(double occupiedSquareMetres, int count, double stackFactor, double guardMetres)
    {
        double side = Math.Sqrt(occupiedSquareMetres / count) - guardMetres;
        return side > 0 ? (guardMetres == 0 ? occupiedSquareMetres / count : side * side) / (count > 1 ? stackFactor : 1) : 0;
    }
}
