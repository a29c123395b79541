namespace ScNet.Analysis;

/// <summary>What an edge of a <see cref="PhaseGraph"/> is.</summary>
internal enum PhaseEdgeKind
{
    /// <summary>A capacitor.</summary>
    Capacitor,

    /// <summary>The input source.</summary>
    Input,

    /// <summary>A stiff output. A load current holds no voltage and is no edge.</summary>
    Output,
}
