namespace ScNet.Reporting.Charts.Plotting;

/// <summary>What stands at a point of a line.</summary>
internal enum PointShape
{
    /// <summary>A filled circle.</summary>
    Circle,

    /// <summary>A filled square.</summary>
    Square,

    /// <summary>A filled triangle.</summary>
    Triangle,

    /// <summary>A filled diamond.</summary>
    Diamond,
}
