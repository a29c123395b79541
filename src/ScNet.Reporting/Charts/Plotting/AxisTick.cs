namespace ScNet.Reporting.Charts.Plotting;

/// <summary>A place on an axis with its text.</summary>
internal readonly record struct AxisTick(double Value, string Label);
