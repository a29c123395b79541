namespace ScNet.Analysis;

/// <summary>What decides how charge divides among the capacitors.</summary>
public enum FlowDetermination
{
    /// <summary>Kirchhoff's current law and charge balance fix the flow alone.</summary>
    Topology,

    /// <summary>The split also depends on capacitances or resistances.</summary>
    ComponentValues,
}
